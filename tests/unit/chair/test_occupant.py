"""The client as a load: who pushes and rests, where the hip comes, where loads hang."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from chairwright.chair.occupant import CARRY_PLACES, hip_place, pushing_shank_rad
from chairwright.chair.steps import NO_FOOT, STEPS
from chairwright.figures.evaluate import realise
from chairwright.person.client import Amputation, Carried
from tests.laws.setups import Made, some
from tests.oracles.lines import everyday
from tests.oracles.people import client, seated

LEFT_LOST = (Amputation("left", "below_knee", 0.4),)


def test_feet_that_rest_are_there_and_do_not_push() -> None:
    assert seated(client()).feet_that_rest == ("left", "right")
    assert seated(client(propulsion="feet")).feet_that_rest == ()
    assert seated(client(propulsion="hand_and_foot_right")).feet_that_rest == ("left",)
    assert seated(client(amputations=LEFT_LOST)).feet_that_rest == ("right",)


def test_a_lost_lower_leg_has_no_length() -> None:
    assert set(seated(client(amputations=LEFT_LOST)).lower_leg_mm) == {"right"}


def test_carried_loads_count_and_hang_in_their_places() -> None:
    carries = (Carried("bag", 4.0, "backpack"), Carried("oxygen", 3.5, "under_seat"))
    occupant = seated(client(mass="80 kg", carries=carries))
    assert occupant.load_kg == pytest.approx(87.5)
    bag, oxygen = occupant.carried_points()
    assert (bag.x_mm, bag.z_mm) == CARRY_PLACES["backpack"]
    assert (oxygen.mass_kg, oxygen.y_mm) == (3.5, 0.0)


@pytest.mark.parametrize("back_deg", [0.0, 8.0, 20.0])
@pytest.mark.parametrize("seat_deg", [0.0, 2.0, 6.0])
def test_hip_keeps_its_distances_from_back_and_cushion(back_deg: float, seat_deg: float) -> None:
    body = seated(client()).body
    back, seat = np.radians([back_deg]), np.radians([seat_deg])
    behind, rear = np.array([15.0]), np.array([30.0])
    x, z = hip_place(body, back, seat, behind, rear)
    # Distance from the back surface: a line parallel to the post, 15 mm behind its front face.
    ahead = x * np.cos(back) + z * np.sin(back) + behind
    # Distance from the cushion top: a line through (0, 30) rising by the seat's slope.
    above = -x * np.sin(seat) + (z - rear) * np.cos(seat)
    assert ahead[0] == pytest.approx(body.hip_ahead_of_back_mm, abs=1e-9)
    assert above[0] == pytest.approx(body.hip_above_seat_mm, abs=1e-9)


def test_pushing_shank_is_upright_at_full_reach_and_leans_below_it() -> None:
    heights = np.array([520.0, 500.0, 300.0])
    lean = pushing_shank_rad(heights, 420.0, 80.0)
    assert lean[:2] == pytest.approx([0.0, 0.0], abs=1e-6)
    assert 420.0 * np.cos(lean[2]) + 80.0 == pytest.approx(300.0)


def bare_legs(made: Made) -> dict[str, np.ndarray]:
    """No foot support, hanger or length."""
    codes = [made.option(name, "none") for name in ("foot_supports", "hanger", "leg_length")]
    return {name: at for code in codes for name, at in code.items()}


def test_pushing_foot_stands_on_the_floor_when_it_reaches_it() -> None:
    made = some(0)
    occupant = seated(client(propulsion="feet"))
    pushing = made.changed(bare_legs(made), occupant=occupant)
    _, toe_up = pushing.rows.to_floor(pushing.rows["toe_x_left"], pushing.rows["toe_z_left"])
    reaches = pushing["foot_reach_mm"] > 40.0
    assert reaches.any()
    assert toe_up[reaches] == pytest.approx(0.0, abs=1e-6)


def test_a_lost_foot_cannot_push() -> None:
    occupant = replace(seated(client(amputations=LEFT_LOST)), feet_that_push=("left",))
    with pytest.raises(ValueError, match=NO_FOOT.format(side="left")):
        realise(everyday(), occupant, some(0).rows.index)


def test_without_foot_supports_no_hanger_weighs() -> None:
    made = some(1)
    _, points = realise(everyday(), made.occupant, {**made.rows.index, **bare_legs(made)})
    hangers = [point for point in points if "hanger" in point.name]
    assert len(hangers) == 2
    assert all(np.all(np.asarray(point.mass_kg) == 0) for point in hangers)
    assert all(np.isfinite(np.asarray(point.x_mm)).all() for point in points)


def test_each_choice_is_made_in_one_step_and_in_one_only() -> None:
    made = [name for step in STEPS for name in step.choices]
    assert sorted(made) == sorted(everyday().choices)
    assert len(set(made)) == len(made)
