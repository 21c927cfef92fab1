"""Days of FHIR: what is later for sure, across precision and zones."""

from __future__ import annotations

import pytest

from chairwright.exchange.fhir_dates import days_before, stretch


@pytest.mark.parametrize(
    ("newer", "older"),
    [
        ("2026-03-02", "2026-03-01"),
        ("2027", "2026-12-31"),
        ("2026-04", "2026-03-31"),
        ("2024-03-01", "2024-02-29"),
        ("2027-01-01", "2026-12"),
        ("2026-03-01T10:00:00Z", "2026-03-01T10:59:00+01:00"),
        ("2026-03-01T00:30:00-05:00", "2026-03-01T05:29:59Z"),
        ("2026-03-02", "2026-03-01T23:59:60Z"),
        ("2026-03-01T12:00:00.250Z", "2026-03-01T11:59:00Z"),
    ],
)
def test_later_for_sure(newer: str, older: str) -> None:
    one, other = stretch(newer), stretch(older)
    assert one is not None
    assert other is not None
    assert one.after(other)
    assert not other.after(one)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("2026", "2026-03-01"),
        ("2026-03", "2026-03-31"),
        ("2026-03-01", "2026-03-01T10:00:00Z"),
        ("2026-03-01", "2026-03-01"),
    ],
)
def test_neither_is_later_for_sure(one: str, other: str) -> None:
    first, second = stretch(one), stretch(other)
    assert first is not None
    assert second is not None
    assert not first.after(second)
    assert not second.after(first)


@pytest.mark.parametrize(
    "text",
    ["", "last week", "2026-02-30", "2026-13", "26-03-01", "2026-03-01T10:00:00",
     "2026-03-01T25:00:00Z", "01.03.2026", None, 2026,
     "2026-03-01 10:00", "2025-02-29", "2026-03-01T10:00:00+15:00"],
)  # fmt: skip
def test_what_is_no_day_of_fhir(text: object) -> None:
    assert stretch(text) is None


def test_days_are_counted_as_the_calendar_has_them() -> None:
    # 365 days in a year, one more over a 29 February; 1900 has none, 2000 has one.
    assert days_before(2027, 1, 1) - days_before(2026, 1, 1) == 365
    assert days_before(2025, 1, 1) - days_before(2024, 1, 1) == 366
    assert days_before(1901, 1, 1) - days_before(1900, 1, 1) == 365
    assert days_before(2001, 1, 1) - days_before(2000, 1, 1) == 366
    # 1 January 1970 to 25 November 2026: 56 years, 14 leap days, 328 days.
    assert days_before(2026, 11, 25) - days_before(1970, 1, 1) == 56 * 365 + 14 + 328
