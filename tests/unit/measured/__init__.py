"""Measured chairs."""
