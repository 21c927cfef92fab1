"""The habits of the house, checked."""
