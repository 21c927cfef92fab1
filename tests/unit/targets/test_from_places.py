"""Each kind of place and what it asks; ends typed from the place by hand."""

from __future__ import annotations

import pytest

from chairwright.figures.registry import FIGURES
from chairwright.places.kinds import (
    Basin,
    Bed,
    Boot,
    CarSeat,
    Corner,
    Corridor,
    Door,
    Lift,
    Room,
    Seat,
    Table,
    Threshold,
    Toilet,
)
from chairwright.places.model import Carer, OwnLimits, Place
from chairwright.targets.from_places import as_hard, carer_targets, from_places, place_targets

from .asked import MUST, Asked, around, asks, kept, of
from .people import person

# 5 mm are kept from each wall and jamb.


def test_a_door_met_straight() -> None:
    assert asks(Door(name="d", clear_width_mm=720)) == [Asked("overall_width_mm", None, 710, MUST)]


def test_a_door_off_a_corridor_wishes_for_one_turn() -> None:
    door = Door(name="d", clear_width_mm=720, approach="corridor", corridor_width_mm=1050)
    assert asks(door) == [
        Asked("overall_width_mm", None, 710, MUST),
        Asked("door_turn_mm@710", None, 1040, 0.5),
    ]


def test_a_corridor_to_turn_back_in() -> None:
    assert asks(Corridor(name="c", width_mm=900)) == [Asked("overall_width_mm", None, 890, MUST)]
    assert asks(Corridor(name="c", width_mm=1600, turn_back=True)) == [
        Asked("overall_width_mm", None, 1590, MUST),
        Asked("half_turn_free_mm", None, 1590, MUST),
        Asked("half_turn_width_mm", None, 1590, 0.5),
    ]


def test_a_corner_by_any_motion_and_as_a_wish_in_one_turn() -> None:
    assert asks(Corner(name="c", width_in_mm=1050, width_out_mm=950.5)) == [
        Asked("corner_free_mm@1040", None, 940.5, MUST),
        Asked("corner_arc_mm@1040", None, 940.5, 0.5),
    ]


def test_a_room_counts_by_its_shorter_side() -> None:
    assert asks(Room(name="r", width_mm=1900, depth_mm=1650)) == [
        Asked("half_turn_free_mm", None, 1640, MUST),
        Asked("turning_diameter_mm", None, 1640, 0.5),
    ]


def test_a_lift_by_its_door_and_its_depth() -> None:
    assert asks(Lift(name="l", door_width_mm=800, width_mm=1100, depth_mm=1400)) == [
        Asked("overall_width_mm", None, 790, MUST),
        Asked("overall_length_mm", None, 1390, MUST),
    ]


@pytest.mark.parametrize("kind", [Table, Basin])
def test_knees_go_under_a_top_with_15_mm_to_spare(kind: type[Table] | type[Basin]) -> None:
    top = kind(name="t", clear_height_mm=698.5)
    assert asks(top) == [Asked("knee_top_mm", None, 683.5, MUST)]
    assert asks(top, knees=False) == []


@pytest.mark.parametrize("kind", [Bed, Toilet, Seat, CarSeat])
def test_a_transfer_is_level_to_within_30_mm(kind: type[Bed]) -> None:
    for way in ("side", "front"):
        place = kind(name="b", height_mm=480, transfer=way)
        assert asks(place) == [Asked("cushion_to_floor_front_mm", 450, 510, 0.25)]
    for way in ("standing", "hoist"):
        assert asks(kind(name="b", height_mm=480, transfer=way)) == []  # type: ignore[arg-type]


def boot(**more: object) -> Boot:
    """A boot 1000 wide, 600 high, 800 deep."""
    usual = {"opening_width_mm": 1000, "opening_height_mm": 600, "depth_mm": 800}
    return Boot(name="car", **{"lifted_by": "self", **usual, **more})  # type: ignore[arg-type]


def test_a_boot_by_its_size_and_by_who_lifts() -> None:
    fits = Asked("boot_missing_mm@1000x600x800_off", None, 0, MUST)
    assert asks(boot()) == [fits]  # nobody has said what the client lifts
    own = OwnLimits(lift_kg=9.5)
    assert asks(boot(), own=own) == [fits, Asked("heaviest_part_kg", None, 9.5, MUST)]
    helped = boot(lifted_by="carer", wheels_off=False)
    on = Asked("boot_missing_mm@1000x600x800_on", None, 0, MUST)
    carer = Carer(lift_kg=12)
    assert asks(helped, own=own, carer=carer) == [on, Asked("heaviest_part_kg", None, 12, MUST)]
    # HSE lifting filter, elbow to knuckle, arms out: women 10, men 15 kg.
    for who, limit in (("women", 10), ("men", 15)):
        carer = Carer(limits=who)  # type: ignore[arg-type]
        assert asks(helped, carer=carer)[1] == Asked("heaviest_part_kg", None, limit, MUST)
    assert "unverified" in of(helped, carer=Carer())[1].source


