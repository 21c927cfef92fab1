"""One weighing session: what was read off scales and tape, and how fine each can be read."""

from __future__ import annotations

from dataclasses import dataclass, field
from math import sqrt
from typing import Any

REAR = ("rear_left", "rear_right")
CASTERS = ("caster_left", "caster_right")
PADS = (*REAR, *CASTERS)
AXLES = ("rear", "casters")
LOADS = (*PADS, *AXLES, "total")

CHAIR_MASS_SHARE = 0.03
CHAIR_PLACE_MM = 15.0
"""How far a chair's mass and centre of mass, added up from its parts, can be off (common practice,
no source)."""


@dataclass(frozen=True)
class Weighing:
    """Loads of one chair in one state.

    Parameters
    ----------
    level : dict of str to float [kg]
        Names of `LOADS`.
    raised : dict of str to float [kg]
        With the casters on a block; empty when that was not done.
    block_mm : float [mm]
        Height of the block; NaN without one.
    """

    level: dict[str, float]
    raised: dict[str, float] = field(default_factory=dict)
    block_mm: float = float("nan")


@dataclass(frozen=True)
class ChairShare:
    """The chair without its occupant, from the parts of a set-up, floor axes.

    Parameters
    ----------
    mass_kg : float [kg]
    x_mm, y_mm, z_mm : float [mm]
    """

    mass_kg: float
    x_mm: float
    y_mm: float
    z_mm: float


@dataclass(frozen=True)
class SeatPlace:
    """Where the frame's axes are on the floor.

    Parameters
    ----------
    x_mm, z_mm : float [mm]
        Seat corner ahead of the rear axle and above the floor.
    angle_deg : float [deg]
        Seat rail, front up positive.
    by_tape : bool
        False when it follows from a set-up.
    """

    x_mm: float
    z_mm: float
    angle_deg: float
    by_tape: bool = True


@dataclass(frozen=True)
class Session:
    """Everything that was measured.

    Parameters
    ----------
    wheelbase_mm : float [mm]
    rear_height_mm, caster_height_mm : float [mm]
        Axles above the floor.
    occupied : Weighing
    resolution_kg : float [kg]
        Step of the scales' display.
    tape_mm, level_deg : float [mm], [deg]
        Half width of a reading of tape and of spirit level.
    rear_track_mm, caster_track_mm : float [mm]
        Between contacts; NaN when not measured.
    empty : Weighing or None
        The chair without its occupant.
    chair : ChairShare or None
        The same from the parts of a set-up; used when there is no ``empty``.
    seat : SeatPlace or None
    """

    wheelbase_mm: float
    rear_height_mm: float
    caster_height_mm: float
    occupied: Weighing
    resolution_kg: float
    tape_mm: float
    level_deg: float = 0.5
    rear_track_mm: float = float("nan")
    caster_track_mm: float = float("nan")
    empty: Weighing | None = None
    chair: ChairShare | None = None
    seat: SeatPlace | None = None


Readings = dict[str, Any]
"""Value of every reading by name; numbers or arrays."""


def readings(session: Session) -> tuple[Readings, dict[str, float]]:
    """Every reading of a session, and the standard uncertainty of each.

    Parameters
    ----------
    session : Session

    Returns
    -------
    tuple of dict
        Values, and standard uncertainties in the same units. A reading lies anywhere within half
        a step of the scales, or within the tape's half width, with the same chance.

    References
    ----------
    A rectangular distribution of half width a has the standard deviation a / sqrt(3) (first
    principles; Guide to the expression of uncertainty in measurement, from memory, unverified).
    """
    values: Readings = {}
    doubt: dict[str, float] = {}
    tape = session.tape_mm / sqrt(3.0)
    lengths = ("wheelbase", "rear_height", "caster_height", "rear_track", "caster_track")
    for name in lengths:
        values[name], doubt[name] = getattr(session, f"{name}_mm"), tape
    for state, weighing in (("occupied", session.occupied), ("empty", session.empty)):
        if weighing is not None:
            _add_loads(values, doubt, state, weighing, session)
    _add_chair(values, doubt, session)
    _add_seat(values, doubt, session)
    return values, doubt


def _add_loads(
    values: Readings, doubt: dict[str, float], state: str, weighing: Weighing, session: Session
) -> None:
    scale = session.resolution_kg / 2.0 / sqrt(3.0)
    for stance, loads in (("level", weighing.level), ("raised", weighing.raised)):
        for name, load in loads.items():
            values[f"{state}.{stance}.{name}"], doubt[f"{state}.{stance}.{name}"] = load, scale
    if weighing.raised:
        values[f"{state}.block"] = weighing.block_mm
        doubt[f"{state}.block"] = session.tape_mm / sqrt(3.0)


def _add_chair(values: Readings, doubt: dict[str, float], session: Session) -> None:
    chair = session.chair
    if chair is None or session.empty is not None:
        return
    values["chair.mass"] = chair.mass_kg
    doubt["chair.mass"] = CHAIR_MASS_SHARE * chair.mass_kg / sqrt(3.0)
    for axis in "xyz":
        values[f"chair.{axis}"] = getattr(chair, f"{axis}_mm")
        doubt[f"chair.{axis}"] = CHAIR_PLACE_MM / sqrt(3.0)


def _add_seat(values: Readings, doubt: dict[str, float], session: Session) -> None:
    seat = session.seat
    if seat is None:
        return
    length = session.tape_mm if seat.by_tape else 0.0
    angle = session.level_deg if seat.by_tape else 0.0
    for name, value, half in (
        ("seat.x", seat.x_mm, length),
        ("seat.z", seat.z_mm, length),
        ("seat.angle_deg", seat.angle_deg, angle),
    ):
        values[name], doubt[name] = value, half / sqrt(3.0)
