"""Refused while a must is missed; accepted by name, for that miss only; differing revisions."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from chairwright.cli.opened import Opened, open_setup
from chairwright.errors import InputError
from chairwright.files.order import AcceptedMust
from chairwright.fitting.described import Described, describe
from chairwright.line.model import Line
from chairwright.order.accepted import Acceptance, Unmet, check_acceptances, covers
from chairwright.order.order import Heading, Order, make_order, order_file
from chairwright.order.price_list import PriceList, makers_prices
from tests.laws.example_sweeps import SETUPS

BY, WHY = "R. Amadi, OT", "wants it lower at the desk"
HEADING = Heading("avg-001")


@cache
def opened() -> Opened:
    return open_setup(SETUPS / "avg-001.yaml")


def setup(**codes: str) -> Described:
    one = opened()
    index = dict(one.setup.index) | {
        name: one.line.choices[name].codes[code] for name, code in codes.items()
    }
    return describe(one.line, one.person.occupant, index, one.person.targets)


def order(
    chair: Described,
    *said: Acceptance,
    earlier: Order | None = None,
    prices: PriceList | None = None,
    dated: str = "",
) -> Order:
    one = opened()
    kept = None
    if earlier is not None:
        path = Path("orders/old.yaml")
        kept = order_file(earlier, path, one.file.client_path, one.file.path, "everyday")
    return make_order(
        replace(HEADING, dated=dated), one.person, chair, prices or plain(one.line), said, kept
    )


def plain(line: Line) -> PriceList:
    return makers_prices(line)


# The must: arm pad 245 to 270 mm above the cushion, which lies 12 mm above the rail at the back.
LOW_PADS = {"arm_support": "AW-250"}  # 238 mm
LOWER_PADS = {"arm_support": "AW-225"}  # 213 mm
PADS = "arm_height_mm"


def test_a_set_up_that_holds_every_must_may_be_sent() -> None:
    found = order(setup())
    assert not found.refused
    assert found.unmet == ()
    assert (found.revision, found.earlier, found.changes) == (1, 0, ())


def test_a_missed_must_refuses_the_order() -> None:
    found = order(setup(**LOW_PADS))
    assert found.refused
    assert [each.figure.name for each in found.open] == [PADS]
    assert (found.open[0].value, found.open[0].asked) == (238.0, (245.0, 270.0))


def test_accepted_by_name_it_may_be_sent_and_the_reason_is_kept() -> None:
    found = order(setup(**LOW_PADS), Acceptance(PADS, f"  {BY} ", WHY))
    assert not found.refused
    assert found.accepted == (AcceptedMust(PADS, 245.0, 270.0, 238.0, BY, WHY, 1),)


def test_one_accepted_of_two_is_still_refused() -> None:
    found = order(setup(**LOW_PADS, seat_width="S360"), Acceptance(PADS, BY, WHY))
    assert found.refused
    assert {each.figure.name for each in found.open} >= {"seat_width_mm"}
    assert PADS not in {each.figure.name for each in found.open}


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ([Acceptance("seat_width_mm", BY, WHY)], "only a must that the set-up misses"),
        ([Acceptance("arm_hight_mm", BY, WHY)], "Did you mean arm_height_mm?"),
        ([Acceptance(PADS, " ", WHY)], "--by (of arm_height_mm)"),
        ([Acceptance(PADS, BY, "")], "--reason (of arm_height_mm)"),
        ([Acceptance(PADS, BY, "two\nlines")], "one line of 1 to 600 characters"),
        ([Acceptance(PADS, "x" * 81, WHY)], "one line of 1 to 80 characters"),
        ([Acceptance(PADS, BY, WHY), Acceptance(PADS, "C", WHY)], "accepted by one person"),
    ],
)
def test_what_cannot_be_accepted(said: list[Acceptance], words: str) -> None:
    with pytest.raises(InputError) as caught:
        check_acceptances(setup(**LOW_PADS), said)
    assert words in str(caught.value)


def test_nothing_is_missed_so_nothing_can_be_accepted() -> None:
    with pytest.raises(InputError, match="This set-up misses none"):
        check_acceptances(setup(), [Acceptance(PADS, BY, WHY)])


def test_an_acceptance_goes_on_for_the_same_miss() -> None:
    first = order(setup(**LOW_PADS), Acceptance(PADS, BY, WHY))
    again = order(setup(**LOW_PADS), earlier=first)
    assert not again.refused
    assert again.accepted == first.accepted
    assert (again.revision, again.changes) == (1, ())


def test_an_acceptance_does_not_stand_for_a_larger_miss() -> None:
    first = order(setup(**LOW_PADS), Acceptance(PADS, BY, WHY))
    lower = order(setup(**LOWER_PADS), earlier=first)
    assert lower.refused
    assert any("more is missed now" in each for each in lower.remarks)
    anew = order(setup(**LOWER_PADS), Acceptance(PADS, "C", "as well"), earlier=first)
    assert [(each.by, each.revision) for each in anew.accepted] == [("C", 2)]
    assert not any("more is missed" in each for each in anew.remarks)


def test_an_acceptance_that_is_not_needed_any_more_is_dropped() -> None:
    first = order(setup(**LOW_PADS), Acceptance(PADS, BY, WHY))
    better = order(setup(), earlier=first)
    assert better.accepted == ()
    assert any("the must holds now" in each for each in better.remarks)
    (dropped,) = [each for each in better.changes if each.topic == "accepted"]
    assert (dropped.before, dropped.after) == (f"by {BY} in revision 1: {WHY}", "nothing")


@pytest.mark.parametrize(
    ("value", "kept", "stands"),
    [
        (238.0, 238.0, True),
        (240.0, 238.0, True),  # less is missed
        (237.0, 238.0, False),  # more is missed
        (272.0, 238.0, False),  # missed at the other end
        (272.0, 275.0, True),
        (276.0, 275.0, False),
        (238.0, None, False),
    ],
)
def test_which_miss_an_acceptance_covers(value: float, kept: float | None, stands: bool) -> None:
    (item,) = setup(**LOW_PADS).broken
    unmet = Unmet(replace(item, value=value))
    assert covers(AcceptedMust(PADS, 245.0, 270.0, kept, BY, WHY, 1), unmet) == stands
    assert not covers(AcceptedMust(PADS, 240.0, 270.0, kept, BY, WHY, 1), unmet)
    assert not covers(AcceptedMust("seat_width_mm", 245.0, 270.0, kept, BY, WHY, 1), unmet)


def test_a_revision_lists_what_differs_in_words() -> None:
    first = order(setup())
    # Coated rims 70 more; the medium cushion 120 more: 785 becomes 975; days stay at 17.
    second = order(setup(hand_rim="RC", cushion="Q75", arm_support="AW-275"), earlier=first)
    told = {each.label: (each.before, each.after) for each in second.changes}
    assert second.revision == 2
    assert told["Hand rim"] == ("RA, aluminium hand rim", "RC, coated hand rim")
    assert told["Cushion"] == ("Q30, 30 mm foam cushion", "Q75, 75 mm contoured foam cushion")
    assert told["Total"] == ("785.00 EUR", "975.00 EUR (+190.00)")
    assert set(told) == {"Hand rim", "Cushion", "Total"}
    back = order(setup(), earlier=second)
    assert back.revision == 3
    assert {each.label: each.after for each in back.changes}["Total"] == "785.00 EUR (-190.00)"


def test_the_price_lists_days_are_minded() -> None:
    line = opened().line
    prices = replace(
        plain(line), path="p.yaml", dated="2026-11-01", valid_until="2026-12-31",
        line_version="2026.1",
    )  # fmt: skip

    def remarks(dated: str) -> str:
        return " ".join(order(setup(), prices=prices, dated=dated).remarks)

    assert "valid until 2026-12-31 and the order is dated 2027-01-01" in remarks("2027-01-01")
    assert "valid until" not in remarks("2026-12-31")
    assert "before the price list's 2026-11-01" in remarks("2026-10-31")
    assert "the order has no date" in remarks("")
    assert "made for version 2026.1 of the line; this is version 2026.2" in remarks("2026-12-01")
