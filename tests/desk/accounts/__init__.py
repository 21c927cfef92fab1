"""Signing in and people."""
