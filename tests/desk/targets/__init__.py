"""Targets on the desk."""
