"""Days and times of HL7 FHIR as stretches of time, so that what is newer can be told for sure."""

from __future__ import annotations

import re
from dataclasses import dataclass

from chairwright.files.order_fields import is_date

MINUTES_A_DAY = 1440
_WRITTEN = re.compile(
    r"(?P<year>\d{4})(?:-(?P<month>0[1-9]|1[0-2])(?:-(?P<day>0[1-9]|[12]\d|3[01])"
    r"(?:T(?P<hour>[01]\d|2[0-3]):(?P<minute>[0-5]\d):(?P<second>[0-5]\d|60)(?:\.\d{1,9})?"
    r"(?P<zone>Z|[+-](?:0\d|1[0-4]):[0-5]\d))?)?)?"
)


@dataclass(frozen=True)
class Stretch:
    """From when to when something may have been: minutes of UTC, the last one excluded.

    Parameters
    ----------
    starts, ends : int
    text : str
        As it was written.
    """

    starts: int
    ends: int
    text: str

    def after(self, other: Stretch) -> bool:
        """Whether this was later for sure, however the two were written."""
        return self.starts >= other.ends


def stretch(text: object) -> Stretch | None:
    """Read a date or a time of FHIR: a year, a month, a day, or a minute with its zone.

    Parameters
    ----------
    text : object

    Returns
    -------
    Stretch or None
        None for what is not one. A day without a zone is taken as a day of UTC.

    Examples
    --------
    >>> newer, older = stretch("2026-03-02"), stretch("2026-03-01T23:59:00+01:00")
    >>> newer.after(older), older.after(newer)
    (True, False)
    """
    match = _WRITTEN.fullmatch(text) if isinstance(text, str) else None
    if match is None:
        return None
    year, month, day = int(match["year"]), int(match["month"] or 1), int(match["day"] or 1)
    if not is_date(f"{year:04d}-{month:02d}-{day:02d}"):
        return None
    start = days_before(year, month, day) * MINUTES_A_DAY
    if match["hour"] is not None:
        minute = start + 60 * int(match["hour"]) + int(match["minute"]) - _offset(match["zone"])
        return Stretch(minute, minute + 1, match[0])
    if match["day"]:
        return Stretch(start, start + MINUTES_A_DAY, match[0])
    following = (year + month // 12, month % 12 + 1) if match["month"] else (year + 1, 1)
    return Stretch(start, days_before(*following, 1) * MINUTES_A_DAY, match[0])


def _offset(zone: str) -> int:
    if zone == "Z":
        return 0
    minutes = 60 * int(zone[1:3]) + int(zone[4:6])
    return -minutes if zone[0] == "-" else minutes


def days_before(year: int, month: int, day: int) -> int:
    """Days from 1 March of the year 0 to a day of the calendar.

    Parameters
    ----------
    year, month, day : int

    Examples
    --------
    >>> days_before(2024, 3, 1) - days_before(2024, 2, 28)
    2
    """
    years, months = (year, month - 3) if month > 2 else (year - 1, month + 9)
    leaps = years // 4 - years // 100 + years // 400
    return 365 * years + leaps + (153 * months + 2) // 5 + day - 1
