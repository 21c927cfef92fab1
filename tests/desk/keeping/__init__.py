"""Export, removal and dates of one client."""
