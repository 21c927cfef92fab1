"""What is asked of the chair: every target with its range, its source and its reason."""
