"""Places beside a set-up: everything asked is judged, one word, and what is noted."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from chairwright.fitting.described import Judged, describe
from chairwright.fitting.place_verdicts import place_verdicts, word_of
from chairwright.places.kinds import Bed, Corner, CrossSlope, Door, Kerb, Ramp, Table, Threshold
from chairwright.targets.target import Target
from chairwright.targets.verdict import verdict
from tests.unit.fitting.placed import among, example


def judged(*values: tuple[bool, float, float]) -> list[Judged]:
    """Items asked to be at most 10: whether a must, value, spread."""
    found = []
    for must, value, spread in values:
        target = Target("wheelbase_mm", None, 10.0, must, 1.0, "", "")
        found.append(Judged(target, value, spread, verdict(target, value, spread)))
    return found


@pytest.mark.parametrize(
    ("items", "word"),
    [
        ([], "nothing asked"),
        ([(True, 5, 0), (False, 5, 0)], "holds"),
        ([(True, 9, 2), (False, 5, 0)], "holds on nominal values"),
        ([(True, 11, 0), (False, 5, 0)], "fails"),
        ([(True, math.nan, 0)], "fails"),
        ([(True, 5, 0), (False, 11, 0)], "holds, not as preferred"),
        ([(True, 9, 2), (False, 11, 0)], "holds, not as preferred"),
        ([(False, 11, 0)], "not as preferred"),
        ([(False, math.nan, 0)], "not known"),
    ],
)
def test_one_word(items: list[tuple[bool, float, float]], word: str) -> None:
    assert word_of(judged(*items)) == word


def test_what_another_place_asks_more_strictly_is_judged_as_well() -> None:
    person, _ = example("avg-001")
    wide, narrow = Door(name="hall", clear_width_mm=900), Door(name="larder", clear_width_mm=610)
    person = among(person, wide, narrow)
    setup = describe(
        example("avg-001")[1].line, person.occupant, example("avg-001")[1].index, person.targets
    )
    assert [t.place for t in person.targets if t.place] == ["larder"]
    found = {each.place.name: each for each in place_verdicts(person, setup)}
    assert (found["hall"].word, found["larder"].word) == ("holds", "fails")
    assert found["hall"].judged[0].target.high == 890
    assert found["hall"].judged[0].value == setup.figures["overall_width_mm"]


def test_figures_that_the_set_up_does_not_hold_are_worked_out_with_their_spread() -> None:
    person, setup = example("chi-007")
    plain = describe(setup.line, person.occupant, setup.index, person.own_targets)
    assert set(plain.figures) < set(setup.figures)
    for mine, yours in zip(
        place_verdicts(person, plain), place_verdicts(person, setup), strict=True
    ):
        assert (mine.place, mine.word, mine.notes) == (yours.place, yours.word, yours.notes)
        for one, other in zip(mine.judged, yours.judged, strict=True):
            assert one.target == other.target
            assert one.halves == pytest.approx(other.halves, rel=1e-6)
    spreads = [item.spread for each in place_verdicts(person, plain) for item in each.judged]
    assert any(spreads)


def test_without_places_there_is_nothing_to_judge() -> None:
    person, setup = example("avg-001")
    assert place_verdicts(replace(person, surroundings=None), setup) == ()


def test_a_must_on_nominal_values_is_noted_beside_a_missed_wish() -> None:
    person, setup = example("tal-002")
    ramp = place_verdicts(person, setup)[0]
    assert ramp.word == "holds, not as preferred"
    assert ramp.notes[0] == (
        "On nominal values only: Push-off that lifts the casters, up 5.7 deg; Pitch to spare "
        "before the anti-tip device grounds at the foot of a 5.7 deg slope."
    )


def test_margins_on_a_ramp_and_across_a_slope() -> None:
    person, setup = example("avg-001")
    ramp = Ramp(name="ramp", rise_mm=100, run_mm=1000)
    across = CrossSlope(name="way", slope=ramp.slope)
    steep = math.degrees(math.atan(0.1))
    first, second = place_verdicts(among(person, ramp, across), setup)
    least = min(setup.figures["tip_left_deg"], setup.figures["tip_right_deg"]) - steep
    stands = next(note for note in first.notes if note.startswith("Standing"))
    assert f"facing up {setup.figures['tip_rear_locked_deg'] - steep:.1f} deg" in stands
    assert f"facing down {setup.figures['tip_forward_deg'] - steep:.1f} deg" in stands
    assert f"across it {least:.1f} deg to spare" in stands
    assert second.notes[0] == (
        f"Standing with locked brakes, to tipping: across it {least:.1f} deg to spare."
    )
    cliff = Ramp(name="cliff", rise_mm=500, run_mm=1000)
    (third,) = place_verdicts(among(person, cliff), setup)
    short = math.degrees(math.atan(0.5)) - setup.figures["tip_rear_locked_deg"]
    assert f"facing up it tips ({short:.1f} deg too little)" in " ".join(third.notes)


def test_the_anti_tip_device_at_ramp_threshold_and_kerb() -> None:
    person, setup = example("avg-001")
    touch, base = setup.figures["pitch_to_anti_tip_deg"], setup.figures["wheelbase_mm"]
    kerb = math.sin(math.radians(touch)) * base
    places = (
        Kerb(name="low", height_mm=math.floor(kerb)),
        Kerb(name="high", height_mm=math.ceil(kerb)),
        Threshold(name="sill", height_mm=math.floor(kerb)),
        Threshold(name="step", height_mm=math.ceil(kerb)),
        Ramp(name="gentle", rise_mm=1000 * math.tan(math.radians(touch - 0.1)), run_mm=1000),
        Ramp(name="steep", rise_mm=1000 * math.tan(math.radians(touch + 0.1)), run_mm=1000),
    )
    found = {e.place.name: " ".join(e.notes) for e in place_verdicts(among(person, *places), setup)}
    assert found["low"].endswith(f"touches at {touch:.1f} deg, so it may stay.")
    assert found["high"].endswith(f"touches at {touch:.1f} deg: a carer must turn it up first.")
    assert "device" not in found["sill"] + found["gentle"]
    assert found["step"].startswith("At the threshold the anti-tip device grounds before")
    assert found["steep"].endswith("(0.1 deg too low): a carer must turn it up.")


def test_arm_pads_and_heights_for_moving_over() -> None:
    person, setup = example("avg-001")
    assert setup.shape.arm_pad is not None
    pad, cushion = (
        max(z for _, z in setup.shape.arm_pad),
        setup.figures["cushion_to_floor_front_mm"],
    )
    places = (
        Table(name="low", clear_height_mm=pad - 20),
        Table(name="high", clear_height_mm=pad + 1),
        Bed(name="up", height_mm=round(cushion) + 40, transfer="standing"),
        Bed(name="down", height_mm=round(cushion) - 15, transfer="side"),
        Bed(name="level", height_mm=round(cushion), transfer="front"),
        Bed(name="sling", height_mm=700, transfer="hoist"),
    )
    found = {e.place.name: " ".join(e.notes) for e in place_verdicts(among(person, *places), setup)}
    assert "stand 20 mm higher than the underside" in found["low"]
    assert found["high"] == found["sling"] == ""
    assert found["up"].startswith("It is 40 mm higher than the front of the cushion")
    assert "down on the way there, up on the way back" in found["down"]
    assert found["level"] == f"It is as high as the front of the cushion ({cushion:.0f} mm)."


def test_a_corner_says_in_one_turn_apart_from_to_and_fro() -> None:
    person, setup = example("avg-001")
    corner = Corner(name="corner", width_in_mm=900, width_out_mm=860)
    (found,) = place_verdicts(among(person, corner), setup)
    assert [item.target.must for item in found.judged] == [True, False]
    assert found.word == "holds, not as preferred"
