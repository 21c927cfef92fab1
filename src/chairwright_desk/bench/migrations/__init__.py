"""Steps of the bench's tables."""
