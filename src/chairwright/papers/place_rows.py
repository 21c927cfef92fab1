"""The client's places on the set-up sheet."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.drawing.place_sheets import place_sheet
from chairwright.drawing.sheet import Page
from chairwright.drawing.svg import to_svg
from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described, Judged
from chairwright.fitting.person import Person
from chairwright.fitting.place_verdicts import PlaceVerdict, place_verdicts
from chairwright.papers.payload import Drawing, PlaceRow
from chairwright.papers.words import measured_words, range_words
from chairwright.places.model import Place, Surroundings

ROOM = {
    "door": Page(86.0, 112.0),
    "corner": Page(86.0, 112.0),
    "ramp": Page(150.0, 150.0),
    "cross_slope": Page(120.0, 150.0),
}
"""Room for the drawing of a kind of place; two narrow ones stand side by side [mm]."""


def place_rows(person: Person, setup: Described) -> tuple[PlaceRow, ...]:
    """One row for each place of which something is asked or is to be minded.

    Parameters
    ----------
    person : Person
    setup : Described

    Returns
    -------
    tuple of PlaceRow
        Empty when no places are known.
    """
    if person.surroundings is None:
        return ()
    return tuple(_rows(setup, place_verdicts(person, setup)))


def _rows(setup: Described, verdicts: tuple[PlaceVerdict, ...]) -> Iterator[PlaceRow]:
    for each in verdicts:
        decides = [_decides(item, setup) for item in each.judged if _worst(each, item)]
        words = "; ".join([*decides, *each.notes])
        if each.word != "nothing asked":
            yield PlaceRow(each.place.name, each.word, words)


def _worst(verdict: PlaceVerdict, item: Judged) -> bool:
    """Whether a target is told: those that are missed, or all musts when none is."""
    missed = [each for each in verdict.judged if not each.verdict.word.startswith("holds")]
    return item in missed if missed else item.target.must


def _decides(item: Judged, setup: Described) -> str:
    figure = FIGURES[item.target.figure]
    value = measured_words(figure, item.value, setup.line, item.target)
    return f"{figure.label} {value} ({range_words(item.target, item.value)})"


def place_drawings(setup: Described, surroundings: Surroundings | None) -> tuple[Drawing, ...]:
    """Draw the set-up in the first place of each kind that has a drawing.

    Parameters
    ----------
    setup : Described
    surroundings : Surroundings or None

    Returns
    -------
    tuple of Drawing
    """
    first: dict[str, Place] = {}
    for place in () if surroundings is None else surroundings.places:
        first.setdefault(place.kind, place)
    sheets = {
        kind: place_sheet(setup, first[kind], page=page)
        for kind, page in ROOM.items()
        if kind in first
    }
    return tuple(
        Drawing(
            to_svg(sheet, kind.replace("_", "-")),
            f"{sheet.title}. {sheet.description}",
            sheet.width_mm,
        )
        for kind, sheet in sheets.items()
        if sheet is not None
    )
