"""What every page shares: access, look, errors, kept versions."""
