"""What public codes say of knee and toe space under a top, and of reach over it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np

from chairwright.places.code_clauses import (
    SLACK,
    Ruling,
    Word,
    applies,
    clause,
    from_flag,
    length,
    read_limit,
    ruling,
    stated,
)
from chairwright.places.kinds import ReachFrom, UnderTop
from chairwright.tables.load import load_table

_ADA, _DRAFT = "ada_2010", "can_asc_2_3_draft"


@dataclass(frozen=True)
class Reach:
    """How high one reaches over an obstruction.

    Parameters
    ----------
    number : str
        Clause.
    high_mm : float or None [mm]
        None when the obstruction is too deep to reach over.
    printed : str
        As printed, ``48 in``.
    obstruction_high_mm : float or None [mm]
        Highest that the obstruction itself may be; None without a limit.
    """

    number: str
    high_mm: float | None
    printed: str
    obstruction_high_mm: float | None


@cache
def _knee_points() -> tuple[tuple[float, ...], tuple[float, ...]]:
    rows = load_table("access", "ada2010_knee_space")
    heights = tuple(read_limit(row["height_in"], "in") for row in rows)
    return heights, tuple(read_limit(row["depth_in"], "in") for row in rows)


def knee_depth_needed_mm(height_mm: float) -> float:
    """Depth of knee space that the ADA 2010 Standards ask for at a height.

    Parameters
    ----------
    height_mm : float [mm]
        Above the floor, from 9 to 27 in; outside, the depth of the nearer end.

    Returns
    -------
    float [mm]
        Falls by 1 in for each 6 in of height.

    References
    ----------
    2010 ADA Standards, 306.3.

    Examples
    --------
    >>> round(knee_depth_needed_mm(15 * 25.4) / 25.4, 9)
    10.0
    """
    return float(np.interp(height_mm, *_knee_points()))


def reach_over(depth_mm: float, reach_from: ReachFrom = "front") -> Reach:
    """Highest reach over an obstruction under the ADA 2010 Standards.

    Parameters
    ----------
    depth_mm : float [mm]
        Depth of what is reached over; 0 without an obstruction.
    reach_from : {"front", "side"}

    Returns
    -------
    Reach

    References
    ----------
    2010 ADA Standards, 308.2 and 308.3.

    Examples
    --------
    >>> reach_over(20.1 * 25.4).printed
    '44 in'
    """
    rows = [row for row in load_table("access", "ada2010_reach") if row["from"] == reach_from]
    for row in rows:
        if depth_mm <= read_limit(row["depth_to_in"], "in") + SLACK:
            high, top = row["high_in"], row["obstruction_high_in"]
            limit = read_limit(top, "in") if top else None
            return Reach(row["clause"], read_limit(high, "in"), f"{high} in", limit)
    return Reach(rows[-1]["clause"], None, "", None)


def under_top_rulings(top: UnderTop, code: str) -> tuple[Ruling, ...]:
    """Judge a table, worktop or basin under one code.

    Parameters
    ----------
    top : UnderTop
    code : str
        Key of a code.

    Returns
    -------
    tuple of Ruling
    """
    if code == _ADA:
        return (*_knee(top), *_toe(top), *_reach(top))
    if code == _DRAFT and applies("asc_top_low", top.site, top.building):
        found = length(top.top_height_mm, top, "top_height_mm")
        return (
            ruling("asc_top_low", top.top_height_mm, found),
            ruling("asc_top_high", top.top_height_mm, found),
            ruling("asc_top_width", top.width_mm, length(top.width_mm, top, "width_mm")),
        )
    return ()


def _knee(top: UnderTop) -> tuple[Ruling, ...]:
    return (
        ruling("ada_knee_width", top.width_mm, length(top.width_mm, top, "width_mm")),
        _knee_height(top),
        _knee_low(top),
    )


def _knee_height(top: UnderTop) -> Ruling:
    """At 27 in 8 in must be free; a lower edge has no room for that."""
    each = clause("ada_knee_height")
    deep = knee_depth_needed_mm(each.limit or 0.0)
    kept: bool | None = False
    if top.clear_height_mm >= (each.limit or 0.0) - SLACK:
        known = top.knee_depth_mm
        kept = None if known is None else known >= deep - SLACK
    asked = f"{deep / 25.4:g} in ({deep:.5g} mm) deep up to {each.printed} ({each.limit:.5g} mm)"
    high = length(top.clear_height_mm, top, "clear_height_mm")
    found = f"{length(top.knee_depth_mm, top, 'knee_depth_mm')} deep up to {high}"
    return stated(each, from_flag(kept), found, asked=asked)


def _knee_low(top: UnderTop) -> Ruling:
    found = length(top.foot_depth_mm, top, "foot_depth_mm")
    return ruling("ada_knee_depth_low", top.foot_depth_mm, found)


def _toe(top: UnderTop) -> tuple[Ruling, ...]:
    toe, knee = top.toe_depth_mm, top.foot_depth_mm
    if toe is None:
        return (ruling("ada_toe_depth", None, length(None)),)
    beyond = clause("ada_toe_beyond")
    counts = min(toe, clause("ada_toe_deepest").limit or toe)
    if knee is not None:
        counts = min(counts, knee + (beyond.limit or 0.0))
    found = f"{length(toe, top, 'toe_depth_mm')}, of which {counts:.5g} mm count"
    note = f"at most {beyond.printed} beyond the knee space count" if counts < toe - SLACK else ""
    return (ruling("ada_toe_depth", counts, found, note),)


def _reach(top: UnderTop) -> tuple[Ruling, ...]:
    if top.reach_height_mm is None:
        return ()
    low = length(top.reach_height_mm, top, "reach_height_mm")
    return (_reach_high(top, low), ruling("ada_reach_low", top.reach_height_mm, low))


def _reach_high(top: UnderTop, found: str) -> Ruling:
    item, tag = f"reach from the {top.reach_from}", "R"
    if top.reach_over_mm is None:
        words = ("height by the depth reached over", f"{found}, depth not measured")
        return Ruling(_ADA, "308.2/308.3", item, "not known", *words, tag)
    over = length(top.reach_over_mm, top, "reach_over_mm")
    reach = reach_over(top.reach_over_mm, top.reach_from)
    if reach.high_mm is None:
        words = ("within reach at all", f"{over} to reach over: too deep")
        return Ruling(_ADA, reach.number, item, "fails", *words, tag)
    asked = f"at most {reach.printed} ({reach.high_mm:.5g} mm) high over {over}"
    word = _reach_word(top, reach)
    return Ruling(_ADA, reach.number, item, word, asked, found, tag, _obstruction_note(reach))


def _reach_word(top: UnderTop, reach: Reach) -> Word:
    if top.reach_height_mm is None or reach.high_mm is None:
        return "not known"
    if top.reach_height_mm > reach.high_mm + SLACK:
        return "fails"
    if reach.obstruction_high_mm is None:
        return "holds"
    if top.top_height_mm is None:
        return "not known"
    return from_flag(top.top_height_mm <= reach.obstruction_high_mm + SLACK)


def _obstruction_note(reach: Reach) -> str:
    high = reach.obstruction_high_mm
    return f"over a top at most {high / 25.4:g} in ({high:.5g} mm) high" if high else ""
