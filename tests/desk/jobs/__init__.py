"""Work beside the pages."""
