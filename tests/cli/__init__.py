"""The command line, good and bad input."""
