"""The trail."""
