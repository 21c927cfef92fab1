"""Whether the readings of a scales file can belong to one chair that stands on its wheels."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import numpy as np

from chairwright.files.fields import Fields
from chairwright.scales.centre import axle_load, centre, total_load
from chairwright.scales.formulas import Raised, raised, raised_share
from chairwright.scales.model import LOADS, Session, Weighing, readings

SUM_SHARE = 0.01
"""Sums of loads may differ by this share of the whole, or by what the display rounds off: a person
breathes and moves (common practice, no source)."""
HIGHEST_MM = {"occupied": 1500.0, "empty": 1000.0}
"""No centre of mass lies higher above the floor (common practice, no source)."""


def check_session(fields: Fields, session: Session) -> None:
    """Note every reading that no chair can give.

    Parameters
    ----------
    fields : Fields
        The top of the file.
    session : Session
        Complete, with every number read.
    """
    values, _ = readings(session)
    for state, weighing, at in _states(fields, session):
        level = _inner(at, "level")
        bad = _pressing(level, weighing.level) + _pressing(_inner(at, "raised"), weighing.raised)
        bad += _sums(fields, session, state, at)
        if not bad and weighing.raised:
            _height(_inner(at, "raised"), session, values, state)
    if session.empty is not None:
        _lighter(fields, session, values)


def _states(fields: Fields, session: Session) -> Iterator[tuple[str, Weighing, Fields]]:
    yield "occupied", session.occupied, fields
    if session.empty is not None:
        yield "empty", session.empty, _inner(fields, "empty")


def _inner(fields: Fields, key: str) -> Fields:
    return fields.child(key) or fields


def _pressing(fields: Fields, loads: Mapping[str, float]) -> int:
    lifted = [name for name in LOADS if loads.get(name) == 0.0]
    for name in lifted:
        must = "every wheel must press on its pad"
        fields.refuse(name, must, "no load", "Make the chair stand on all its wheels; read again.")
    return len(lifted)


def _sums(fields: Fields, session: Session, state: str, at: Fields) -> int:
    """Compare every sum that was read twice; the number that does not agree."""
    values, _ = readings(session)
    whole = total_load(values, f"{state}.level")
    count = 0
    for stance in ("level", "raised"):
        for key, total in _totals(values, f"{state}.{stance}"):
            allowed = max(SUM_SHARE * whole, 4 * session.resolution_kg / 2.0)
            if abs(total - whole) > allowed:
                must = (
                    f"loads of one chair must sum to one mass, here {whole:.1f} kg on the level, "
                    f"within {allowed:.1f} kg"
                )
                got = f"{total:.1f} kg"
                _inner(at, stance).refuse(key, must, got, "Read every pad again; look for a slip.")
                count += 1
        count += _part_of(_inner(at, stance), values, f"{state}.{stance}", float(whole))
        for axle, pads in (("rear", "rear_"), ("casters", "caster_")):
            count += _pairs(_inner(at, stance), values, f"{state}.{stance}", axle, pads, session)
    return count


def _totals(values: Mapping[str, float], stance: str) -> Iterator[tuple[str, float]]:
    if f"{stance}.total" in values:
        yield "total", values[f"{stance}.total"]
    rear, casters = (axle_load(dict(values), stance, axle) for axle in ("rear", "casters"))
    if rear is not None and casters is not None and stance.endswith("raised"):
        yield "casters", rear + casters


def _part_of(fields: Fields, values: Mapping[str, float], stance: str, whole: float) -> int:
    load = axle_load(dict(values), stance, "casters")
    if load is None or load < whole:
        return 0
    key = "casters" if "casters" in fields.data else "caster_left"
    must = f"the casters must carry less than the whole, {whole:.1f} kg"
    fields.refuse(key, must, f"{load:.1f} kg", "Read casters and whole again.")
    return 1


def _pairs(
    fields: Fields, values: Mapping[str, float], stance: str, axle: str, pads: str, session: Session
) -> int:
    sides = [values.get(f"{stance}.{pads}{side}") for side in ("left", "right")]
    whole = values.get(f"{stance}.{axle}")
    if whole is None or sides[0] is None or sides[1] is None:
        return 0
    total = sides[0] + sides[1]
    if abs(total - whole) <= max(SUM_SHARE * whole, 1.5 * session.resolution_kg):
        return 0
    must = f"left and right must sum to {axle}, {whole:.1f} kg"
    fields.refuse(axle, must, f"{total:.1f} kg", "Read the pads again, or leave one of them out.")
    return 1


def _height(fields: Fields, session: Session, values: Mapping[str, float], state: str) -> None:
    """Loads on raised casters that no centre of mass above the axle, or the floor, can give."""
    block = values[f"{state}.block"]
    at = raised(session.wheelbase_mm, session.rear_height_mm, session.caster_height_mm, block)
    if not (np.isfinite(at.wheelbase_mm) and at.wheelbase_mm > 0.0):
        must = "a chair must be able to stand with its casters on the block"
        fields.refuse("block", must, f"{block:g} mm", "Measure block, wheelbase and axles again.")
        return
    found = centre(dict(values), state)
    load = axle_load(dict(values), f"{state}.raised", "casters")
    lowest = session.rear_height_mm if state == "occupied" else 0.0
    least, most = (
        found["mass"] * raised_share(found["x"], height, session.rear_height_mm, at)
        for height in (HIGHEST_MM[state], lowest)
    )
    _refuse_height(fields, block, float(load), float(least), float(most), at, state)


def _refuse_height(
    fields: Fields, block: float, load: float, least: float, most: float, at: Raised, state: str
) -> None:
    key = "casters" if "casters" in fields.data else "caster_left"
    below = "the rear axle" if state == "occupied" else "the floor"
    remedy = "Read the pad again, with wheels and casters free; check block and wheelbase."
    on_block = f"on a block of {block:g} mm the casters must carry"
    if load >= most:
        must = f"{on_block} less than {most:.1f} kg, or the centre of mass lies below {below}"
        fields.refuse(key, must, f"{load:.1f} kg", remedy)
    elif load <= max(least, 0.0):
        high = f"{HIGHEST_MM[state]:g} mm"
        must = f"{on_block} more than {max(least, 0.0):.1f} kg, or it lies above {high}"
        fields.refuse(key, must, f"{load:.1f} kg", remedy)


def _lighter(fields: Fields, session: Session, values: Mapping[str, float]) -> None:
    whole, chair = (total_load(dict(values), f"{state}.level") for state in ("occupied", "empty"))
    if chair >= whole:
        must = f"the empty chair must weigh less than the occupied one, {whole:.1f} kg"
        remedy = "Check that the two weighings are not exchanged."
        fields.refuse("empty", must, f"{chair:.1f} kg", remedy)
    raised_too = session.empty is not None and not session.empty.raised
    if session.occupied.raised and raised_too:
        must = "the empty chair must be weighed with its casters raised as well"
        remedy = "Weigh it so too, or take the weighing of the empty chair out."
        fields.refuse("empty", must, "only the level", remedy)
