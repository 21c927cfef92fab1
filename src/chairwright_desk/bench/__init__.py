"""The bench: a set-up changed step by step, with its drawing and what follows from it."""
