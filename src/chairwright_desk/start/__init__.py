"""Starting, upgrading, saving and restoring a desk."""
