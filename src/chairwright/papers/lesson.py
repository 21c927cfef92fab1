"""What stands on a lesson sheet: plain text and drawings that a caller has already worked out."""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.papers.payload import Drawing, Source


@dataclass(frozen=True)
class LessonPicture:
    """A small side view with what stands under it."""

    drawing: Drawing
    caption: str


@dataclass(frozen=True)
class LessonCell:
    """A value and how far it lies from the set-up as it stands; for a length, inches as well."""

    value: str
    change: str = ""
    inches: str = ""


@dataclass(frozen=True)
class LessonRow:
    """One figure along the options.

    Parameters
    ----------
    label, unit : str
    cells : tuple of LessonCell
        One a column.
    must : str
        What must hold, such as "must 10 to 20"; empty when nothing must.
    strip : Drawing or None
        A strip chart over the numbers.
    """

    label: str
    unit: str
    cells: tuple[LessonCell, ...]
    must: str = ""
    strip: Drawing | None = None


@dataclass(frozen=True)
class LessonWhy:
    """Why a figure moved; ``sources`` are numbers in the list of sources."""

    label: str
    text: str
    sources: str


@dataclass(frozen=True)
class LessonBlock:
    """One run of options.

    Parameters
    ----------
    heading, range : str
        Such as "One hole further forward" and "A8 to F8, rearmost to foremost".
    columns : tuple of str
        Codes of the options shown.
    present : int
        Which of them is the set-up as it stands.
    rows : tuple of LessonRow
    whys : tuple of LessonWhy
    notes : tuple of str
        Options that are left out and why, what had to follow.
    """

    heading: str
    range: str
    columns: tuple[str, ...]
    present: int
    rows: tuple[LessonRow, ...]
    whys: tuple[LessonWhy, ...]
    notes: tuple[str, ...] = ()


@dataclass(frozen=True)
class LessonPayload:
    """Everything on one lesson sheet.

    Parameters
    ----------
    title : str
    client_reference, setup_id, line_title, line_version : str
    present : str
        The choice and its present option, in words.
    pictures : tuple of LessonPicture
    legend : str
        What the lines in the drawings mean, and their scale.
    blocks : tuple of LessonBlock
        One or two.
    afterwards : str
        What is to be adjusted after such a change; empty for nothing.
    others : str
        Which figures move and are not shown; empty for none.
    cautions : tuple of str
    sources : tuple of Source
    """

    title: str
    client_reference: str
    setup_id: str
    line_title: str
    line_version: str
    present: str
    pictures: tuple[LessonPicture, ...]
    legend: str
    blocks: tuple[LessonBlock, ...]
    afterwards: str
    others: str
    cautions: tuple[str, ...]
    sources: tuple[Source, ...]
