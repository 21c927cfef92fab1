"""Chairs on the move against a rigid-body physics engine: agreement wanted, 0.3 percent.

Plain bodies have printed values; the random chairs of the shipped line are built in the engine
from their parts and segments, each of a pair in its own place, wheels upright.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.evaluate import figures_of
from chairwright.mass_points import MassPoints
from chairwright.tables.load import find_row

from .draws import random_setups
from .independent import on_floor
from .lines import everyday
from .mujoco_moving import Moving, Solid, Wheels
from .people import anybody, seated

AGREE = 0.003
SEEDS = range(6)
EACH = 3
UP_1_TO_12 = float(np.degrees(np.arctan(1 / 12)))

# Check cases ST-14, DY-04, YW-01 and YW-09.
BODY = [Solid(84.0, (0.13, 0.0, 0.56 - 0.305), (5.0, 5.0, 6.0))]
REAR = Wheels(2.0, 0.14, 0.07, 0.305, 0.28)
CASTERS = Wheels(0.5, 0.001, 0.0005, 0.065, 0.22, 0.45)
NOTHING = Wheels(1e-6, 1e-9, 1e-9, 0.065, 0.22, 0.45)


@pytest.mark.parametrize(("slope", "lifts"), [(0.0, 2.2637), (4.76, 1.4575)])
def test_the_engine_is_set_up_well_for_starting(slope: float, lifts: float) -> None:
    got = Moving(BODY, REAR, CASTERS).start_lifts_at(slope, lifts)
    assert got == pytest.approx(lifts, rel=1e-4)


def test_the_engine_is_set_up_well_for_turning() -> None:
    sliding = Moving(BODY, REAR, NOTHING, casters_roll=False)
    assert sliding.yaw_inertia() == pytest.approx(8.1092, rel=1e-4)
    assert sliding.holding_torque(3.0, 3.0) == pytest.approx(3.05354, rel=1e-4)


def chairs(seed: int) -> tuple[Rows, Occupant, list[MassPoints]]:
    """Some set-ups with upright wheels that are steady enough to be set moving."""
    rng = np.random.default_rng(seed)
    while True:
        occupant = seated(anybody(rng))

        def wanted(rows: Rows, who: Occupant = occupant) -> NDArray[np.bool_]:
            steady = figures_of(rows, who, ["tip_least_deg"])["tip_least_deg"] > 7.0
            return np.asarray(steady & (rows["camber"] == 0))

        try:
            rows, points = random_setups(everyday(), occupant, rng, EACH, wanted)
        except LookupError:
            continue
        return rows, occupant, points


def engines(
    rows: Rows, points: list[MassPoints], *, casters_roll: bool = True, rear_grip: float = 3.0
) -> list[Moving]:
    """Each set-up as point masses on rolling wheels."""
    placed, names = on_floor(rows, points), [point.name for point in points]
    built = []
    for at in range(len(rows)):
        solids = [
            Solid(placed.mass[at, n], place_of(rows, placed.x[at, n], 0, placed.z[at, n], at))
            for n, name in enumerate(names)
            if name not in {"rear wheels", "casters"} and placed.mass[at, n] > 0
        ]
        rear, casters = wheels_of(rows, at)
        built.append(Moving(solids, rear, casters, casters_roll=casters_roll, rear_grip=rear_grip))
    return built


def place_of(rows: Rows, x: float, y: float, z: float, at: int) -> tuple[float, float, float]:
    """Floor axes [mm] to metres from the middle of the axle."""
    return x / 1000, y / 1000, (z - float(rows["rear_height"][at])) / 1000


def wheels_of(rows: Rows, at: int) -> tuple[Wheels, Wheels]:
    """Rear wheels and casters of one set-up; half of each pair's mass and inertia."""

    def half(choice: str, key: str) -> float:
        return float(rows.option(choice, key)[at]) / 2

    def metres(name: str) -> float:
        return float(rows[name][at]) / 1000

    spin, rolls = half("rear_wheel", "spin_inertia_kgm2"), half("caster", "spin_inertia_kgm2")
    mass, small = half("rear_wheel", "mass_kg"), half("caster", "mass_kg")
    return (
        Wheels(mass, spin, spin / 2, metres("rear_radius"), metres("hub_half")),
        Wheels(
            small,
            rolls,
            rolls / 2,
            metres("caster_radius"),
            metres("caster_track") / 2,
            metres("wheelbase"),
        ),
    )


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize(
    ("figure", "slope"),
    [("start_lift_level_mps2", 0.0), ("start_lift_1_to_12_mps2", UP_1_TO_12)],
)
def test_push_off_that_lifts_the_casters(seed: int, figure: str, slope: float) -> None:
    rows, occupant, points = chairs(seed)
    own = figures_of(rows, occupant, [figure])[figure]
    for value, engine in zip(own, engines(rows, points), strict=True):
        assert value == pytest.approx(engine.start_lifts_at(slope, float(value)), rel=AGREE)


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize(
    ("figure", "slope"),
    [("braking_lift_level_mps2", 0.0), ("braking_lift_1_to_12_mps2", UP_1_TO_12)],
)
def test_braking_that_lifts_the_rear_wheels(seed: int, figure: str, slope: float) -> None:
    rows, occupant, points = chairs(100 + seed)
    own = figures_of(rows, occupant, [figure])[figure]
    for value, engine in zip(own, engines(rows, points, rear_grip=0.0), strict=True):
        assert value == pytest.approx(engine.braking_lifts_at(slope, float(value)), rel=AGREE)


