"""Figures that hang on a place: a slope, a surface, a step. ``family@parameters`` names one.

    way        level | up_<deg> | down_<deg> | cross_<deg>
    surface    hard | concrete | carpet | uneven
    rolling    <way>_<surface>, and _p<percent> for rear tyres at a part of their pressure
    slope      level | up_<deg> | down_<deg>
    height     <mm>

Degrees and millimetres are plain decimals without sign: ``rim_force_n@up_4.76_concrete``,
``start_lift_mps2@down_2``, ``step_force_n@20``.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.chair.steps import STEPS
from chairwright.figures import rolling, starting, steps_up, turning_push
from chairwright.figures.band import Band, corner_band, known
from chairwright.figures.families_room import ROOM_FAMILIES
from chairwright.figures.family import NUMBER, Family, Made, number
from chairwright.figures.figure import MOVING, PLACES, STEADY, Figure
from chairwright.figures.mass import MassBox
from chairwright.figures.rolling import FULL_PCT, Way
from chairwright.mass_points import FloatArray

STEEPEST_DEG = 45.0
ROLLING = "First principles (theory: rolling); rolling lengths of the line file"
MOTION = "First principles (theory: rolling)"
GEAR = STEPS[0].choices


@dataclass(frozen=True)
class Ground:
    """Where a chair rolls.

    Parameters
    ----------
    way : {"level", "up", "down", "cross"}
    degrees : float [deg]
        0 on the level.
    surface : str
        Code in `rolling.surfaces`; empty where the surface does not matter.
    pressure_pct : float
        Of air tyres at the rear, as a percentage of the rated pressure.
    """

    way: Way
    degrees: float = 0.0
    surface: str = ""
    pressure_pct: float = FULL_PCT

    @property
    def uphill_deg(self) -> float:
        """Slope in the way it rolls, uphill positive; 0 across [deg]."""
        return {"up": self.degrees, "down": -self.degrees}.get(self.way, 0.0)

    @property
    def words(self) -> str:
        """The place in words."""
        if self.way == "cross":
            found = f"on a cross slope of {self.degrees:.1f} deg"
        else:
            found = "level" if self.way == "level" else f"{self.way} {self.degrees:.1f} deg"
        if self.surface:
            found = f"{found}, {rolling.surfaces()[self.surface].label}"
        soft = self.pressure_pct != FULL_PCT
        return f"{found}, tyres at {self.pressure_pct:g} percent" if soft else found


def named(
    family: str,
    way: Way,
    degrees: float = 0.0,
    surface: str = "",
    *,
    pressure_pct: float = FULL_PCT,
) -> str:
    """Name of a figure of a family of ways.

    Parameters
    ----------
    family : str
    way : {"level", "up", "down", "cross"}
    degrees : float [deg]
        Rounded to a thousandth; 0 makes every way level.
    surface : str
        Empty for a family without surfaces.
    pressure_pct : float

    Returns
    -------
    str

    Examples
    --------
    >>> named("rim_force_n", "up", 4.7636, "concrete")
    'rim_force_n@up_4.764_concrete'
    """
    degrees = round(degrees, 3)
    words = "level" if degrees == 0 else f"{way}_{degrees:.7g}"
    pressure = "" if pressure_pct == FULL_PCT else f"_p{pressure_pct:g}"
    return f"{family}@{words}{'_' + surface if surface else ''}{pressure}"


def named_at(family: str, number: float | str) -> str:
    """Name of a figure of a family with one number, mm or degrees, or with one surface."""
    return f"{family}@{number if isinstance(number, str) else f'{round(number, 3):.7g}'}"


def read_ground(typed: str, ways: tuple[Way, ...], *, surface: bool) -> Ground | None:
    """Read a place as typed behind the ``@``.

    Parameters
    ----------
    typed : str
    ways : tuple of str
        Ways that the family knows.
    surface : bool
        Whether a surface must follow.

    Returns
    -------
    Ground or None
        None when it is none.
    """
    found = re.fullmatch(
        rf"(level|(?P<way>up|down|cross)_(?P<deg>{NUMBER}))"
        r"(?:_(?P<surface>[a-z]+))?(?:_p(?P<pressure>\d{1,2}|100))?",
        typed,
    )
    if found is None or bool(found["surface"]) != surface:
        return None
    way: Way = next((way for way in ways if way == (found["way"] or "level")), "level")
    degrees = float(found["deg"] or 0.0)
    ground = Ground(way, degrees, found["surface"] or "", float(found["pressure"] or FULL_PCT))
    known = way == (found["way"] or "level") and degrees < STEEPEST_DEG
    paved = not surface or ground.surface in rolling.surfaces()
    plain = surface or found["pressure"] is None
    return ground if known and paved and plain else None


def _held_back(push: FloatArray) -> FloatArray:
    """Downhill the push that holds back counts; where the chair stops by itself it is 0."""
    return np.maximum(-push, 0.0)


def _size(band: Band) -> Band:
    """Ends of the size of a number whose sign may be open."""
    if band.low is band.high:
        return known(np.abs(band.low))
    low = np.maximum(np.maximum(band.low, -band.high), 0.0)
    return Band(low, np.maximum(np.abs(band.low), np.abs(band.high)))


def _rim_force(typed: str) -> Made | None:
    ground = read_ground(typed, ("level", "up", "down", "cross"), surface=True)
    if ground is None:
        return None

    def band(rows: Rows, box: MassBox) -> Band:
        wheel, rim, hands = rows["rear_radius"], rows["rim_radius"], rows["hands"]
        push = _push_band(rows, box, ground)
        straight = corner_band(lambda n: rolling.per_hand_n(n, wheel, rim, hands), push)
        if ground.way != "cross":
            return straight
        turning = _size(turning_push.cross_push(ground.degrees)(rows, box))
        return corner_band(lambda roll, turn: roll + turn, straight, turning)

    words = {"down": "Rim force to hold back, each hand", "cross": "Rim force, downhill hand"}
    label = words.get(ground.way, "Rim force to keep rolling, each hand")
    return Made(f"{label}, {ground.words}", band)


def _push_band(rows: Rows, box: MassBox, ground: Ground) -> Band:
    slope = ground.uphill_deg
    push = rolling.floor_push_band(rows, box, ground.surface, slope, ground.pressure_pct)
    return corner_band(_held_back, push) if ground.way == "down" else push


def _push(typed: str) -> Made | None:
    ground = read_ground(typed, ("level", "up", "down"), surface=True)
    if ground is None:
        return None
    words = "Push to hold back" if ground.way == "down" else "Push to keep rolling"
    return Made(f"{words}, {ground.words}", lambda rows, box: _push_band(rows, box, ground))


def _push_start(typed: str) -> Made | None:
    ground = read_ground(typed, ("level", "up"), surface=True)
    if ground is None:
        return None

    def band(rows: Rows, box: MassBox) -> Band:
        spin = rows.option("rear_wheel", "spin_inertia_kgm2")
        steady = _push_band(rows, box, ground)
        return corner_band(
            lambda push, mass: rolling.start_push_n(push, mass, spin, rows["rear_radius"]),
            steady,
            box.mass,
        )

    return Made(f"Push to set moving, {ground.words}", band)


def _start_lift(typed: str) -> Made | None:
    ground = read_ground(typed, ("level", "up", "down"), surface=False)
    if ground is None:
        return None
    formula = starting.start_acceleration(ground.uphill_deg)
    return Made(f"Push-off that lifts the casters, {ground.words}", formula)


def _braking_lift(typed: str) -> Made | None:
    ground = read_ground(typed, ("level", "up", "down"), surface=False)
    if ground is None:
        return None
    formula = starting.braking_deceleration(-ground.uphill_deg)
    return Made(f"Braking that lifts the rear wheels, {ground.words}", formula)


def _cross_push(typed: str) -> Made | None:
    degrees = number(typed)
    if degrees is None or degrees >= STEEPEST_DEG:
        return None
    label = f"Held against turning downhill, each hand, cross slope of {degrees:g} deg"
    return Made(label, turning_push.cross_push(degrees))


def _pivot_push(typed: str) -> Made | None:
    if typed not in rolling.surfaces():
        return None
    label = f"Rim force to turn on the spot, each hand, {rolling.surfaces()[typed].label}"
    return Made(label, turning_push.pivot_push(typed))


def _caster_step(typed: str) -> Made | None:
    step = number(typed)
    if step is None:
        return None
    label = f"Push that rolls the casters over a step of {step:g} mm"
    return Made(label, steps_up.caster_step(step))


def _rear_step(typed: str) -> Made | None:
    step = number(typed)
    if step is None:
        return None
    label = f"Push that rolls the rear wheels over a step of {step:g} mm"
    return Made(label, steps_up.rear_step(step))


def _kerb_pitch(typed: str) -> Made | None:
    kerb = number(typed)
    if kerb is None:
        return None
    label = f"Pitch that raises the casters by {kerb:g} mm"
    return Made(label, exact=steps_up.pitch_for(kerb), touches=GEAR)


AT_ONCE = GEAR[-1]
"""Choice with which the running gear is complete: from then on every family has low and high ends,
and a value once nothing is open that it hangs on. Those of the outline wait longer."""

SLOPE = "level | up_<deg> | down_<deg>"
ON_SURFACE = f"<way>_<surface>[_p<percent>], way {SLOPE}"

FAMILIES: dict[str, Family] = {
    family.name: family
    for family in (
        Family("rim_force_n", "N", 1, 5.0, MOVING, ROLLING, f"{ON_SURFACE} | cross_<deg>",
               _rim_force),
        Family("push_force_n", "N", 0, 10.0, MOVING, ROLLING, ON_SURFACE, _push),
        Family("push_start_n", "N", 0, 10.0, MOVING, ROLLING,
               "<way>_<surface>[_p<percent>], way level | up_<deg>", _push_start),
        Family("pivot_push_n", "N", 1, 5.0, MOVING, ROLLING, "<surface>", _pivot_push),
        Family("cross_push_n", "N", 1, 5.0, MOVING, MOTION, "<deg>", _cross_push),
        Family("start_lift_mps2", "m/s2", 2, 0.2, STEADY, MOTION, SLOPE, _start_lift),
        Family("braking_lift_mps2", "m/s2", 2, 0.2, STEADY, MOTION, SLOPE, _braking_lift),
        Family("step_force_n", "N", 0, 20.0, PLACES, MOTION, "<mm>", _caster_step),
        Family("rear_step_force_n", "N", 0, 20.0, PLACES, MOTION, "<mm>", _rear_step),
        Family("kerb_pitch_deg", "deg", 1, 1.0, PLACES, MOTION, "<mm>", _kerb_pitch),
        *ROOM_FAMILIES,
    )
}  # fmt: skip
"""Every family by its name."""


def resolve(name: str) -> Figure | None:
    """The figure of a name with parameters; None when there is none such.

    Parameters
    ----------
    name : str
        ``family@parameters``.
    """
    family = FAMILIES.get(name.partition("@")[0])
    made = family.make(name.partition("@")[2]) if family else None
    if family is None or made is None:
        return None
    return Figure(
        name,
        made.label,
        family.unit,
        family.digits,
        family.scale,
        family.group,
        made.after or AT_ONCE,
        family.source,
        exact=made.exact,
        weighed=made.weighed,
        touches=made.touches,
    )
