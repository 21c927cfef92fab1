"""Places on the desk."""
