"""What templates may ask of the dates."""
