"""Sizes as the maker of a line names them, in its units."""

from __future__ import annotations

from chairwright.units import MM_PER_INCH

Units = str


def size_words(size_mm: float, typed_in: Units) -> str:
    """A size as the maker names it; mm follow inches in brackets."""
    if typed_in == "mm":
        return f"{size_mm:g} mm"
    return f"{size_mm / MM_PER_INCH:.4g} in ({size_mm:.0f} mm)"


def size_code(size_mm: float, typed_in: Units) -> str:
    """A size within a code that the program makes: in the maker's units, without the unit."""
    return f"{size_mm:g}" if typed_in == "mm" else f"{size_mm / MM_PER_INCH:.4g}"
