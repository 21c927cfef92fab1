"""Starting, stopping by force, upgrading, saving and restoring."""
