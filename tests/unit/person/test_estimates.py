"""Estimates of what nobody measured."""

from __future__ import annotations

import pytest

from chairwright.errors import InputError
from chairwright.person.client import Amputation
from chairwright.person.estimates import complete
from chairwright.person.measures import CATALOGUE
from chairwright.tables.load import find_row

from .people import client


def test_measured_values_pass_through_untouched() -> None:
    person = client()
    measures = complete(person)
    for measured in person.measures:
        assert measures.get(measured.name, measured.side) == measured


def test_catalogue_order_and_completeness() -> None:
    got = [(m.name, m.side) for m in complete(client(only=("stature", "body_mass")))]
    assert got == [(name, side) for name, kind in CATALOGUE.items() for side in kind.sides]


def test_every_estimate_says_so_and_carries_a_spread() -> None:
    estimates = [m for m in complete(client(only=("stature", "body_mass"))) if m.estimated]
    assert len(estimates) > 25
    for measure in estimates:
        assert measure.basis
        assert measure.tolerance > 0.0
        assert measure.quantity.typed.endswith(" mm")


@pytest.mark.parametrize("sex", ["male", "female"])
def test_stature_and_mass_alone_give_the_published_regression(sex: str) -> None:
    person = client("male" if sex == "male" else "female", only=(), **_only_size())
    measures = complete(person)
    for name, column, shoe in (
        ("hip_width", "hipbreadthsitting", 0.0),
        ("lower_leg_length", "poplitealheight", 25.0),
        ("buttock_thigh_depth", "buttockpopliteallength", 0.0),
    ):
        row = find_row("population", "gordon2014_regressions", sex=sex.upper(), measure=column)
        expected = (
            float(row["b0_mm"])
            + float(row["b_stature"]) * 1700.0
            + float(row["b_weight_mm_per_kg"]) * 70.0
        )
        got = measures.get(name, "left")
        # The correlations are printed to 0.0001: about 0.1 mm.
        assert got.value == pytest.approx(expected + shoe, abs=0.2)
        assert got.tolerance == pytest.approx(2 * float(row["SEE_mm"]), abs=0.2)


def _only_size() -> dict[str, object]:
    pairs = ("buttock_thigh_depth", "knee_height", "lower_leg_length", "upper_arm_length")
    none = dict.fromkeys((*pairs, "sitting_height", "hip_width", "elbow_height"))
    return {**none, "stature": "1700 mm", "body_mass": "70 kg"}


def test_shoe_sole_as_measured_is_added_to_the_lower_leg() -> None:
    thin = complete(client(only=("stature", "body_mass"), shoe_sole="10 mm"))
    thick = complete(client(only=("stature", "body_mass"), shoe_sole="50 mm"))
    for name in ("lower_leg_length", "knee_height"):
        gap = thick.get(name, "left").value - thin.get(name, "left").value
        assert gap == pytest.approx(40.0, abs=0.11)
    assert thick.get("hip_width").value == thin.get("hip_width").value


def test_one_measured_side_stands_for_the_other_with_a_wider_spread() -> None:
    measures = complete(client(lower_leg_length=("430 mm", None)))
    right = measures.get("lower_leg_length", "right")
    assert right.value == 430.0
    assert right.estimated
    assert "left side" in right.basis
    assert right.tolerance > measures.get("lower_leg_length", "left").tolerance


def test_shorter_side() -> None:
    measures = complete(client(buttock_thigh_depth=("470 mm", "480 mm")))
    assert measures.shorter("buttock_thigh_depth").value == 470.0
    assert measures.shorter("buttock_thigh_depth").side == "left"


def test_sitting_height_alone_gives_a_stature() -> None:
    measures = complete(client(stature=None, only=("sitting_height", "body_mass")))
    stature = measures.get("stature")
    assert stature.estimated
    assert 1650 < stature.value < 1850
    assert stature.tolerance > 50


@pytest.mark.parametrize(
    ("only", "what"),
    [
        (("stature", "hip_width"), "body mass must be measured"),
        (("body_mass", "hip_width"), "stature or sitting height must be measured"),
    ],
)
def test_what_must_be_measured(only: tuple[str, ...], what: str) -> None:
    with pytest.raises(InputError, match=what):
        complete(client(only=only))


def test_measures_of_a_lost_part_are_absent() -> None:
    lost = (Amputation("left", "above_knee"), Amputation("right", "hand"))
    measures = complete(client(only=("stature", "body_mass"), amputations=lost))
    assert measures.find("lower_leg_length", "left") is None
    assert measures.find("buttock_thigh_depth", "left") is None
    assert measures.find("lower_leg_length", "right") is not None
    assert measures.both("hand_length")[1] is None
    assert measures.shorter("lower_leg_length").side == "right"
    assert measures.find("lower_leg_length") == measures.get("lower_leg_length", "right")
    with pytest.raises(KeyError, match="lost"):
        measures.get("foot_length", "left")
    assert measures.intact["lower_leg_length"] > 300


def test_estimates_rest_on_the_whole_body_mass_of_an_amputee() -> None:
    whole = complete(client(only=("stature", "body_mass"), body_mass="80 kg"))
    lost = (Amputation("left", "hip"),)
    less = complete(client(only=("stature", "body_mass"), body_mass="67.2 kg", amputations=lost))
    # Osterkamp: 16 % of 80 kg is lost, 67.2 kg is left.
    assert less.get("hip_width").value == pytest.approx(whole.get("hip_width").value, abs=0.1)
    assert less.get("body_mass").value == 67.2


@pytest.mark.parametrize(
    ("sex", "stature", "mass"),
    [("male", "178 cm", "250 kg"), ("female", "120 cm", "30 kg"), ("male", "210 cm", "140 kg")],
)
def test_estimates_stay_inside_the_widest_limits(sex: str, stature: str, mass: str) -> None:
    person = client(
        "male" if sex == "male" else "female",
        only=("stature", "body_mass"),
        stature=stature,
        body_mass=mass,
    )
    for measure in complete(person):
        kind = CATALOGUE[measure.name]
        assert kind.low <= measure.value <= kind.high, measure.name


def test_a_very_heavy_persons_lengths_do_not_follow_the_hips() -> None:
    slim = complete(client(only=("stature", "body_mass"), body_mass="200 kg"))
    broad = complete(client(only=("stature", "body_mass"), body_mass="200 kg", hip_width="65 cm"))
    for name in ("knee_height", "lower_leg_length", "buttock_knee_length"):
        assert broad.get(name, "left").value == slim.get(name, "left").value
    assert broad.get("trochanter_width").value > slim.get("trochanter_width").value
