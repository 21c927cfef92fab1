"""The seated body: broadcasting, turning, and joints that agree with the masses."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.mass_points import MassPoints
from chairwright.person.body import Body, build_body
from chairwright.person.client import Amputation
from chairwright.person.estimates import complete
from chairwright.person.posture import (
    Joint,
    centre_of_mass,
    leg_points,
    pitch_inertia_kgm2,
    upper_body_points,
)

from .people import client


def _body(amputations: tuple[Amputation, ...] = ()) -> Body:
    person = client(amputations=amputations)
    return build_body(person, complete(person))


def _seat(body: Body, x: object = 0.0, z: object = 0.0, trunk: object = 0.1) -> list[MassPoints]:
    points, _ = upper_body_points(body, x, z, trunk)  # type: ignore[arg-type]
    for side in ("left", "right"):
        points += leg_points(body, side, x, z, 0.0, 0.3)[0]  # type: ignore[arg-type]
    return points


def _apart(first: Joint | None, second: Joint | None) -> float:
    assert first is not None and second is not None
    return float(np.hypot(first[0] - second[0], first[1] - second[1]))


def test_arrays_give_what_scalars_give() -> None:
    body = _body()
    x, trunk = np.array([0.0, 15.0, -40.0]), np.array([0.0, 0.1, 0.35])
    together = centre_of_mass(_seat(body, x, 480.0, trunk))
    for at in range(3):
        alone = centre_of_mass(_seat(body, float(x[at]), 480.0, float(trunk[at])))
        assert together[1][at] == pytest.approx(alone[1], abs=1e-9)  # type: ignore[index]
        assert together[3][at] == pytest.approx(alone[3], abs=1e-9)  # type: ignore[index]


def test_every_gram_is_seated() -> None:
    for lost in ((), (Amputation("left", "above_knee"), Amputation("right", "below_elbow"))):
        body = _body(lost)
        assert centre_of_mass(_seat(body))[0] == pytest.approx(80.0, abs=1e-9)


def test_turning_every_part_turns_the_centre_of_mass() -> None:
    body, turn = _body(), 0.2
    plain, _ = upper_body_points(body, 0.0, 0.0, 0.1)
    turned, _ = upper_body_points(body, 0.0, 0.0, 0.1 + turn, arms_up_rad=turn)
    for side in ("left", "right"):
        plain += leg_points(body, side, 0.0, 0.0, 0.05, 0.3, 0.1)[0]
        turned += leg_points(body, side, 0.0, 0.0, 0.05 + turn, 0.3 + turn, 0.1 + turn)[0]
    _, x, _, z = centre_of_mass(plain)
    _, got_x, _, got_z = centre_of_mass(turned)
    assert got_x == pytest.approx(x * np.cos(turn) - z * np.sin(turn), abs=1e-9)
    assert got_z == pytest.approx(x * np.sin(turn) + z * np.cos(turn), abs=1e-9)
    same = pitch_inertia_kgm2(turned, body.gyration_mm)
    assert same == pytest.approx(pitch_inertia_kgm2(plain, body.gyration_mm), rel=1e-12)


def test_joints_stand_their_lengths_apart() -> None:
    body = _body()
    _, upper = upper_body_points(body, 100.0, 500.0, 0.2, 0.1)
    _, leg = leg_points(body, "left", 100.0, 500.0, 0.1, 0.4, 0.05)
    hip = (100.0, 500.0)
    assert _apart(hip, upper.shoulder) == pytest.approx(body.trunk_length_mm)
    assert _apart(upper.shoulder, upper.elbow["left"]) == pytest.approx(body.upper_arm_mm["left"])
    grip = body.forearm_to_grip_mm["right"]
    assert _apart(upper.elbow["right"], upper.hand["right"]) == pytest.approx(grip)
    assert _apart(hip, leg.knee) == pytest.approx(body.thigh_mm["left"])
    assert _apart(leg.knee, leg.ankle) == pytest.approx(body.shank_mm["left"])
    assert _apart(leg.ankle, leg.heel) == pytest.approx(body.ankle_height_mm)
    assert _apart(leg.heel, leg.toe) == pytest.approx(body.foot_length_mm["left"])


def test_zero_angles_are_upright_trunk_level_thigh_and_hanging_shank() -> None:
    body = _body()
    _, upper = upper_body_points(body, 0.0, 0.0, 0.0)
    _, leg = leg_points(body, "left", 0.0, 0.0, 0.0, 0.0)
    assert upper.shoulder == pytest.approx((0.0, body.trunk_length_mm))
    elbow, hand = upper.elbow["left"], upper.hand["left"]
    assert elbow is not None and hand is not None
    assert elbow[1] < upper.shoulder[1]
    assert hand[0] > elbow[0]
    assert hand[1] == pytest.approx(elbow[1])
    assert leg.knee == pytest.approx((body.thigh_mm["left"], 0.0))
    assert leg.ankle == pytest.approx((body.thigh_mm["left"], -(body.shank_mm["left"] or 0.0)))


def test_the_foots_mass_is_half_way_from_ankle_to_sole() -> None:
    body = _body()
    points, leg = leg_points(body, "left", 0.0, 0.0, 0.0, 0.0)
    foot = next(point for point in points if point.name == "left foot")
    assert leg.ankle is not None and leg.heel is not None
    assert foot.z_mm == pytest.approx((leg.ankle[1] + leg.heel[1]) / 2)


def test_signs_of_the_angles() -> None:
    body = _body()
    back, _ = upper_body_points(body, 0.0, 0.0, 0.3)
    assert next(p for p in back if p.name == "trunk").x_mm < 0.0
    _, up = leg_points(body, "left", 0.0, 0.0, 0.2, 0.0)
    assert up.knee is not None and up.knee[1] > 0.0
    _, forward = leg_points(body, "left", 0.0, 0.0, 0.0, 0.2)
    assert forward.ankle is not None and forward.knee is not None
    assert forward.ankle[0] > forward.knee[0]
    _, toes = leg_points(body, "left", 0.0, 0.0, 0.0, 0.0, 0.2)
    assert toes.toe is not None and toes.heel is not None
    assert toes.toe[1] > toes.heel[1]


def test_left_is_positive() -> None:
    points = {point.name: point.y_mm for point in _seat(_body())}
    assert points["left thigh"] == -points["right thigh"] > 0.0
    assert points["left hand"] == -points["right hand"] > 0.0
    assert points["trunk"] == 0.0


@pytest.mark.parametrize(
    ("level", "there"),
    [
        ("foot", ("knee", "ankle")),
        ("below_knee", ("knee",)),
        ("through_knee", ("knee",)),
        ("above_knee", ()),
        ("hip", ()),
    ],
)
def test_lost_joints_are_none(level: str, there: tuple[str, ...]) -> None:
    body = _body((Amputation("left", level),))  # type: ignore[arg-type]
    _, leg = leg_points(body, "left", 0.0, 0.0, 0.0, 0.0)
    names = ("knee", "ankle", "heel", "toe")
    assert tuple(name for name in names if getattr(leg, name) is not None) == there
    _, other = leg_points(body, "right", 0.0, 0.0, 0.0, 0.0)
    assert all(getattr(other, name) is not None for name in names)


def test_a_lost_hand_leaves_the_elbow() -> None:
    _, upper = upper_body_points(_body((Amputation("right", "hand"),)), 0.0, 0.0, 0.0)
    assert upper.elbow["right"] is not None
    assert upper.hand["right"] is None
    assert upper.hand["left"] is not None
