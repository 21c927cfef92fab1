"""The chair as it stands, measured with a tape, a level and scales."""
