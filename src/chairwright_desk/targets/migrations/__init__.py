"""Steps of the database of the targets."""
