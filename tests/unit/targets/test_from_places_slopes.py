"""What ramps, cross slopes, thresholds and kerbs ask, and who helps; ends typed by hand."""

from __future__ import annotations

import pytest

from chairwright.person.client import Client
from chairwright.places.kinds import CrossSlope, Kerb, Ramp, Threshold
from chairwright.places.model import Carer, OwnLimits, Place, Slope
from chairwright.targets.place_slopes import slope_words

from .asked import MUST, Asked, asks, of
from .people import person

# atan(1/12) = 4.7636 deg; HSE INDG143: women 150 N to start, 70 N to keep moving; men 200 and 100.
UP = Asked("start_lift_mps2@up_4.764", 0.5, None, MUST)
DOWN = Asked("braking_lift_mps2@down_4.764", 1.0, None, MUST)
DEVICE = Asked("device_spare_deg@slope_4.764", 0.0, None, MUST)


def ramp(**more: object) -> Ramp:
    return Ramp(name="r", **{"rise_mm": 300, "run_mm": 3600, **more})  # type: ignore[arg-type]


def test_a_ramp_pushed_by_hand() -> None:
    wish = Asked("rim_force_n@up_4.764_concrete", None, 60, 0.5)
    assert asks(ramp(surface="concrete")) == [UP, DOWN, DEVICE, wish]


def test_an_own_limit_of_the_hands_is_held() -> None:
    *_, own = of(ramp(), own=OwnLimits(push_n=45))
    assert (own.figure, own.high, own.must) == ("rim_force_n@up_4.764_hard", 45, True)
    assert own.source == "the client's own limit (places file)"
    *_, usual = of(ramp())
    assert (usual.high, usual.must, usual.source) == (60, False, "from memory, no source")
    *_, wish = of(ramp(must=False), own=OwnLimits(push_n=45))
    assert not wish.must


def test_a_ramp_that_falls_to_the_side() -> None:
    # atan(1/50) = 1.1458 deg, and 5 deg for leaning.
    found = asks(ramp(cross_slope=Slope(1 / 50)))
    assert found[4:] == [Asked(f"tip_{side}_deg", 6.146, None, MUST) for side in ("left", "right")]
    assert asks(ramp(cross_slope=Slope(0.0))) == asks(ramp())


@pytest.mark.parametrize(
    ("carer", "start", "keep"),
    [
        (None, 150, 70),
        (Carer(), 150, 70),
        (Carer(limits="men"), 200, 100),
        (Carer(limits="men", push_start_n=120), 120, 100),
        (Carer(push_keep_n=66), 150, 66),
    ],
)
def test_a_ramp_with_a_carer_behind(carer: Carer | None, start: float, keep: float) -> None:
    assert asks(ramp(helped=True), carer=carer) == [
        Asked("start_lift_mps2@up_4.764", 0.0, None, MUST),
        DOWN,
        Asked("device_spare_deg@slope_4.764", 0.0, None, 0.0),  # the carer can turn it up
        Asked("push_start_n@up_4.764_hard", None, start, MUST),
        Asked("push_force_n@up_4.764_hard", None, keep, MUST),
    ]


def test_the_source_of_a_carers_limit_is_told() -> None:
    *_, start, keep = of(ramp(helped=True), carer=Carer(push_start_n=120))
    assert start.source == "the carer's own limit (places file)"
    assert keep.source == "HSE INDG143 (read in the source), women; a filter, not a safe limit"


@pytest.mark.parametrize(
    ("client", "helped", "figure"),
    [
        (person(), None, "rim_force_n"),
        (person(), True, "push_force_n"),
        (person(propulsion="carer"), None, "push_force_n"),
        (person(propulsion="carer"), False, ""),
        (person(propulsion="feet"), None, ""),
        (person(propulsion="hand_and_foot_left"), None, "rim_force_n"),
    ],
)
def test_who_pushes_is_the_carer_the_hands_or_neither(
    client: Client, helped: bool | None, figure: str
) -> None:
    found = asks(ramp(helped=helped), client=client, carer=Carer())
    pushes = {each.figure.partition("@")[0] for each in found} & {"rim_force_n", "push_force_n"}
    assert pushes == ({figure} if figure else set())


def test_a_way_that_falls_to_the_side() -> None:
    way = CrossSlope(name="w", slope=Slope(0.05), surface="concrete")
    # atan(0.05) = 2.8624 deg
    tips = [Asked(f"tip_{side}_deg", 7.862, None, MUST) for side in ("left", "right")]
    assert asks(way) == [*tips, Asked("rim_force_n@cross_2.862_concrete", None, 60, 0.5)]
    helped = CrossSlope(name="w", slope=Slope(0.05), helped=True)
    push = Asked("push_force_n@level_hard", None, 70, MUST)
    assert asks(helped, carer=Carer()) == [*tips, push]
    assert asks(way, client=person(propulsion="feet")) == tips


def test_a_threshold() -> None:
    alone = Threshold(name="t", height_mm=12.7)
    assert asks(alone) == [Asked("device_spare_deg@step_12.7", 0.0, None, MUST)]
    # A push over a step is told, and never sought, even where the place is a must.
    assert asks(Threshold(name="t", height_mm=12.7, helped=True), carer=Carer()) == [
        Asked("device_spare_deg@step_12.7", 0.0, None, 0.0),
        Asked("step_force_n@12.7", None, 150, 0.0),
        Asked("rear_step_force_n@12.7", None, 150, 0.0),
    ]


def test_a_kerb() -> None:
    assert asks(Kerb(name="k", height_mm=60)) == []
    assert asks(Kerb(name="k", height_mm=60, helped=True), carer=Carer(limits="men")) == [
        Asked("tip_lever_n", None, 200, 0.0),
        Asked("rear_step_force_n@60", None, 200, 0.0),
    ]


@pytest.mark.parametrize(
    "place",
    [ramp(), CrossSlope(name="w", slope=Slope(0.0)), Threshold(name="t", height_mm=8)],
)
def test_reasons_are_for_people(place: Place) -> None:
    for target in of(place):
        assert "inf" not in target.reason
        assert target.source


def test_slopes_in_words() -> None:
    assert slope_words(4.7636, 12.0) == "1:12 (4.8 deg)"
    assert slope_words(0.0, float("inf")) == "level"
