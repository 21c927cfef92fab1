"""Lessons on a demo client, and a bench to try things on it: no client data, nothing kept."""
