"""What public codes say of a door: clear width, corridor, and free floor to work it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from chairwright.places.code_clauses import (
    SLACK,
    Ruling,
    Word,
    clause,
    from_flag,
    length,
    read_limit,
    ruling,
    stated,
)
from chairwright.places.kinds import Door, DoorSide
from chairwright.tables.load import Row, load_table
from chairwright.units import MM_PER_INCH

_ADA, _ENGLAND, _ONTARIO = "ada_2010", "england_ad_m", "ontario_3_8"


@dataclass(frozen=True)
class FloorNeeded:
    """Free floor that a code asks for at a door.

    Parameters
    ----------
    table : str
        Table of the code.
    depth_in, beside_in : float [in]
        Square to the door, and along the wall beside the opening.
    beside : {"hinge", "latch"}
        On which side of the opening.
    """

    table: str
    depth_in: float
    beside_in: float
    beside: DoorSide


def door_rulings(door: Door, code: str) -> tuple[Ruling, ...]:
    """Judge a door under one code.

    Parameters
    ----------
    door : Door
    code : str
        Key of a code.

    Returns
    -------
    tuple of Ruling
        Empty when nothing about such a door is held for the code.
    """
    if code == _ADA:
        return (_ada_width(door), _ada_floor(door))
    if code == _ENGLAND:
        return tuple(_england(door))
    if code == _ONTARIO:
        return tuple(_ontario(door))
    return ()


def _ada_width(door: Door) -> Ruling:
    limit = clause("ada_opening_deep").limit or 0.0
    deep = door.opening_depth_mm is not None and door.opening_depth_mm > limit + SLACK
    key = "ada_door_width_deep" if deep else "ada_door_width"
    return ruling(key, door.clear_width_mm, length(door.clear_width_mm, door, "clear_width_mm"))


@cache
def _floor_rows() -> tuple[Row, ...]:
    return load_table("access", "ada2010_manoeuvring")


def floor_needed(
    swing: str, approach: str, closer: bool | None = False, latch: bool | None = True
) -> tuple[FloorNeeded, ...]:
    """Free floor that the ADA 2010 Standards ask for at a door.

    Parameters
    ----------
    swing : {"pull", "push", "slide", "none"}
    approach : {"front", "hinge", "latch", "side"}
        Side only without a door.
    closer, latch : bool or None
        None (not known) counts as there: the larger floor is asked for.

    Returns
    -------
    tuple of FloorNeeded
        Alternatives; one of them is enough.

    References
    ----------
    2010 ADA Standards, tables 404.2.4.1 and 404.2.4.2. A note of the first says closer where
    its figure says closer and latch; the table governs.

    Examples
    --------
    >>> floor_needed("push", "front", closer=True)[0].beside_in
    12.0
    """
    rows = [r for r in _floor_rows() if (r["swing"], r["approach"]) == (swing, approach)]
    return tuple(_needed(row, closer is not False, latch is not False) for row in rows)


def _needed(row: Row, closer: bool, latch: bool) -> FloorNeeded:
    more = {"never": False, "closer": closer, "closer and latch": closer and latch}[row["when"]]
    ahead = "then_" if more else ""
    depth, beside = float(row[f"{ahead}depth_in"]), float(row[f"{ahead}beside_in"])
    return FloorNeeded(
        row["table"], depth, beside, "hinge" if row["beside"] == "hinge" else "latch"
    )


def approach_in_words(door: Door) -> str | None:
    """Return how one comes to a door: front, hinge, latch or side; None when it is not known.

    A door in a recess deeper than 8 in counts as come to from the front (ADA 404.2.4.3).
    """
    limit = clause("ada_recess").limit or 0.0
    recessed = door.recess_mm is not None and door.recess_mm > limit + SLACK
    if door.approach == "straight" or recessed:
        return "front"
    return "side" if door.swing == "none" else door.approach_side


def _ada_floor(door: Door) -> Ruling:
    approach = approach_in_words(door)
    if approach is None:
        words = ("free floor by the side one comes from", "side not known")
        return Ruling(_ADA, "Table 404.2.4.1", "free floor", "not known", *words, "R")
    needs = floor_needed(door.swing, approach, door.closer, door.latch)
    word = _best(door, needs)
    if word == "fails" and None in (door.closer, door.latch):
        least = floor_needed(door.swing, approach, door.closer or False, door.latch or False)
        word = "fails" if _best(door, least) == "fails" else "not known"
    table = f"Table {needs[0].table}"
    asked = " or ".join(_floor_asked(need) for need in needs)
    found = _floor_found(door, needs[0].beside)
    return Ruling(_ADA, table, "free floor", word, asked, found, "R", f"{approach} approach")


def _best(door: Door, needs: tuple[FloorNeeded, ...]) -> Word:
    return _first([_floor_word(door, need) for need in needs])


def _first(words: list[Word]) -> Word:
    """One alternative that holds is enough; one that is not known leaves it open."""
    order: tuple[Word, ...] = ("holds", "not known", "fails")
    return next(word for word in order if word in words)


def _floor_word(door: Door, need: FloorNeeded) -> Word:
    beside = door.latch_space_mm if need.beside == "latch" else door.hinge_space_mm
    kept = (_enough(door.floor_depth_mm, need.depth_in), _enough(beside, need.beside_in))
    if False in kept:
        return "fails"
    return "not known" if None in kept else "holds"


def _enough(value: float | None, needed_in: float) -> bool | None:
    if needed_in == 0:
        return True
    return None if value is None else value >= needed_in * MM_PER_INCH - SLACK


def _floor_asked(need: FloorNeeded) -> str:
    deep = f"{need.depth_in:g} in ({need.depth_in * MM_PER_INCH:.5g} mm) deep"
    if need.beside_in == 0:
        return deep
    wide = f"{need.beside_in:g} in ({need.beside_in * MM_PER_INCH:.5g} mm)"
    return f"{deep} and {wide} on the {need.beside} side"


def _floor_found(door: Door, side: str) -> str:
    deep = length(door.floor_depth_mm, door, "depth_mm")
    beside = door.latch_space_mm if side == "latch" else door.hinge_space_mm
    return f"{deep} deep, {side} side {length(beside, door, f'{side}_space_mm')}"


def _england(door: Door) -> list[Ruling]:
    use = "entrance" if door.use == "entrance" else "inside"
    rows = [
        row
        for row in load_table("access", "england_ad_m_doors")
        if (row["building"], row["use"]) == (door.building, use)
        and row["site"] in ("any", door.site)
        and row["way"] in ("any", door.approach)
    ]
    word = _first([_row_word(door, row) for row in rows])
    asked = " or ".join(_row_asked(row) for row in rows)
    found = length(door.clear_width_mm, door, "clear_width_mm")
    if any(row["corridor_mm"] for row in rows):
        found += f", corridor {length(door.corridor_width_mm, door, 'corridor_width_mm')}"
    width = Ruling(_ENGLAND, "doors", "clear width", word, asked, found, rows[0]["tag"])
    if door.building == "public" and door.swing == "pull":
        nib = length(door.latch_space_mm, door, "latch_space_mm")
        return [width, ruling("adm_nib", door.latch_space_mm, nib)]
    return [width]


def _row_word(door: Door, row: Row) -> Word:
    if door.clear_width_mm < read_limit(row["clear_width_mm"], "mm") - SLACK:
        return "fails"
    if not row["corridor_mm"]:
        return "holds"
    if door.corridor_width_mm is None:
        return "not known"
    wide = door.corridor_width_mm >= read_limit(row["corridor_mm"], "mm") - SLACK
    return "holds" if wide else "fails"


def _row_asked(row: Row) -> str:
    words = f"clear width at least {row['clear_width_mm']} mm"
    return f"{words} with a corridor of {row['corridor_mm']} mm" if row["corridor_mm"] else words


def _ontario(door: Door) -> list[Ruling]:
    found = length(door.clear_width_mm, door, "clear_width_mm")
    if door.building == "public":
        return [ruling("obc_door_path", door.clear_width_mm, found)]
    if door.use != "bath_or_bedroom":
        return []
    if door.corridor_width_mm is not None:
        wide = door.corridor_width_mm >= (clause("obc_door_suite_corridor").limit or 0.0) - SLACK
        key = "obc_door_suite" if wide else "obc_door_suite_narrow"
        return [ruling(key, door.clear_width_mm, found)]
    keys = ("obc_door_suite", "obc_door_suite_narrow")
    words = {ruling(key, door.clear_width_mm, found).word for key in keys}
    holds = words == {"holds"} if len(words) == 1 else None
    asked = "clear width at least 760 mm with a corridor of 1060 mm, else 810 mm"
    return [stated(clause(keys[0]), from_flag(holds), found, asked=asked)]
