"""Tags of the chair as it stands."""
