"""How sure a figure is: what can be off, and what that does to figures and to margins."""
