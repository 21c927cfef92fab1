"""What a line file can get wrong although it can be read: told with its line and what to do."""
