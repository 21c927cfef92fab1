"""Steps of the database."""
