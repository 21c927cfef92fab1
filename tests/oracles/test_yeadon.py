"""An independent geometric body model (yeadon 2.0.1, stadium solids) as oracle.

The four sample people are the package's own; their measurement files are copied beside the
licence in ``data/yeadon``. yeadon's axes: x left, y backward, z up, from mid-hip, in metres.
"""

from __future__ import annotations

import contextlib
import copy
import io
import warnings
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from chairwright.mass_points import MassPoints
from chairwright.person.body import assemble_body
from chairwright.person.client import Sex, Side
from chairwright.person.posture import (
    centre_of_mass,
    leg_points,
    pitch_inertia_kgm2,
    upper_body_points,
)
from chairwright.person.proportions import Lengths
from chairwright.person.segments import de_leva_length_mm

DATA = Path(__file__).parent / "data" / "yeadon"
PEOPLE = ("male1", "male2", "male4", "female1")
SIDES: tuple[Side, Side] = ("left", "right")


@cache
def _human(name: str, elbows_90: bool = False) -> Any:
    """Seat a sample person: thighs -90, knees 90.

    The package scales a class attribute when a file names a total mass, so that later people
    in the same process come out scaled too: it is put back after every person.
    """
    from yeadon import Human

    densities = copy.deepcopy(Human.segmental_densities)
    try:
        with warnings.catch_warnings(), contextlib.redirect_stdout(io.StringIO()):
            warnings.simplefilter("ignore")
            human = Human(str(DATA / f"{name}.txt"))
            angles = dict.fromkeys(Human.CFGnames, 0.0)
            angles["PJ1extension"] = angles["PK1extension"] = -np.pi / 2
            angles["J1J2flexion"] = angles["K1K2flexion"] = np.pi / 2
            if elbows_90:
                angles["A1A2extension"] = angles["B1B2extension"] = -np.pi / 2
            human.set_CFG_dict(angles)
    finally:
        Human.segmental_densities = densities
    return human


def _forward_up_mm(human: Any) -> tuple[float, float]:
    _, backward, up = (float(value) for value in np.ravel(human.center_of_mass))
    return -1000.0 * backward, 1000.0 * up


@pytest.mark.parametrize(
    ("name", "elbows_90", "forward", "up"),
    [
        ("male1", False, 120.06, 132.06),
        ("male2", False, 90.24, 174.08),
        ("male4", False, 94.77, 180.60),
        ("female1", False, 101.54, 142.88),
        ("male1", True, 127.65, 139.65),
        ("male2", True, 98.82, 182.67),
        ("male4", True, 104.85, 190.67),
        ("female1", True, 107.60, 148.94),
    ],
)
def test_the_oracle_is_set_up_as_recorded(
    name: str, elbows_90: bool, forward: float, up: float
) -> None:
    got = _forward_up_mm(_human(name, elbows_90))
    assert got == pytest.approx((forward, up), abs=0.01)


@pytest.mark.parametrize(
    ("name", "mass", "inertia"),
    [
        ("male1", 58.2005, (5.9180, 4.6886, 2.1386)),
        ("male2", 98.1704, (10.8394, 9.4463, 3.6072)),
        ("male4", 78.745, (8.4947, 7.4491, 2.9768)),
        ("female1", 59.9513, (5.1527, 4.1803, 1.8237)),
    ],
)
def test_the_oracle_mass_and_inertia_as_recorded(
    name: str, mass: float, inertia: tuple[float, float, float]
) -> None:
    human = _human(name)
    assert float(human.mass) == pytest.approx(mass, abs=0.001)
    assert tuple(np.diag(human.inertia)) == pytest.approx(inertia, abs=0.001)


