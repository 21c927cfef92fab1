"""Behaviour of single modules."""
