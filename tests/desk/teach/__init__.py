"""Lessons and the bench on the demo client."""
