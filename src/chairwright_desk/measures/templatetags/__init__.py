"""Tags of the measures' templates."""
