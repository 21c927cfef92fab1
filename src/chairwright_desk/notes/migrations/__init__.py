"""Steps of the database of the notes."""
