"""One set-up made real: its pose on the floor, its parts and masses, and who sits in it."""
