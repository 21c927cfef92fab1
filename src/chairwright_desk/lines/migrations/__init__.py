"""Migrations of the lines."""
