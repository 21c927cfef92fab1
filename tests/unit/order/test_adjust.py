"""Adjustment: what follows from a change, with a pencil, and what stands in the way."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from chairwright.cli.report_adjust import adjust_report
from chairwright.errors import InputError
from chairwright.fitting.described import Described, describe
from chairwright.fitting.extras import with_extras
from chairwright.line.choices import CHOICES
from chairwright.order.adjust import Adjustment, adjust
from chairwright.order.steps import EXTRAS, UNDO, WORKS
from chairwright.papers.adjust_words import title_words
from tests.hand.level_chair import CODES, line
from tests.oracles.lines import everyday
from tests.oracles.people import client, seated

PERSON = seated(client())


def chair(**other: str) -> Described:
    codes = CODES | other
    index = {name: line().choices[name].codes[code] for name, code in codes.items()}
    return describe(line(), PERSON, index, ())


def from_to(**other: str) -> Adjustment:
    return adjust(chair(), chair(**other), PERSON)


def step(found: Adjustment, group: str) -> str:
    """The words of one step's notes."""
    return " ".join(next(each for each in found.steps if each.group == group).notes)


def test_nothing_differs() -> None:
    found = from_to()
    assert found.steps == ()
    assert "Nothing differs" in adjust_report(found, "a", "b", "mm")


def test_the_axle_moved_forward() -> None:
    found = from_to(axle_hole="B1")
    wheel, casters, locks, device, last = found.steps
    (move,) = wheel.moves
    assert (move.before, move.after, move.far) == ("A1", "B1", "50 mm forward")
    # Lock 70 below the rail, axle 200 below: the tyre's front moves with the axle, 50 mm.
    assert "the tyre has come 50 mm forward: the locks go with it" in locks.notes[0]
    assert (locks.kind, casters.kind, device.kind, last.group) == (
        "set again", "check", "check", "Last check",
    )  # fmt: skip
    # Level stays level: axle and caster keep their heights. Wheelbase 400 becomes 350.
    read = {each.name: each for each in last.readings}
    assert read["wheelbase_mm"].before == pytest.approx(400.0)
    assert read["wheelbase_mm"].after == pytest.approx(350.0)
    assert set(read) == {"wheelbase_mm", "caster_tyre_clearance_mm", "pitch_to_anti_tip_deg"}
    # Device wheel 110 above the floor, radius 25: 85 clear, as before.
    gap = next(each for each in device.readings if each.name == "device_gap_mm")
    assert gap.before == pytest.approx(85.0)
    assert gap.after == pytest.approx(85.0)
    assert not gap.moved


def test_a_wider_seat_takes_the_locks_with_it_a_wider_arm_support_does_not() -> None:
    # The rail that the locks hang on stands at the seat's edge: hubs stay 40 out of it.
    wide = from_to(seat_width="S420")
    assert "At the lock the tyre stands where it stood." in step(wide, "Wheel locks")
    assert wide.rebuild
    # Two degrees more of camber would; here none. An arm support with another hub place:
    data = chair().options["arm_support"]
    other = replace(data, code="AR-251", numbers={**data.numbers, "hub_outset_mm": 52.0})
    arms = replace(line().choices["arm_support"], options=(data, other))
    two_arms = replace(line(), choices={**line().choices, "arm_support": arms}, _columns={})
    index = {**chair().index, "arm_support": 0}
    one = describe(two_arms, PERSON, index, ())
    two = describe(two_arms, PERSON, {**index, "arm_support": 1}, ())
    assert "the tyre has come 12 mm out: the locks go with it" in step(
        adjust(one, two, PERSON), "Wheel locks"
    )


def test_tilting_the_stem_setting_alone_asks_for_the_device_and_no_locks() -> None:
    found = from_to(stem_setting="NF5")
    assert [each.group for each in found.steps] == ["Caster housings", "Anti-tip", "Last check"]
    assert found.steps[0].moves[0].far == "5 deg top further forward"


def test_a_seat_part_alone_asks_for_nothing_else() -> None:
    found = from_to(cushion="Q75")
    assert [each.group for each in found.steps] == ["Seat", "Last check"]
    (have,), (left,) = found.parts_on, found.parts_off
    assert (have.quantity, have.code, left.code) == (1, "Q75", "Q50")
    assert not found.rebuild


