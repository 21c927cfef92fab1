"""Steps of the tables of orders."""
