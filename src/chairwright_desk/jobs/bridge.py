"""The way from work to the engineering: its one kind of fault."""

from __future__ import annotations

from chairwright.errors import ChairwrightError

__all__ = ["ChairwrightError"]
