"""The exact search: every set-up that a line allows, the best ones, and why none fits."""
