"""Product line files."""
