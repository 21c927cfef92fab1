"""The papers of a handover: ranges as delivered, days of upkeep, own places, what is told."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from chairwright.errors import InputError
from chairwright.order.handover import Handover
from chairwright.order.handover_days import day_of, days_after, days_between, months_after
from chairwright.order.handover_make import make_handover
from tests.unit.order.letters import DEMO, opened, ordered, surroundings


def handover(name: str, delivered: str = "", *, places: bool = True) -> Handover:
    around = surroundings(name) if places else None
    return make_handover(ordered(name), opened(name).person, around, delivered)


@pytest.mark.parametrize(
    ("day", "months", "due"),
    [
        ("2026-12-01", 1, "2027-01-01"),
        ("2026-11-30", 3, "2027-02-28"),
        ("2027-11-30", 3, "2028-02-29"),
        ("2026-08-31", 1, "2026-09-30"),
        ("2026-12-31", 12, "2027-12-31"),
        ("2028-02-29", 12, "2029-02-28"),
    ],
)
def test_days_some_months_later_by_the_calendar(day: str, months: int, due: str) -> None:
    found = day_of(day)
    assert found is not None
    assert str(months_after(found, months)) == due


@pytest.mark.parametrize("day", ["2026-12-01", "2027-12-31", "2028-02-28", "2096-02-29"])
@pytest.mark.parametrize("days", [0, 1, 7, 31, 365, 1500])
def test_days_later_as_the_standard_library_counts_them(day: str, days: int) -> None:
    first, last = day_of(day), date.fromisoformat(day) + timedelta(days=days)
    assert first is not None
    assert str(days_after(first, days)) == last.isoformat()
    assert days_between(first, days_after(first, days)) == days


@pytest.mark.parametrize(
    "typed", ["2026-13-01", "2026-02-30", "1 December", "20261201", "2026-W49-2", "0001-01-01"]
)
def test_what_is_no_day_is_refused(typed: str) -> None:
    with pytest.raises(InputError, match="day of the calendar"):
        day_of(typed)


def test_upkeep_is_due_a_week_a_month_and_a_year_after_delivery() -> None:
    due = {each.often: each.first for each in handover("avg-001", "2026-12-01").upkeep}
    assert due["every week"] == "2026-12-08"
    assert due["every month"] == "2027-01-01"
    assert due["every year"] == "2027-12-01"


def test_the_calendar_has_a_box_for_each_week_of_the_year() -> None:
    """365 days hold 52 whole weeks; the first month, of 31 days, holds 4."""
    months = handover("avg-001", "2026-12-01").months
    assert sum(month.weeks for month in months) == 52
    assert months[0].weeks == 4
    assert [month.number for month in months if month.service] == [6, 12]


def test_the_first_review_is_due_after_6_to_12_months() -> None:
    """NSW, Module 9: after the first 6 to 12 months."""
    review = handover("avg-001", "2026-12-01").review
    assert (review.earliest, review.latest) == ("2027-06-01", "2027-12-01")
    assert "read in the source" in review.source


def test_without_a_day_of_delivery_no_day_is_made_up() -> None:
    found = handover("avg-001")
    assert not any(each.first for each in found.upkeep)
    assert not any(each.until for each in found.months)
    assert (found.review.earliest, found.review.latest, found.delivered) == ("", "", "")


def test_the_allowed_range_is_the_tolerance_either_way() -> None:
    """Ordered 400 mm; a size of the frame may be 5 mm off."""
    (width,) = [
        each for each in handover("avg-001").measured if each.dimension.label == "Seat width"
    ]
    assert (width.low, width.high, width.must) == (395.0, 405.0, False)


def test_a_must_of_the_client_narrows_the_range() -> None:
    """Pads at 263 mm, 10 mm either way; the elbow of 245 mm and 1 in allow at most 270.4 mm."""
    (arms,) = [
        each for each in handover("avg-001").measured if each.dimension.name == "arm_height_mm"
    ]
    assert (arms.low, arms.high, arms.must) == (253.0, 270.0, True)
    assert "NSW (read in the source)" in arms.source


@pytest.mark.parametrize("name", DEMO)
def test_every_range_holds_what_is_ordered(name: str) -> None:
    found = handover(name).measured
    assert len(found) == len(ordered(name).dimensions)
    for each in found:
        half = 0.5 * 10.0**-each.dimension.digits
        assert each.low - half <= each.dimension.value <= each.high + half


@pytest.mark.parametrize("name", DEMO)
def test_everything_names_its_source(name: str) -> None:
    found = handover(name)
    checks = [check for group in found.groups for check in group.checks]
    assert all(check.source for check in checks)
    assert all(each.source for each in found.taught)
    assert all(each.source for each in found.upkeep)
    assert all(each.source for each in found.measured)


@pytest.mark.parametrize("name", DEMO)
def test_the_tip_check_is_done_with_a_spotter(name: str) -> None:
    (tips,) = [group for group in handover(name).groups if group.title.startswith("Tip check")]
    assert "spotter" in tips.title
    assert any("after every change" in words for words in tips.cautions)
    assert {"To the left", "To the right"} <= {check.what for check in tips.checks}


def words_of(found: Handover) -> str:
    checks = [f"{each.what} {each.asked}" for group in found.groups for each in group.checks]
    taught = [each.what for each in found.taught]
    told = [words for each in found.advice for words in each.words]
    places = [words for each in found.places for words in each.words]
    return " ".join((*checks, *taught, *told, *places))


def test_what_a_chair_does_not_have_is_not_spoken_of() -> None:
    amputee, average = words_of(handover("amp-005")), words_of(handover("avg-001"))
    assert "ootplates out" not in amputee
    assert "ootplates out" in average
    assert "belt" not in average


def test_the_clients_own_ramp_stands_in_the_check_of_the_locks() -> None:
    locks = handover("tal-002").groups[1]
    assert any("ramp at work" in check.what for check in locks.checks)
    alone = handover("tal-002", places=False)
    assert any("client's own ramp" in check.what for check in alone.groups[1].checks)
    assert alone.places == ()


def test_what_is_left_on_a_ramp_is_reckoned_in_the_worst_case() -> None:
    """Tips back at 10.6 degrees, 2.0 uncertain: 8.6 at worst; 1:10 is atan(0.1) = 5.7 degrees."""
    (ramp,) = [each for each in handover("tal-002").places if each.name == "ramp at work"]
    assert ramp.size == "1:10, 5.7 degrees"
    assert "about 10.6 degrees, at worst at 8.6; this slope has 5.7." in ramp.words[0]


def test_a_kerb_says_how_far_the_chair_must_tip() -> None:
    """asin(40 / 359) = 6.4 degrees; the device touches at 4.1, before that."""
    (kerb,) = [each for each in handover("avg-001").places if each.name == "kerb to the office"]
    assert kerb.size == "40 mm high"
    assert "about 6.4 degrees" in kerb.words[0]
    assert "in the way" in kerb.words[-1]


def test_the_note_of_the_client_stays_out() -> None:
    found = handover("hem-004", "2026-12-01")
    assert found.reference == "HEM-004"
    assert "stroke" not in repr(found)