@pytest.mark.parametrize("name", PEOPLE)
def test_composite_code_agrees_on_the_oracles_segments(name: str) -> None:
    human = _human(name)
    points, own = [], {}
    for at, segment in enumerate(human.segments):
        x, y, z = (float(value) for value in np.ravel(segment.center_of_mass))
        points.append(MassPoints(str(at), float(segment.mass), -1000 * y, 1000 * x, 1000 * z))
        own[str(at)] = 1000 * float(np.sqrt(segment.inertia[0, 0] / segment.mass))
    mass, x_mm, y_mm, z_mm = centre_of_mass(points)
    forward, up = _forward_up_mm(human)
    assert mass == pytest.approx(float(human.mass), abs=1e-9)
    # 1e-9 m.
    assert (x_mm, z_mm) == pytest.approx((forward, up), abs=1e-6)
    assert y_mm == pytest.approx(0.0, abs=1e-6)
    inertia = float(np.asarray(human.inertia)[0, 0])
    assert pitch_inertia_kgm2(points, own) == pytest.approx(inertia, abs=1e-9)


def _measurements(name: str) -> dict[str, float]:
    lines = (DATA / f"{name}.txt").read_text(encoding="utf-8").splitlines()
    pairs = (line.split(":") for line in lines if not line.startswith("#"))
    return {key: 10.0 * float(value) for key, value in pairs}


def _lengths(name: str, sex: Sex) -> Lengths:
    """Joint lengths [mm] from the 95 measurements: mean of both sides, as in each solid's ends."""
    at = _measurements(name)

    def mean(level: str) -> float:
        first, second = ("L" + letter + level[1:] for letter in ("ab" if level[0] == "a" else "jk"))
        return (at[first] + at[second]) / 2

    def both(length: float) -> dict[Side, float]:
        return dict.fromkeys(SIDES, length)

    upper_arm, thigh, top = mean("a2L"), mean("j3L"), at["Ls5L"] + at["Ls8L"]
    forearm = mean("a4L") - upper_arm
    to_knuckles = de_leva_length_mm(sex, "WJC", "MET3") / de_leva_length_mm(sex, "WJC", "DAC3")
    neck = de_leva_length_mm(sex, "CERV", "MIDH")
    neck_share = neck / (neck + de_leva_length_mm(sex, "VERT", "CERV"))
    return Lengths(
        hip_above_seat=0.0,
        hip_ahead_of_back=0.0,
        trunk=at["Ls4L"],
        neck=top * neck_share,
        head_top=top,
        head_radius=100.0,
        half_shoulder=200.0,
        half_hip=85.0,
        upper_arm=both(upper_arm),
        forearm=both(forearm),
        grip=both(forearm + mean("a7L") * to_knuckles),
        thigh=both(thigh),
        shank=both(mean("j5L") - thigh),
        foot=both(mean("j9L")),
        ankle_height=0.0,
    )


@pytest.mark.parametrize(
    ("name", "sex", "forward", "up"),
    [
        ("male1", "male", -22.6, 23.1),
        ("male2", "male", 3.6, 1.5),
        ("male4", "male", -0.9, 9.5),
        ("female1", "female", -13.0, 24.2),
    ],
)
def test_our_seated_com_against_the_oracle(name: str, sex: Sex, forward: float, up: float) -> None:
    body = assemble_body(sex=sex, table="de_leva", mass_kg=70.0, lengths=_lengths(name, sex))
    points, _ = upper_body_points(body, 0.0, 0.0, 0.0, elbow_bend_rad=0.0)
    for side in SIDES:
        # The oracle keeps the feet in line with the shanks.
        points += leg_points(body, side, 0.0, 0.0, 0.0, 0.0, -np.pi / 2)[0]
    _, x, _, z = centre_of_mass(points)
    oracle_x, oracle_z = _forward_up_mm(_human(name))
    gap_x, gap_z = float(x) - oracle_x, float(z) - oracle_z
    assert (gap_x, gap_z) == pytest.approx((forward, up), abs=0.1)
    # The stated honest error of an estimated seated centre of mass.
    assert abs(gap_x) <= 25.0
    assert abs(gap_z) <= 30.0
