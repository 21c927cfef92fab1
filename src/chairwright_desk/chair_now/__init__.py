"""The chair as it stands: on scales, measured, fitted again, over the years, and how sure it is."""
