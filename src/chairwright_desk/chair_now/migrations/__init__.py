"""Steps of the tables of the chair as it stands."""
