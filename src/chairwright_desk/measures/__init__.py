"""What is measured of a client, over time, and what a client file holds besides."""
