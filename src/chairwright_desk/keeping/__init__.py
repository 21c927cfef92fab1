"""How long clients are kept: what of one client goes out, goes away, and is due to go."""
