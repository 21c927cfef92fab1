"""Notes and pictures in a client's file."""
