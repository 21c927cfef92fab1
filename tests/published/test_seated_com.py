"""Seated centre of mass against published tables and experiments.

Values are those of the two published segment tables (de Leva 1996; Winter 2009) in the posture
of ``reference_people``, worked out independently of this code; x forward, z up from mid-hip.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from chairwright.mass_points import MassPoints
from chairwright.person.body import build_body
from chairwright.person.client import Client, Measure, Sex
from chairwright.person.estimates import complete
from chairwright.person.posture import (
    centre_of_mass,
    leg_points,
    pitch_inertia_kgm2,
    upper_body_points,
)
from chairwright.person.proportions import derive_lengths, drillis_fraction, hip_height_ratio
from chairwright.tables.load import find_row, load_table
from chairwright.units import parse_quantity

from .reference_people import SIDES, reference_body, seated

PRINTED = 0.1

CASES: list[tuple[str, Sex, dict[str, float], float, float]] = [
    ("elbows 90, knees 90", "male", {}, 108.3, 178.5),
    ("elbows 90, knees 90", "female", {}, 93.6, 177.6),
    ("arms hanging", "male", {"elbow_bend_deg": 0.0}, 100.2, 170.4),
    ("arms hanging", "female", {"elbow_bend_deg": 0.0}, 86.7, 170.6),
    ("knees 120", "male", {"knee_deg": 120.0}, 122.3, 183.9),
    ("knees 120", "female", {"knee_deg": 120.0}, 108.1, 182.7),
    ("knees 60", "male", {"knee_deg": 60.0}, 93.5, 180.8),
    ("knees 60", "female", {"knee_deg": 60.0}, 78.5, 180.4),
    ("trunk back 10", "male", {"trunk_back_deg": 10.0}, 68.6, 175.0),
    ("trunk back 10", "female", {"trunk_back_deg": 10.0}, 54.4, 174.1),
    ("trunk back 20", "male", {"trunk_back_deg": 20.0}, 30.1, 164.7),
    ("trunk back 20", "female", {"trunk_back_deg": 20.0}, 16.3, 163.9),
    ("thighs raised 10", "male", {"thigh_up_deg": 10.0}, 111.8, 196.3),
    ("thighs raised 10", "female", {"thigh_up_deg": 10.0}, 97.5, 193.1),
]


@pytest.mark.parametrize(("name", "sex", "posture", "x", "z"), CASES)
def test_de_leva_posture(name: str, sex: Sex, posture: dict[str, Any], x: float, z: float) -> None:
    _, got_x, got_y, got_z = centre_of_mass(seated(reference_body(sex), **posture))
    assert got_x == pytest.approx(x, abs=PRINTED), name
    assert got_z == pytest.approx(z, abs=PRINTED), name
    assert got_y == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(("sex", "x", "z"), [("male", 106.5, 178.5), ("female", 92.1, 177.6)])
def test_heel_a_quarter_of_the_foot_behind_the_ankle(sex: Sex, x: float, z: float) -> None:
    _, got_x, _, got_z = centre_of_mass(seated(reference_body(sex, heel_behind_share=0.25)))
    assert got_x == pytest.approx(x, abs=PRINTED)
    assert got_z == pytest.approx(z, abs=PRINTED)


@pytest.mark.parametrize(("sex", "inertia"), [("male", 7.588), ("female", 6.187)])
def test_pitch_inertia_of_the_seated_body(sex: Sex, inertia: float) -> None:
    body = reference_body(sex)
    # 0.005: the women's mass fractions sum to 99.99 % in print and are scaled to 100 % here.
    assert pitch_inertia_kgm2(seated(body), body.gyration_mm) == pytest.approx(inertia, abs=0.005)


@pytest.mark.parametrize("sex", ["male", "female"])
def test_ten_degrees_of_recline_move_the_com_about_forty_mm_back(sex: Sex) -> None:
    body = reference_body(sex)
    upright = centre_of_mass(seated(body))[1]
    back = centre_of_mass(seated(body, trunk_back_deg=10.0))[1]
    assert upright - back == pytest.approx(39.5, abs=1.0)


@pytest.mark.parametrize("mass_kg", [50.0, 75.0, 120.0])
def test_winter_head_arms_trunk_thighs_and_foot_legs(mass_kg: float) -> None:
    stature = 1750.0
    hat = find_row("body", "winter2009_segments", segment="HAT")
    thigh = find_row("body", "winter2009_segments", segment="thigh")
    foot_leg = find_row("body", "winter2009_segments", segment="foot_leg")
    thigh_mm = drillis_fraction("thigh") * stature
    trunk_com = float(hat["com_prox"]) * drillis_fraction("hip_to_shoulder") * stature
    shank_com = float(foot_leg["com_prox"]) * drillis_fraction("shank") * stature
    points = [
        MassPoints("hat", float(hat["mass_fraction"]) * mass_kg, 0.0, 0.0, trunk_com),
        MassPoints(
            "thighs",
            2 * float(thigh["mass_fraction"]) * mass_kg,
            float(thigh["com_prox"]) * thigh_mm,
            0.0,
            0.0,
        ),
        MassPoints(
            "foot-legs", 2 * float(foot_leg["mass_fraction"]) * mass_kg, thigh_mm, 0.0, -shank_com
        ),
    ]
    _, x, _, z = centre_of_mass(points)
    assert x == pytest.approx(89.44, abs=0.005)
    assert z == pytest.approx(182.08, abs=0.005)
    assert x / stature == pytest.approx(0.051107, abs=5e-7)
    assert z / stature == pytest.approx(0.104048, abs=5e-7)


def _mean_man(mass: str = "77 kg") -> Client:
    def length(name: str, typed: str) -> Measure:
        return Measure(name, "middle", parse_quantity(typed, "length", name), 5.0)

    measures = (
        length("stature", "1756 mm"),
        Measure("body_mass", "middle", parse_quantity(mass, "mass", "body_mass"), 1.0),
        length("sitting_height", "918 mm"),
        length("buttock_knee_length", "618 mm"),
    )
    return Client("mean man", "male", measures)


def _com_of(client: Client, recline_deg: float) -> tuple[float, float]:
    body = build_body(client, complete(client))
    hip = (body.hip_ahead_of_back_mm, body.hip_above_seat_mm)
    points, _ = upper_body_points(body, *hip, np.radians(recline_deg))
    for side in SIDES:
        points += leg_points(body, side, *hip, 0.0, 0.0)[0]
    _, x, _, z = centre_of_mass(points)
    return float(x), float(z)


@pytest.mark.parametrize(
    ("sex", "sitting_height", "hip"), [("male", 918.3, 65), ("female", 856.6, 51)]
)
def test_hip_height_above_the_seat(sex: Sex, sitting_height: float, hip: float) -> None:
    assert hip_height_ratio(sex) * sitting_height == pytest.approx(hip, abs=0.5)


def test_mean_man_hip_and_com_above_the_seat() -> None:
    client = _mean_man()
    lengths = derive_lengths("male", complete(client))
    assert lengths.hip_above_seat == pytest.approx(65.0, abs=1.0)
    # 245 in print from the reference man's own limbs; the client's limbs differ a little,
    # so the stated honest error of the height, 30 mm, is far wider than the 10 mm asked here.
    assert _com_of(client, 0.0)[1] == pytest.approx(245.0, abs=10.0)
    above_hip = centre_of_mass(seated(reference_body("male")))[3]
    assert 65.0 + above_hip * 1756 / 1741 == pytest.approx(245.0, abs=1.0)


def test_mean_man_hip_and_com_ahead_of_the_buttocks() -> None:
    lengths = derive_lengths("male", complete(_mean_man()))
    # Print rounds the thigh to 426 mm, where 0.245 x 1756 is 430 mm: 4 mm apart.
    assert lengths.thigh["left"] == pytest.approx(430.2, abs=0.05)
    assert lengths.hip_ahead_of_back == pytest.approx(137.0, abs=4.5)
    ahead = centre_of_mass(seated(reference_body("male")))[1] * 1756 / 1741
    reclined = centre_of_mass(seated(reference_body("male"), trunk_back_deg=7.0))[1] * 1756 / 1741
    assert 137.0 + ahead == pytest.approx(246.0, abs=1.0)
    assert 137.0 + reclined == pytest.approx(218.0, abs=1.0)


@pytest.mark.parametrize(
    ("mass_kg", "ahead_mm"),
    [
        (float(row["mass_kg"]), float(row["com_ahead_of_buttocks_mm"]))
        for row in load_table("body", "umtri_seated_com")
    ],
)
def test_laser_scanned_men_sitting_relaxed(mass_kg: float, ahead_mm: float) -> None:
    # The scans: about 220 mm at 77 kg and about 273 mm at 140 kg (abstract of the study);
    # 25 mm is the stated honest error fore-aft. Relaxed sitting taken as 7 degrees of recline.
    measures = _mean_man(f"{mass_kg} kg").measures[:2]
    x, _ = _com_of(Client("scanned man", "male", measures), 7.0)
    assert x == pytest.approx(ahead_mm, abs=25.0)


def test_laser_scan_table_as_printed() -> None:
    light, heavy = load_table("body", "umtri_seated_com")
    assert (light["mass_kg"], light["com_ahead_of_buttocks_mm"]) == ("77", "220")
    assert (heavy["mass_kg"], heavy["com_ahead_of_buttocks_mm"]) == ("140", "273")
    rise = float(heavy["com_ahead_of_buttocks_mm"]) - float(light["com_ahead_of_buttocks_mm"])
    assert rise == 53.0
    assert rise / (140 - 77) == pytest.approx(0.84, abs=0.005)
