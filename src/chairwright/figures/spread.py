"""How far the estimate of the occupant's centre of mass can be off, and what has no spread."""

from __future__ import annotations

FORE_AFT_MM = 25.0
HEIGHT_MM = 30.0
"""Half widths of the estimate of a seated person's centre of mass (derived: the segment model
beside the seated means of 762 laser-scanned people, UMTRI, read in the abstract only, and of
Santschi 1963, from memory, unverified)."""

NO_SPREAD = ("tip_least_direction_deg",)
"""A direction jumps from edge to edge; a half width would say nothing."""
