"""The set-up sheet of one fitting: choices, figures, decisions, drawings, basis."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chairwright.figures.registry import FIGURES, GROUPS
from chairwright.fitting.assumptions import assumptions
from chairwright.fitting.described import Described, Judged
from chairwright.fitting.ledger import Row, ledger
from chairwright.fitting.person import Person
from chairwright.fitting.place_effect import PlaceEffect
from chairwright.fitting.unsure import unsure_musts
from chairwright.line.model import Line
from chairwright.papers.cautions import figure_group
from chairwright.papers.choice_rows import choices_of, extras_of
from chairwright.papers.drawings import sheet_drawings
from chairwright.papers.effect_words import effect_words
from chairwright.papers.order import fitted_in_order
from chairwright.papers.payload import (
    FigureGroup,
    FigureRow,
    MeasureRow,
    MustRow,
    MustState,
    SheetPayload,
    Source,
)
from chairwright.papers.place_rows import place_drawings, place_rows
from chairwright.papers.typeset import Paper
from chairwright.papers.words import (
    SourceNumbers,
    Units,
    brief_citations,
    inches_words,
    measured_words,
    propulsion_words,
    range_words,
    spread_words,
    target_words,
    unit_words,
    value_words,
)
from chairwright.person.client import Measure
from chairwright.person.measures import CATALOGUE

UNASKED = ("tip_rear_anti_tip_deg", "seat_to_floor_rear_mm")
"""Figures that stand on the sheet although nothing is asked of them."""

ROOM_MM = {"a4": 118.0, "us-letter": 106.0}
"""Room for the drawings on the first page [mm]."""

STATUS_MM = 16.0
"""What the frame about a must that is not met takes off that room [mm]."""

NOT_MET = "This set-up does NOT meet every must. It is the nearest that this line can come: do not \
build it before the decisions below are taken."


def sheet_of(
    person: Person,
    setup: Described,
    setup_id: str,
    units: Units = "mm",
    paper: Paper = "a4",
    effect: PlaceEffect | None = None,
) -> SheetPayload:
    """Put everything that stands on the set-up sheet into words.

    Parameters
    ----------
    person : Person
    setup : Described
    setup_id : str
        What the set-up is called on the sheet.
    units : {"mm", "in"}
        ``"in"`` adds inches to the lengths in the table; the drawings stay in mm.
    paper : {"a4", "us-letter"}
        Sets the room for the drawings.
    effect : PlaceEffect or None
        What the client's places changed, when that is known.

    Returns
    -------
    SheetPayload
    """
    rows = [row for row in ledger(setup) if row.word is not None or row.figure.name in UNASKED]
    numbers = SourceNumbers(
        (item.target.source for row in rows for item in row.asked), brief_citations
    )
    room = ROOM_MM[paper] - (STATUS_MM if setup.broken else 0.0)
    return SheetPayload(
        client_reference=person.client.reference,
        setup_id=setup_id,
        line_title=setup.line.title,
        line_version=setup.line.version,
        propulsion=propulsion_words(person.client),
        choices=(*fitted_in_order(choices_of(setup)), *extras_of(setup)),
        figures=tuple(_groups(person, setup.line, rows, numbers, units)),
        drawings=sheet_drawings(setup.shape, setup.directions_deg, setup.angles_deg, room),
        measures=tuple(_measure_rows(person)),
        musts=tuple(_decisions(person, setup)),
        places=place_rows(person, setup),
        place_drawings=place_drawings(setup, person.surroundings),
        place_words=() if effect is None else effect_words(effect),
        unsure=tuple(_unsure_words(setup)),
        assumed=assumptions(setup),
        sources=tuple(Source(str(number), words) for number, words in numbers.listed),
        status=NOT_MET if setup.broken else "",
        units=units,
    )


def _groups(
    person: Person, line: Line, rows: Sequence[Row], numbers: SourceNumbers, units: Units
) -> Iterator[FigureGroup]:
    for question in GROUPS:
        inside = [row for row in rows if row.figure.group == question]
        if inside:
            shown = tuple(_figure_row(line, row, numbers, units) for row in inside)
            yield figure_group(question, shown, person.weighed)


def _figure_row(line: Line, row: Row, numbers: SourceNumbers, units: Units) -> FigureRow:
    figure = row.figure
    inches = inches_words(figure, row.value) if units == "in" else ""
    return FigureRow(
        label=figure.label,
        value=value_words(figure, row.value, *row.targets),
        unit=unit_words(figure, line),
        spread=inches or spread_words(figure, row.spread),
        target="" if row.must is None else range_words(row.must.target, row.value),
        verdict=row.word,
        source=numbers.of(item.target.source for item in row.asked),
        prefer="" if row.prefer is None else range_words(row.prefer.target, row.value),
    )


def _decisions(person: Person, setup: Described) -> Iterator[MustRow]:
    decided = {(target.figure, target.must) for target in person.client.own_targets}
    for item in setup.judged:
        own = not item.target.place and (item.target.figure, item.target.must) in decided
        if own or item.verdict.breaks:
            wish = "" if item.target.must else "prefer "
            reason = item.target.reason if own else _shortfall(item, setup.line)
            state: MustState = "met" if item.verdict.word.startswith("holds") else "not met"
            asked = target_words(item.target, setup.line, item.value)
            yield MustRow(f"{wish}{asked}", state, reason)


def _unsure_words(setup: Described) -> Iterator[str]:
    """What to measure again, each with the musts for which it counts most."""
    found: dict[str, dict[str, list[str]]] = {}
    for item in unsure_musts(setup):
        label = FIGURES[item.judged.target.figure].label
        do, _, what = item.again_briefly.partition(": ")
        labels = found.setdefault(do[0].lower() + do[1:], {}).setdefault(what, [])
        if label not in labels:
            labels.append(label)
    for do, whats in found.items():
        parts = (f"{what} ({', '.join(labels)})".lstrip() for what, labels in whats.items())
        yield f"{do} {', '.join(parts)}"


def _shortfall(item: Judged, line: Line) -> str:
    figure = FIGURES[item.target.figure]
    return f"{measured_words(figure, item.value, line, item.target)} is reached"


def _measure_rows(person: Person) -> Iterator[MeasureRow]:
    """Measured values only, sides that agree as one."""
    seen: dict[tuple[str, str], list[Measure]] = {}
    for measure in person.measures:
        if not measure.estimated:
            seen.setdefault((measure.name, measure.quantity.typed), []).append(measure)
    for same in seen.values():
        first = same[0]
        kind, unit = CATALOGUE[first.name], first.quantity.unit
        side = "" if len(same) > 1 or first.side == "middle" else f", {first.side}"
        digits = 0 if kind.dimension == "length" else 1
        metric = first.quantity.typed.endswith(("mm", "cm", " m", "kg"))
        yield MeasureRow(
            label=f"{kind.label}{side}",
            typed="" if metric else f"{first.value:.{digits}f} {unit}",
            value=first.quantity.typed,
            mark="measured",
            tolerance="" if first.tolerance == kind.tolerance else f"± {first.tolerance:g} {unit}",
        )
