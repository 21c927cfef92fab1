"""Bodies of clients: masses, lengths, lost parts."""

from __future__ import annotations

from typing import Any

import pytest

from chairwright.errors import InputError
from chairwright.person.amputation import partial_segment
from chairwright.person.body import Body, build_body
from chairwright.person.client import Amputation
from chairwright.person.estimates import complete
from chairwright.person.segments import Table, segment_kinds

from .people import client


def _body(table: Table = "de_leva", **changes: Any) -> Body:
    person = client(**changes)
    return build_body(person, complete(person), table)


def _mass(body: Body, link: str, side: str) -> float:
    return sum(s.mass_kg for s in body.segments if (s.link, s.side) == (link, side))


@pytest.mark.parametrize("table", ["de_leva", "winter"])
@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"amputations": (Amputation("left", "above_knee", 0.6), Amputation("right", "hip"))},
        {"amputations": (Amputation("left", "shoulder"), Amputation("right", "below_elbow"))},
        {"leg_mass_factor": 0.7},
        {"body_mass": "200 kg"},
    ],
)
def test_segments_sum_to_the_measured_mass(table: Table, changes: dict[str, Any]) -> None:
    body = _body(table, **changes)
    total = sum(segment.mass_kg for segment in body.segments)
    assert total == pytest.approx(body.mass_kg, rel=1e-12)


def test_a_whole_body_has_the_published_shares() -> None:
    body = _body(body_mass="100 kg")
    # de Leva 1996, men, in % of body mass.
    assert _mass(body, "trunk", "middle") == pytest.approx(43.46, abs=0.005)
    assert _mass(body, "thigh", "left") == pytest.approx(14.16, abs=0.005)
    assert _mass(body, "foot", "right") == pytest.approx(1.37, abs=0.005)


def test_a_stump_keeps_the_partial_segments_share() -> None:
    body = _body(amputations=(Amputation("left", "above_knee", 0.5),))
    kept, com = partial_segment(segment_kinds("male", "de_leva")["thigh"].com_fraction, 0.5)
    ratio = _mass(body, "thigh", "left") / _mass(body, "thigh", "right")
    assert ratio == pytest.approx(kept, rel=1e-12)
    stump = next(s for s in body.segments if s.name == "left thigh")
    assert stump.com_fraction == pytest.approx(com, rel=1e-12)


@pytest.mark.parametrize(
    ("level", "gone"),
    [
        ("foot", {"foot"}),
        ("through_knee", {"foot", "shank"}),
        ("hip", {"foot", "shank", "thigh"}),
        ("hand", {"hand"}),
        ("through_elbow", {"hand", "forearm"}),
        ("shoulder", {"hand", "forearm", "upper_arm"}),
    ],
)
def test_lost_segments_are_absent(level: Any, gone: set[str]) -> None:
    body = _body(amputations=(Amputation("right", level),))
    right = {s.link for s in body.segments if s.side == "right"}
    left = {s.link for s in body.segments if s.side == "left"}
    assert left - right == gone


def test_lengths_of_lost_joints_are_none() -> None:
    body = _body(amputations=(Amputation("left", "below_knee"), Amputation("right", "above_elbow")))
    assert body.thigh_mm["left"] is not None
    assert body.shank_mm["left"] is None
    assert body.foot_length_mm["left"] is None
    assert body.upper_arm_mm["right"] is None
    assert body.forearm_to_grip_mm["right"] is None
    assert body.forearm_to_grip_mm["left"] is not None


def test_leg_mass_factor_takes_from_the_legs_only() -> None:
    whole, thin = _body(), _body(leg_mass_factor=0.7)
    legs = _mass(thin, "thigh", "left") / _mass(whole, "thigh", "left")
    trunk = _mass(thin, "trunk", "middle") / _mass(whole, "trunk", "middle")
    arms = _mass(thin, "upper_arm", "left") / _mass(whole, "upper_arm", "left")
    assert legs / trunk == pytest.approx(0.7, rel=1e-12)
    assert arms == pytest.approx(trunk, rel=1e-12)
    assert trunk > 1.0


def test_seat_to_head_is_the_sitting_height() -> None:
    body = _body(sitting_height="91 cm")
    assert body.hip_above_seat_mm + body.head_top_mm == pytest.approx(910.0, abs=1e-9)
    assert 0.0 < body.trunk_length_mm < body.neck_mm < body.head_top_mm


def test_shoulders_stand_half_the_biacromial_width_off_the_middle() -> None:
    assert _body(biacromial_width="40 cm").half_shoulder_mm == 200.0


def test_the_longer_leg_is_longer_by_the_measured_difference() -> None:
    body = _body(buttock_knee_length=("60 cm", "63 cm"))
    left, right = body.thigh_mm["left"], body.thigh_mm["right"]
    assert left is not None and right is not None
    assert right - left == pytest.approx(30.0, abs=1e-9)


def test_the_shank_ends_where_the_measured_lower_leg_does() -> None:
    body = _body(lower_leg_length=("40 cm", "44 cm"), knee_height=("52 cm", "56 cm"))
    left, right = body.shank_mm["left"], body.shank_mm["right"]
    assert left is not None and right is not None
    # The knee joint lies half way from the crease to the top of the knee.
    assert left + body.ankle_height_mm == pytest.approx(460.0, abs=1e-9)
    assert right + body.ankle_height_mm == pytest.approx(500.0, abs=1e-9)


def test_no_room_behind_the_hip_is_refused() -> None:
    with pytest.raises(InputError, match="buttock_knee_length"):
        _body(stature="210 cm", buttock_knee_length=("40 cm", "40 cm"))


@pytest.mark.parametrize("mass", ["40 kg", "120 kg", "250 kg"])
def test_the_hip_moves_forward_with_body_mass(mass: str) -> None:
    light = _body(only=("stature", "body_mass"), body_mass="38 kg")
    heavy = _body(only=("stature", "body_mass"), body_mass=mass)
    assert heavy.hip_ahead_of_back_mm > light.hip_ahead_of_back_mm


def test_the_womans_thigh_is_not_the_short_one_of_the_table() -> None:
    person = client("female", only=("stature", "body_mass"), stature="1735 mm")
    thigh = build_body(person, complete(person)).thigh_mm["left"]
    # 0.245 of stature (Drillis & Contini 1966), where de Leva prints 368.5 mm.
    assert thigh == pytest.approx(425.0, abs=0.5)
