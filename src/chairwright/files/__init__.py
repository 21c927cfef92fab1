"""Client and set-up files: reading, checking and writing."""
