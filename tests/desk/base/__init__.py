"""What every page shares."""