def test_feet_off_and_on() -> None:
    bare = {"foot_supports": "none", "hanger": "none", "foot_plate": "none", "leg_length": "none"}
    lost = adjust(chair(), chair(**bare), PERSON)
    assert [(each.code, each.quantity) for each in lost.parts_off] == [("H60", 2), ("FP", 2)]
    assert lost.parts_on == ()
    back = adjust(chair(**bare), chair(), PERSON)
    assert [each.code for each in back.parts_on] == ["H60", "FP"]
    assert back.steps[0].undo == ()
    # Hanger 60 deg, 300 mm: plate 500 - 50 - 300 sin 60 - 8 above the floor.
    clear = next(r for r in back.steps[0].readings if r.name == "footplate_clearance_mm")
    assert clear.before is None
    assert clear.after == pytest.approx(442.0 - 300.0 * math.sin(math.pi / 3))


def test_a_chair_that_would_tilt_too_far_stays_on_blocks() -> None:
    """Everyday chair: high axle hole first, casters later; in between the frame tilts too far."""
    shipped = everyday()
    codes = {
        "side_frame": "SFL", "rear_wheel": "W24", "camber": "K0", "axle_hole": "F9", "caster": "C6",
        "fork": "FL-4", "stem_spacer": "none", "caster_housing": "L4", "stem_setting": "N0",
        "hand_rim": "RA", "seat_width": "S400", "arm_support": "AF-240", "seat_depth": "D420",
        "cushion": "Q50", "back_angle": "B4", "back_support": "BT", "foot_supports": "none",
        "hanger": "none", "foot_plate": "none", "leg_length": "none", "back_height": "P400",
        "push_handle": "VF", "wheel_lock": "LP", "anti_tip": "none", "belt": "none", "finish": "FG",
    }  # fmt: skip
    low = codes | {"axle_hole": "F1", "fork": "FM-4", "caster_housing": "L1"}
    one, two = (
        describe(shipped, PERSON, {n: shipped.choices[n].codes[c] for n, c in each.items()}, ())
        for each in (codes, low)
    )
    found = adjust(one, two, PERSON)
    wheel = found.steps[0]
    # Axle F1 (80, -56) under casters at 467 - 55, -260 - 170: D = (332, -374), 500.1 long.
    # asin((75 - 295) / 500.1) - atan2(-374, 332) = -26.10 + 48.40 = 22.3 deg, more than 20.
    assert (wheel.group, wheel.state.status) == ("Rear wheel", "off its wheels")
    assert wheel.state.reasons[0].startswith("the frame would tilt 22.3 deg")
    assert wheel.down_after == 2
    assert found.off_wheels == ((1, 1),)
    text = adjust_report(found, "high", "low", "mm")
    assert "After step 1 the chair must stay off its wheels, on blocks, until step 2" in text
    assert "CHAIR OFF ITS WHEELS, on blocks, until step 2 is done:" in text


def test_extras_come_on_and_off() -> None:
    one = chair()
    fitted = describe(with_extras(line(), ["ET"], {}), PERSON, one.index, ())
    found = adjust(one, fitted, PERSON)
    assert [(each.choice, each.after) for each in found.steps[0].moves] == [(EXTRAS, "ET")]
    assert [each.code for each in found.parts_on] == ["ET"]
    assert title_words(found.steps[0]) == "Everything else: extra"


def test_two_lines_are_not_adjusted_into_one_another() -> None:
    other = replace(chair(), line=replace(line(), version="2027.1"))
    with pytest.raises(InputError, match="one product line in one version"):
        adjust(chair(), other, PERSON)


def test_every_choice_is_worked_on_once_and_can_be_undone() -> None:
    names = [name for work in WORKS for name in work.choices if name != EXTRAS]
    assert sorted(names) == sorted(CHOICES)
    assert set(UNDO) == {*CHOICES, EXTRAS}


def test_inches_stand_beside_lengths_on_request() -> None:
    text = adjust_report(from_to(axle_hole="B1"), "a", "b", "in")
    assert "Wheelbase 350 mm = 13 3/4 in (was 400)" in text  # 350 / 25.4 = 13.78
