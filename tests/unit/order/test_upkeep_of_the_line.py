"""Upkeep that the line file states stands in place of the common intervals, as the maker's."""

from __future__ import annotations

import pytest

from chairwright.errors import InputError
from chairwright.line.load import load_line
from chairwright.order.handover import COMMON, GUIDE, HOSPITAL
from chairwright.order.handover_days import Day, day_of
from chairwright.order.handover_upkeep import MAKER, months, upkeep
from tests.oracles.lines import everyday_as_written, line_from

SOURCE = "this invented maker's own value"


def delivered() -> Day:
    day = day_of("2026-12-01")
    assert day is not None
    return day


@pytest.mark.parametrize("name", ["everyday", "light-rigid", "heavy-duty"])
def test_the_lines_own_intervals_are_printed_as_the_makers(name: str) -> None:
    line = load_line(name)
    assert line.upkeep
    first, *own, last = upkeep(None, line.upkeep)
    assert (first.often, first.source) == ("every day", COMMON)
    assert (last.often, last.source) == ("after every change", GUIDE)
    assert {each.source for each in own} == {f"{MAKER}: {SOURCE}"}
    assert [each.often for each in own] == [each.often for each in line.upkeep]
    assert all(each.first == "" for each in (first, *own, last))


def test_first_days_after_delivery_by_the_calendar() -> None:
    """1 December 2026: a week later the 8th, then the first of March, June and December."""
    found = {each.often: each.first for each in upkeep(delivered(), load_line("heavy-duty").upkeep)}
    assert found["every week"] == "2026-12-08"
    assert found["every 3 months"] == "2027-03-01"
    assert found["every 6 months"] == "2027-06-01"
    assert found["when worn"] == ""


def test_a_line_that_states_none_has_the_common_intervals() -> None:
    data = everyday_as_written()
    data.pop("upkeep")
    line = line_from(data)
    assert line.upkeep == ()
    found = upkeep(delivered(), line.upkeep)
    assert ("every year", "2027-12-01", HOSPITAL) in [(e.often, e.first, e.source) for e in found]
    assert not any(MAKER in each.source for each in found)


def test_an_interval_that_nobody_knows_is_refused() -> None:
    data = everyday_as_written()
    data["upkeep"] = [{"often": "every blue moon", "work": "look", "source": SOURCE}]
    with pytest.raises(InputError) as caught:
        line_from(data)
    assert "upkeep" in str(caught.value)
    assert "every week" in str(caught.value)


def test_the_calendar_has_a_box_where_the_makers_service_is_due() -> None:
    """Every 3 months and every 6 months: months 3, 6, 9 and 12; without a word month 12."""
    makers = load_line("heavy-duty").upkeep
    assert [each.number for each in months(delivered(), makers) if each.service] == [3, 6, 9, 12]
    assert [each.number for each in months(None) if each.service] == [12]
