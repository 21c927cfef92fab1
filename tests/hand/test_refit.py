"""What one change takes, worked by hand from the typed prices and minutes.

Chair: the everyday line's set-up of HEM-004. Prices typed from its line file (invented by us):
cross-brace and sling 190 later; 75 mm cushion 120 with a new chair and 90 more later; a new pair
of side frames 620 and moving over 150 minutes. Minutes are the program's working values, as the
theory page types them: common practice, no source.
"""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

from chairwright.cli.opened import open_setup
from chairwright.order.change import Change, change_between
from chairwright.order.chosen import chosen

SETUP = Path(__file__).parents[2] / "examples" / "setups" / "hem-004.yaml"


def changed(**codes: str) -> Change:
    opened = open_setup(SETUP)
    index = dict(opened.setup.index)
    for name, code in codes.items():
        index[name] = opened.line.choices[name].codes[code]
    return change_between(opened.setup, chosen(opened.line, index))


def test_nothing() -> None:
    found = changed()
    assert (found.money, found.minutes, found.items, found.shared) == (Decimal("0.00"), 0, (), ())


def test_a_wider_seat_and_lower_pads() -> None:
    # seat 35 + pads 8 + locks set again 6 + last check 10 = 59 minutes; 190 for the cross-brace
    found = changed(seat_width="S420", arm_support="AF-240")
    assert (found.money, found.minutes) == (Decimal("190.00"), 59)
    assert [item.choice for item in found.bought] == ["seat_width"]
    assert [item.choice for item in found.moved] == ["arm_support"]


def test_an_axle_moved_lifts_the_wheels_off_once() -> None:
    # axle 14 + wheels off and on 4 + stance 8 + locks 6 + last check 10 = 42 minutes, no money
    found = changed(axle_hole="D5")
    assert (found.money, found.minutes) == (Decimal("0.00"), 42)
    # camber with it: 12 more minutes, 60 with a new chair + 30 later; the rest is done once
    both = changed(axle_hole="D5", camber="K3")
    assert (both.money, both.minutes) == (Decimal("90.00"), 54)


def test_a_cushion_costs_more_later_than_with_the_chair() -> None:
    # 120 + 90 = 210; cushion 2 + last check 10 = 12 minutes
    other = "Q75" if open_setup(SETUP).setup.codes["cushion"] != "Q75" else "Q50"
    found = changed(cushion=other)
    assert found.money == Decimal({"Q75": "210.00", "Q50": "90.00"}[other])
    assert found.minutes == 12


def test_another_frame_is_bought_once() -> None:
    # frame 620, 150 minutes to move over; stance 8 + locks 6 + last check 10
    found = changed(side_frame="SFS")
    assert (found.money, found.minutes) == (Decimal("620.00"), 174)
    assert found.new_frame
    assert "side_frame" not in found.kept


def test_a_part_that_only_comes_off_is_not_bought() -> None:
    opened = open_setup(SETUP)
    assert opened.setup.codes["anti_tip"] != "none"
    found = changed(anti_tip="none")
    # 4 + last check 10
    assert (found.money, found.minutes, len(found.bought)) == (Decimal("0.00"), 14, 0)
