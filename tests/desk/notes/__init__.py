"""Notes and pictures on the desk."""
