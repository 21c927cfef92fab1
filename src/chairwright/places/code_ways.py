"""What public codes say of corridors, corners, turning spaces, level changes and cross falls."""

from __future__ import annotations

from chairwright.places.code_clauses import (
    SLACK,
    Ruling,
    applies,
    clause,
    from_flag,
    length,
    ruling,
    slope,
    stated,
)
from chairwright.places.kinds import Corner, Corridor, CrossSlope, Kerb, Room, Threshold
from chairwright.tables.load import load_table

_ROUTE = {"ada_2010": "ada_route_width", "england_ad_m": "adm_corridor",
          "ontario_3_8": "obc_route_width"}  # fmt: skip
_NARROW = {"ada_2010": "ada_route_narrow", "england_ad_m": "adm_corridor_narrow"}
_LEVEL = {"ada_2010": "ada_level_ramp", "ontario_3_8": "obc_level"}


def corridor_rulings(corridor: Corridor, code: str) -> tuple[Ruling, ...]:
    """Judge the width of a corridor, short narrow parts included, under one code.

    Parameters
    ----------
    corridor : Corridor
    code : str
        Key of a code.

    Returns
    -------
    tuple of Ruling
    """
    key = _ROUTE.get(code, "")
    if not key or not applies(key, corridor.site, corridor.building):
        return ()
    found = length(corridor.width_mm, corridor, "width_mm")
    whole = ruling(key, corridor.width_mm, found)
    part = _NARROW.get(code, "")
    if whole.word == "holds" or not part or corridor.narrow_length_mm is None:
        return (whole, *_passing(corridor, code))
    return _narrow(corridor, part, found)


def _narrow(corridor: Corridor, part: str, found: str) -> tuple[Ruling, ...]:
    width_key = f"{part}_width" if part.startswith("ada") else part
    long = length(corridor.narrow_length_mm, corridor, "narrow_length_mm")
    return (
        ruling(width_key, corridor.width_mm, found),
        ruling(f"{part}_length", corridor.narrow_length_mm, long),
    )


def _passing(corridor: Corridor, code: str) -> tuple[Ruling, ...]:
    """Ontario: below 1600 mm a passing space every 30 m, which the file does not tell."""
    each = clause("obc_route_passing")
    if code != each.code or corridor.width_mm >= (each.limit or 0.0) - SLACK:
        return ()
    found = length(corridor.width_mm, corridor, "width_mm")
    return (stated(each, "not known", found, asked="a space of 1800 by 1800 mm every 30 m"),)


def corner_rulings(corner: Corner, code: str) -> tuple[Ruling, ...]:
    """Judge both corridors of a corner by the width that a code asks of a route.

    Parameters
    ----------
    corner : Corner
    code : str
        Key of a code.

    Returns
    -------
    tuple of Ruling
        Of the narrower of the two corridors.
    """
    key = _ROUTE.get(code, "")
    if not key or not applies(key, corner.site, corner.building):
        return ()
    name = "width_in_mm" if corner.width_in_mm <= corner.width_out_mm else "width_out_mm"
    width: float = getattr(corner, name)
    return (ruling(key, width, length(width, corner, name)),)


def share_served_pct(width_mm: float) -> int | None:
    """Share of wheelchair users whom a corridor corner of a width served when it was measured.

    Parameters
    ----------
    width_mm : float [mm]
        Narrower corridor of the corner.

    Returns
    -------
    int or None [per cent]
        The largest printed share that this width reaches; None below the narrowest printed.

    References
    ----------
    AWM 2010, appendix 2: 90 degree turn in several short moves, manual and powered chairs.

    Examples
    --------
    >>> share_served_pct(850), share_served_pct(1000)
    (50, 95)
    """
    rows = load_table("access", "awm2010_corridor_turn")
    reached = [int(r["serves_pct"]) for r in rows if width_mm >= 10 * float(r["width_cm"]) - SLACK]
    return max(reached, default=None)


