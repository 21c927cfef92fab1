"""What goes in and out, in words that the OpenAPI document repeats."""

from __future__ import annotations

from chairwright_desk.api.shapes.base import Given, Identifier, Line, Many, Taken, Text

__all__ = ["Given", "Identifier", "Line", "Many", "Taken", "Text"]