@pytest.mark.parametrize("seed", SEEDS)
def test_torque_that_holds_a_line_on_a_cross_slope(seed: int) -> None:
    rows, occupant, points = chairs(200 + seed)
    per_degree = figures_of(rows, occupant, ["downhill_moment_nm_per_deg"])
    moment = per_degree["downhill_moment_nm_per_deg"] * np.sin(np.radians(3.0))
    torque = moment / np.sin(np.radians(1.0)) / rows["rear_track"] * rows["rear_radius"]
    for value, engine in zip(torque, engines(rows, points, casters_roll=False), strict=True):
        assert value == pytest.approx(engine.holding_torque(3.0, float(value)), rel=AGREE)


PAIRS = {
    "width": (
        "side frames", "axle plates", "arm supports", "back posts", "push handles",
        "wheel locks", "anti-tip device",
    ),
    "caster_track": ("caster forks", "stem spacers", "caster housings"),
}  # fmt: skip
SHEETS = {
    "cross-brace": (1, 0),
    "camber tube": (1, 0),
    "back upholstery": (1, 0),
    "seat sling": (1, 1),
    "cushion": (1, 1),
    "side frames": (0, 1),
}
"""What is as wide as the seat, what as long: an even rod or sheet of that size."""
ROWS = {
    "trunk": ("MIDS", "MIDH"),
    "head": ("VERT", "CERV"),
    "upper_arm": ("SJC", "EJC"),
    "forearm": ("EJC", "WJC"),
    "hand": ("WJC", "MET3"),
    "thigh": ("HJC", "KJC"),
    "shank": ("KJC", "AJC"),
    "foot": ("HEEL", "TTIP"),
}


@pytest.mark.parametrize("seed", SEEDS)
def test_yaw_inertia_of_parts_and_segments_in_their_places(seed: int) -> None:
    rows, occupant, points = chairs(300 + seed)
    own = figures_of(rows, occupant, ["yaw_inertia_kgm2"])["yaw_inertia_kgm2"]
    for at, value in enumerate(own):
        solids = spread_out(rows, occupant, points, at)
        rear, casters = wheels_of(rows, at)
        # A hand rim turns with its wheel: a hoop.
        rim = float(rows.option("hand_rim", "mass_kg")[at]) / 2
        rim *= (float(rows["rim_radius"][at]) / 1000) ** 2
        rear = replace(rear, spin=rear.spin + rim, upright=rear.upright + rim / 2)
        engine = Moving(solids, rear, casters, casters_roll=False)
        assert value == pytest.approx(engine.yaw_inertia(), rel=AGREE)


def spread_out(rows: Rows, occupant: Occupant, points: list[MassPoints], at: int) -> list[Solid]:
    """Parts of pairs beside the seat or at the casters, sheets with their size, limbs turned."""
    placed = on_floor(rows, points)
    solids = []
    for n, point in enumerate(points):
        mass = float(placed.mass[at, n])
        if point.name in {"rear wheels", "casters"} or mass == 0:
            continue
        x, y, z = (float(axis[at, n]) for axis in (placed.x, placed.y, placed.z))
        out = next((float(rows[k][at]) / 2 for k, names in PAIRS.items() if point.name in names), 0)
        inertia, pitch = own_inertia(rows, occupant, point.name, at)
        if point.name == "hand rims":
            out = float(rows["hub_half"][at] + rows["rim_standoff"][at])
        halves = (out, -out) if out else (y,)
        share = mass / len(halves)
        moments = tuple(max(share * each, 1e-9) for each in inertia)
        solids += [
            Solid(share, place_of(rows, x, side, z, at), moments, pitch)  # type: ignore[arg-type]
            for side in halves
        ]
    return solids


def own_inertia(
    rows: Rows, occupant: Occupant, name: str, at: int
) -> tuple[tuple[float, float, float], float]:
    """Principal inertias for 1 kg [m2] and how far the long axis leans back of upright [rad]."""
    for segment in occupant.body.segments:
        if segment.name == name:
            end_from, end_to = ROWS[segment.link]
            letter = "M" if occupant.body.sex == "male" else "F"
            row = find_row(
                "body", "de_leva1996_segments", sex=letter, end_from=end_from, end_to=end_to
            )
            across = (segment.gyration_mm / 1000) ** 2
            along = (float(row["rg_longitudinal_pct"]) / 100 * segment.length_mm / 1000) ** 2
            return (across, across, along), leans(rows, segment.link, segment.side, at)
    wide, long = SHEETS.get(name, (0, 0))
    across = wide * (float(rows["width"][at]) / 1000) ** 2 / 12
    along = long * (float(rows["depth"][at]) / 1000) ** 2 / 12
    return (across, along, (across + along) * (1 - 1e-9)), 0.0


def leans(rows: Rows, link: str, side: str, at: int) -> float:
    """How far a segment's long axis is turned nose-up from upright [rad]."""
    frame = {
        "trunk": "lean", "head": "lean", "upper_arm": None, "forearm": np.pi / 2,
        "hand": np.pi / 2, "shank": f"shank_{side}",
    }  # fmt: skip
    held = frame.get(link, 0.0)
    turned = float(rows[held][at]) if isinstance(held, str) else held or 0.0
    if link == "thigh":
        turned = np.pi / 2 + float(rows["seat_slope"][at])
    if link == "foot":
        turned = np.pi / 2 + float(rows[f"sole_{side}"][at])
    return float(turned + rows["pitch"][at])
