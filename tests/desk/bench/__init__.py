"""The bench: what its bridge says, and its pages."""
