"""What is checked, trained and told when a chair is handed over, and what is due afterwards.

Two parts: the technician's check, and a page that the client takes home.
"""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.order.order_dimensions import Dimension
from chairwright.order.parts import SettingRow

COMMON = "common practice, no source"
GUIDE = "Training guide 1998 (read in the source)"
SIZES = "tolerances as delivered: working values, common practice, no source"
WHO_STEPS = "WHO guideline 2023, step train (restated by a secondary source)"
HOSPITAL = "NHS orthopaedic hospital sheet on the care of a wheelchair (read in the source)"
SCHOOL = "school and health list of wheelchair care (restated by a secondary source)"
MODULE_9 = "NSW, Spinal Seating, Module 9 (read in the source)"
"""Sources; where a thing has several, they are joined by a semicolon, as those of a target."""


@dataclass(frozen=True)
class Measured:
    """One dimension to be measured on the delivered chair.

    Parameters
    ----------
    dimension : Dimension
        As ordered, with its reference points and its tolerance.
    low, high : float
        Allowed, in the dimension's unit, as printed.
    must : bool
        Whether a must of the client makes the range narrower than the tolerance.
    source : str
        Of the tolerance, and of the must where there is one.
    """

    dimension: Dimension
    low: float
    high: float
    must: bool
    source: str


@dataclass(frozen=True)
class Check:
    """One thing to be checked and ticked.

    Parameters
    ----------
    what : str
    asked : str
        What must be found; empty where a tick says all.
    source : str
    reading : bool
        Whether a value or a word is to be written in.
    """

    what: str
    asked: str
    source: str
    reading: bool = False


@dataclass(frozen=True)
class CheckGroup:
    """Checks under one heading, with the cautions that belong to them."""

    title: str
    checks: tuple[Check, ...]
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True)
class Taught:
    """One thing that the client or the carer is trained in, with its source."""

    what: str
    source: str


@dataclass(frozen=True)
class Advice:
    """What the client reads under one heading."""

    title: str
    words: tuple[str, ...]


@dataclass(frozen=True)
class OwnPlace:
    """One of the client's own slopes or steps, and what the figures say of it.

    Parameters
    ----------
    name : str
        As the household calls it.
    size : str
        Its slope or height.
    words : tuple of str
    """

    name: str
    size: str
    words: tuple[str, ...]


@dataclass(frozen=True)
class Upkeep:
    """One work that keeps the chair safe.

    Parameters
    ----------
    often : str
        Interval, such as ``every week``.
    first : str
        Day on which it is first due; empty without a day of delivery.
    work : str
    source : str
    """

    often: str
    first: str
    work: str
    source: str


@dataclass(frozen=True)
class Month:
    """One month of the calendar.

    Parameters
    ----------
    number : int
        From delivery.
    until : str
        Its last day; empty without a day of delivery.
    weeks : int
        Boxes for the weekly work.
    service : bool
        Whether the yearly service is due at its end.
    """

    number: int
    until: str
    weeks: int
    service: bool


@dataclass(frozen=True)
class Review:
    """When somebody looks at chair and client again.

    Parameters
    ----------
    earliest, latest : str
        Days; empty without a day of delivery.
    words, source : str
    """

    earliest: str
    latest: str
    words: str
    source: str


@dataclass(frozen=True)
class Handover:
    """Everything on the papers of a handover.

    Parameters
    ----------
    reference : str
        The client's number, never a name.
    set_up, line_title, line_version : str
    order_number : str
        Empty when the order has none.
    revision : int
        Of the order.
    delivered : str
        Day of delivery; empty when it is to be written in.
    rated : str
        The most that the chair may carry; empty when no part has a limit.
    settings : tuple of SettingRow
        Holes and settings as ordered.
    measured : tuple of Measured
    groups : tuple of CheckGroup
    taught : tuple of Taught
    advice : tuple of Advice
        For the client.
    places : tuple of OwnPlace
    upkeep : tuple of Upkeep
    months : tuple of Month
    review : Review
    """

    reference: str
    set_up: str
    line_title: str
    line_version: str
    order_number: str
    revision: int
    delivered: str
    rated: str
    settings: tuple[SettingRow, ...]
    measured: tuple[Measured, ...]
    groups: tuple[CheckGroup, ...]
    taught: tuple[Taught, ...]
    advice: tuple[Advice, ...]
    places: tuple[OwnPlace, ...]
    upkeep: tuple[Upkeep, ...]
    months: tuple[Month, ...]
    review: Review
