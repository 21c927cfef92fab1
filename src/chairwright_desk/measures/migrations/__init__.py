"""Steps of the database of the measures."""
