"""A maker's product line: what can be ordered, where it bolts on, and what rules it out."""
