"""The chair's life as a picture: which setting serves from when till when, and the reviews."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from chairwright.drawing.lettering import text_width
from chairwright.drawing.scene import Group, Line, Point, Polyline, Primitive, Text
from chairwright.drawing.sheet import Sheet

WIDTH_MM = 172.0
LABEL_MM = 40.0
RIGHT_MM = 6.0
TOP_MM = 3.0
ROW_MM = 9.0
BAR_MM = 4.6
AXIS_MM = 11.0
TEXT_MM = 3.0
SMALL_MM = 2.6
MARK_MM = 1.5
LEAST_FOR_TEXT_MM = 3.0
MONTHS = 12
MOST_TICKS = 12


@dataclass(frozen=True)
class Bar:
    """One setting while it serves.

    Parameters
    ----------
    start, end : int
        Months.
    name : str
        Of the setting, such as ``A``.
    """

    start: int
    end: int
    name: str


@dataclass(frozen=True)
class Row:
    """One way in which the client may change.

    Parameters
    ----------
    label : str
    bars : tuple of Bar
        Each begins where the one before ends.
    after : str
        What is wanted beyond the last bar; empty when it reaches the end of the range.
    """

    label: str
    bars: tuple[Bar, ...]
    after: str = ""


@dataclass(frozen=True)
class ReviewMark:
    """A review on the time axis.

    Parameters
    ----------
    months : int
    by_growth : bool
        Filled; the others are open.
    """

    months: int
    by_growth: bool


def life_chart_sheet(
    rows: Sequence[Row], marks: Sequence[ReviewMark], months: int, age_years: float | None
) -> Sheet:
    """Draw the life of one set-up.

    Parameters
    ----------
    rows : sequence of Row
    marks : sequence of ReviewMark
    months : int
        Length of the range.
    age_years : float or None
        Now; None leaves the ages out.

    Returns
    -------
    Sheet
    """
    last = max(months, *(mark.months for mark in marks)) if marks else months
    axis = _Axis(last, TOP_MM + ROW_MM * (len(rows) + 1))
    groups = (
        Group("axis", tuple(_ticks(axis, months, age_years))),
        Group("settings", tuple(p for at, row in enumerate(rows) for p in _row(axis, at, row))),
        Group("reviews", tuple(_reviews(axis, len(rows), marks))),
    )
    spoken = ". ".join(_spoken(row) for row in rows)
    height = axis.floor + AXIS_MM
    return Sheet("The chair's life", f"{spoken}. {_spoken_reviews(marks)}", WIDTH_MM, height,
                 groups, 0.7)  # fmt: skip


@dataclass(frozen=True)
class _Axis:
    """Where months land on paper, and the height of the time axis."""

    last: int
    floor: float

    def x(self, months: float) -> float:
        return LABEL_MM + (WIDTH_MM - LABEL_MM - RIGHT_MM) * months / self.last


def _ticks(axis: _Axis, months: int, age_years: float | None) -> Iterator[Primitive]:
    yield Line((axis.x(0), axis.floor), (axis.x(axis.last), axis.floor), "thin")
    step = next(s for s in (3, 6, 12, 24, 36) if axis.last / s <= MOST_TICKS or s == 36)
    yield Text((0.0, axis.floor + 4.2), "Month", SMALL_MM)
    if age_years is not None:
        yield Text((0.0, axis.floor + 8.2), "Age in years", SMALL_MM)
    for at in range(0, axis.last + 1, step):
        x = axis.x(at)
        yield Line((x, axis.floor), (x, axis.floor + 1.2), "thin")
        yield Text((x, axis.floor + 4.2), str(at), SMALL_MM, "middle")
        if age_years is not None:
            age = f"{age_years + at / MONTHS:.1f}"
            yield Text((x, axis.floor + 8.2), age, SMALL_MM, "middle")
    yield Line((axis.x(months), TOP_MM), (axis.x(months), axis.floor), "centre")


def _row(axis: _Axis, number: int, row: Row) -> Iterator[Primitive]:
    middle = TOP_MM + ROW_MM * (number + 0.5)
    top, bottom = middle - BAR_MM / 2, middle + BAR_MM / 2
    yield Text((0.0, middle + 1.0), row.label, TEXT_MM)
    for bar in row.bars:
        left, right = axis.x(bar.start), axis.x(bar.end)
        box: tuple[Point, ...] = ((left, top), (right, top), (right, bottom), (left, bottom))
        yield Polyline(box, "outline", closed=True, fill="sheet")
        if right - left >= LEAST_FOR_TEXT_MM:
            yield Text(((left + right) / 2, middle + 1.1), bar.name, TEXT_MM, "middle", strong=2)
    if row.after and row.bars:
        yield from _after(axis, row, middle)


def _after(axis: _Axis, row: Row, middle: float) -> Iterator[Primitive]:
    """What is wanted after the last bar, beside it where there is room, else inside the page."""
    start, end = axis.x(row.bars[-1].end), axis.x(axis.last)
    yield Line((start, middle), (end, middle), "hidden")
    wide = text_width(row.after, SMALL_MM)
    if end - start - 3.0 >= wide:
        yield Text((start + 1.5, middle - 0.7), row.after, SMALL_MM, backed=True)
    else:
        yield Text((end, middle + ROW_MM / 2 - 0.6), row.after, SMALL_MM, "end", backed=True)


def _reviews(axis: _Axis, number: int, marks: Sequence[ReviewMark]) -> Iterator[Primitive]:
    middle = TOP_MM + ROW_MM * (number + 0.5)
    yield Text((0.0, middle + 1.0), "Reviews", TEXT_MM)
    for mark in marks:
        x = axis.x(mark.months)
        tip = (
            (x, middle + MARK_MM),
            (x - MARK_MM, middle - MARK_MM),
            (x + MARK_MM, middle - MARK_MM),
        )
        yield Polyline(tip, "thin", closed=True, fill="ink" if mark.by_growth else "sheet")


def _spoken(row: Row) -> str:
    bars = ", ".join(f"{bar.name} month {bar.start} to {bar.end}" for bar in row.bars)
    return f"{row.label}: {bars}" + (f", then {row.after}" if row.after else "")


def _spoken_reviews(marks: Sequence[ReviewMark]) -> str:
    months = ", ".join(str(mark.months) for mark in marks)
    return f"Reviews in month {months}." if marks else ""
