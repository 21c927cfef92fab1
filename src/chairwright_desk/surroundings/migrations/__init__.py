"""Steps of the database of the surroundings."""
