"""Published numbers, as printed, each table with its citation beside it."""
