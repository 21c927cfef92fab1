"""Measures on the desk."""
