"""The chairwright command: one file a command, no arithmetic."""
