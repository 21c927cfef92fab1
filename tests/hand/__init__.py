"""Evidence: numbers worked out by hand."""
