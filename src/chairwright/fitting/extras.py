"""Accessories that a file names, fitted to a line: mass at their place, price, days, load limit."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import replace

from chairwright.errors import InputError, Problem
from chairwright.line.choices import CHOICES
from chairwright.line.codes import matching_codes
from chairwright.line.model import FixedPart, Line
from chairwright.validation import suggest

ALIKE = 0.6
"""Likeness from which a word counts as meant (a working value: no source)."""


def with_extras(line: Line, codes: Iterable[str], where: Mapping[str, str]) -> Line:
    """Fit extras to every chair of a line.

    Parameters
    ----------
    line : Line
    codes : iterable of str
        Codes of ``line.extras``.
    where : mapping of str to str
        ``file:line`` of ``extras.CODE``, for messages.

    Returns
    -------
    Line
        Its fixed parts are those of every chair and the named extras, and no other extra.

    Raises
    ------
    InputError
        With ``file:line`` of every code that is no extra of the line.
    """
    wanted = tuple(codes)
    known = {extra.code: extra for extra in line.extras}
    unknown = [
        Problem(
            where=_where(where, code),
            must=f"it must be an extra of the line {line.name}",
            got=repr(code),
            remedy=_remedy(line, code),
        )
        for code in wanted
        if code not in known
    ]
    if unknown:
        raise InputError(*unknown)
    bare = tuple(part for part in line.fixed_parts if part not in line.extras)
    return replace(line, fixed_parts=(*bare, *(known[code] for code in wanted)))


def fitted_extras(line: Line) -> tuple[FixedPart, ...]:
    """The extras that every chair of a line has, in the order in which they were named."""
    return tuple(part for part in line.fixed_parts if part in line.extras)


def _where(where: Mapping[str, str], code: str) -> str:
    place = where.get(f"extras.{code}")
    return f"{place}: extras" if place else "extras"


def _remedy(line: Line, code: str) -> str:
    if not line.extras:
        return "This line has no extras: take it out."
    for name in CHOICES:
        if matching_codes(line.choices[name], [code]):
            return f"It is an option: write '{name}: {code}' under choices."
    for extra in line.extras:
        if _meant(code, extra):
            return f"Did you mean {extra.code} ({extra.name})?"
    return suggest(code, (f"{extra.code} ({extra.name})" for extra in line.extras))


def _meant(code: str, extra: FixedPart) -> bool:
    words = [extra.code, extra.name, *extra.name.split()]
    return bool(difflib.get_close_matches(code.lower(), map(str.lower, words), 1, ALIKE))