def room_rulings(room: Room, code: str) -> tuple[Ruling, ...]:
    """Judge free floor to turn round in under one code.

    Parameters
    ----------
    room : Room
    code : str
        Key of a code.

    Returns
    -------
    tuple of Ruling
    """
    if code != "ada_2010":
        return ()
    name = "width_mm" if room.width_mm <= room.depth_mm else "depth_mm"
    smaller: float = getattr(room, name)
    return (ruling("ada_turning_circle", smaller, length(smaller, room, name)),)


def t_turn_rulings(
    square_mm: float, arm_width_mm: float, base_width_mm: float | None = None
) -> tuple[Ruling, ...]:
    """Judge a T-shaped turning space under the ADA 2010 Standards.

    Parameters
    ----------
    square_mm : float [mm]
        Side of the square in which the T lies.
    arm_width_mm : float [mm]
        Width of the two arms.
    base_width_mm : float, optional [mm]
        Width of the base; that of the arms when it is left out.

    Returns
    -------
    tuple of Ruling
        The square, the narrower of arms and base, and what stays clear of each arm and of
        the base when the T stands in the middle of its square.

    References
    ----------
    2010 ADA Standards, 304.3.2.
    """
    base = arm_width_mm if base_width_mm is None else base_width_mm
    narrow, arm_clear, base_clear = (
        min(arm_width_mm, base),
        (square_mm - base) / 2,
        square_mm - arm_width_mm,
    )
    return (
        ruling("ada_t_turn_square", square_mm, length(square_mm)),
        ruling("ada_t_turn_arm", narrow, length(narrow)),
        ruling("ada_t_turn_arm_clear", arm_clear, length(arm_clear)),
        ruling("ada_t_turn_base_clear", base_clear, length(base_clear)),
    )


def cross_slope_rulings(way: CrossSlope, code: str) -> tuple[Ruling, ...]:
    """Judge the cross fall of a way under one code.

    Parameters
    ----------
    way : CrossSlope
    code : str
        Key of a code.

    Returns
    -------
    tuple of Ruling
    """
    if code != "ada_2010":
        return ()
    return (ruling("ada_walk_cross_slope", way.slope.ratio, slope(way.slope.ratio)),)


def threshold_rulings(threshold: Threshold, code: str) -> tuple[Ruling, ...]:
    """Judge a threshold under one code.

    Parameters
    ----------
    threshold : Threshold
    code : str
        Key of a code.

    Returns
    -------
    tuple of Ruling
        ADA 2010: up to 1/4 in upright, up to 1/2 in bevelled, and up to 3/4 in bevelled at a
        door of an existing site. Ontario: up to 13 mm, bevelled.
    """
    if code == "ada_2010":
        return (_ada_threshold(threshold),)
    if code == "ontario_3_8":
        return (_bevelled(threshold, "obc_level", 0.0),)
    return ()


def _ada_threshold(threshold: Threshold) -> Ruling:
    upright = clause("ada_level_vertical").limit or 0.0
    if not threshold.at_door:
        return _bevelled(threshold, "ada_level_bevelled", upright)
    old = threshold.site == "existing"
    return _bevelled(threshold, "ada_door_threshold_old" if old else "ada_door_threshold", upright)


def _bevelled(threshold: Threshold, key: str, upright_mm: float) -> Ruling:
    """A height up to the clause's limit, which must be bevelled above the upright height."""
    height = threshold.height_mm
    found = length(height, threshold, "height_mm")
    first = ruling(key, height, found)
    if first.word == "fails" or height <= upright_mm + SLACK:
        return first
    edge = {True: "bevelled", False: "not bevelled", None: "bevel not known"}[threshold.bevelled]
    asked = f"{first.asked}, bevelled 1:2"
    return stated(clause(key), from_flag(threshold.bevelled), f"{found}, {edge}", asked=asked)


def kerb_rulings(kerb: Kerb, code: str) -> tuple[Ruling, ...]:
    """Judge a kerb without a ramp as a change of level on a route.

    Parameters
    ----------
    kerb : Kerb
    code : str
        Key of a code.

    Returns
    -------
    tuple of Ruling
    """
    key = _LEVEL.get(code)
    if key is None:
        return ()
    return (ruling(key, kerb.height_mm, length(kerb.height_mm, kerb, "height_mm")),)
