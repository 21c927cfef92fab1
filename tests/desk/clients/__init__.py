"""Clients."""