def test_handles_at_865_thousandths_of_the_carers_shoulder() -> None:
    (target,) = carer_targets(Carer(shoulder_height_mm=1400))
    assert (target.low, target.high) == pytest.approx((1161, 1261))  # 0.865 x 1400 = 1211
    assert (target.figure, target.must, target.weight, target.place) == (
        "push_handle_height_mm", False, 0.25, "the carer",
    )  # fmt: skip
    assert carer_targets(Carer()) == carer_targets(None) == ()


def test_a_place_that_is_a_wish_asks_for_wishes_only() -> None:
    found = asks(Room(name="r", width_mm=1650, depth_mm=1900, must=False))
    assert [each.weight for each in found] == [0.5, 0.5]


def test_every_target_names_its_place_its_reason_and_its_source() -> None:
    place = Lift(name="lift at work", door_width_mm=800, width_mm=1100, depth_mm=1400)
    for target in of(place):
        assert target.place == "lift at work"
        assert target.reason.startswith("lift at work: ")
        assert target.source == "common practice, no source"
        assert target.figure in FIGURES


# --- what another implies --------------------------------------------------------------------


def door(name: str, width: float, *, must: bool = True) -> Door:
    return Door(name=name, clear_width_mm=width, must=must)


def test_of_several_doors_only_the_narrowest_asks() -> None:
    found = kept(door("a", 800), door("b", 720), door("c", 760), door("d", 720))
    assert found == [("b", Asked("overall_width_mm", None, 710, MUST))]


def test_a_wish_does_not_stand_for_a_must_nor_a_must_for_a_wish() -> None:
    found = kept(door("a", 800), door("b", 720, must=False), door("c", 760, must=False))
    assert found == [
        ("a", Asked("overall_width_mm", None, 790, MUST)),
        ("b", Asked("overall_width_mm", None, 710, 0.5)),
    ]


def test_two_sided_wishes_are_all_kept() -> None:
    beds = [Bed(name=name, height_mm=480, transfer="side") for name in "ab"]
    assert [place for place, _ in kept(*beds)] == ["a", "b"]


def corner(name: str, width_in: float, width_out: float) -> Corner:
    return Corner(name=name, width_in_mm=width_in, width_out_mm=width_out)


def test_a_corner_wider_both_ways_is_implied() -> None:
    found = kept(corner("a", 950, 900), corner("b", 900, 900))
    assert [place for place, _ in found] == ["b", "b"]
    found = kept(corner("a", 950, 900), corner("b", 900, 950))
    assert [place for place, _ in found] == ["a", "a", "b", "b"]


def test_the_carers_own_wish_comes_last() -> None:
    found = kept(door("a", 800), carer=Carer(shoulder_height_mm=1400))
    assert [place for place, _ in found] == ["a", "the carer"]


def everything() -> tuple[Place, ...]:
    return (door("a", 800), door("b", 700), boot(), Threshold(name="t", height_mm=15))


def test_what_is_left_says_the_same_as_all() -> None:
    """Whoever holds what is left holds everything."""
    where = around(*everything())
    every = [t for place in where.places for t in place_targets(place, person(), where)]
    left = from_places(person(), where)
    assert len(left) == len(every) - 1
    for target in every:
        ends = [t.high for t in left if (t.figure, t.must) == (target.figure, target.must)]
        assert target.high is None or min(end for end in ends if end is not None) <= target.high


@pytest.mark.parametrize(
    ("figure", "other", "hard"),
    [
        ("corner_free_mm@770", "corner_free_mm@940", True),
        ("corner_free_mm@940", "corner_free_mm@770", False),
        ("corner_free_mm@770", "corner_arc_mm@940", False),
        ("device_spare_deg@slope_4.8", "device_spare_deg@slope_2", True),
        ("device_spare_deg@slope_4.8", "device_spare_deg@step_2", False),
        ("start_lift_mps2@up_4.8", "start_lift_mps2@up_2", True),
        ("start_lift_mps2@up_2", "start_lift_mps2@level", False),
        ("overall_width_mm", "overall_width_mm", True),
        ("rim_force_n@up_4_hard", "rim_force_n@up_2_hard", False),
    ],
)
def test_which_figure_is_as_hard_as_another(figure: str, other: str, *, hard: bool) -> None:
    assert as_hard(figure, other) is hard
