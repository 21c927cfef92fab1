"""The way from the command to the core: its one way of saying what is wrong."""

from __future__ import annotations

from chairwright.errors import ChairwrightError, InputError, Problem

__all__ = ["ChairwrightError", "InputError", "Problem"]
