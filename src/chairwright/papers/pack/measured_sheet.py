"""The sheet of a measured chair: what looks slipped, how it does for its client, what is gained."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Sequence

from chairwright.drawing.overlay import overlay_sheet
from chairwright.drawing.plan_view import plan_sheet
from chairwright.drawing.polar import polar_sheet
from chairwright.drawing.sheet import Page
from chairwright.drawing.side_view import side_sheet
from chairwright.figures.registry import GROUPS
from chairwright.files.chair_measures import CHAIR_MEASURES
from chairwright.fitting.ledger import Row, Word, ledger
from chairwright.measured.gains import Change
from chairwright.measured.stands import measured_ahead
from chairwright.papers.cautions import STEADY, beside
from chairwright.papers.lesson_words import change_words
from chairwright.papers.measured_words import (
    ASSUMED,
    HEADS,
    MOST_OTHERS,
    NOT_MEASURED,
    NOT_SHOWN,
    SPREAD,
    Judgement,
    gain_words,
    slip_words,
    valued_words,
)
from chairwright.papers.pack.pictures import Picture, picture
from chairwright.papers.pack.words import Data
from chairwright.papers.refit_words import asked_words
from chairwright.papers.typeset import Paper, typeset
from chairwright.papers.words import (
    SourceNumbers,
    Units,
    brief_citations,
    inches_words,
    propulsion_words,
    range_words,
    spread_words,
    value_words,
)
from chairwright.units import inches_text

TEMPLATE = "pack/measured_sheet.typ"
SIGNATURES = ("Measured by, name", "Signature", "Date")
SIDE_PAGE, PLAN_PAGE, OVER_PAGE = Page(92.0, 118.0), Page(79.0, 118.0), Page(86.0, 112.0)
POLAR_MM = 62.0
CLOSES = "The measures fit each other as far as they check each other."
OPEN = "The measures do not fit each other: measure again before any of this is relied on."
NO_SINGLE = "No single slip explains it: measure again all that is named here."
DRAWN = "Drawn from the measures; what nobody measured is drawn at its usual place."
WEIGHED = "How far the centre of mass lies ahead of the axle was weighed in this chair."
HEIGHT = "Its height is an estimate, good to about 30 mm."
SUMMARY: dict[Word, str] = {
    "fails": "fail",
    "not as preferred": "not as preferred",
    "holds on nominal values": "hold on nominal values only",
    "holds, not as preferred": "hold, not as preferred",
    "holds": "hold",
    "not known": "not known",
}
"""Words in the order of what needs a look first."""


def measured_sheet_pdf(found: Judgement, paper: Paper = "a4", units: Units = "mm") -> bytes:
    """Typeset the sheet of one measured chair.

    Parameters
    ----------
    found : Judgement
        Text is printed as it stands; nothing in it is read as markup.
    paper : {"a4", "us-letter"}
    units : {"mm", "in"}
        ``in`` adds inches to lengths.

    Returns
    -------
    bytes
        A tagged PDF; the same chair gives the same bytes.
    """
    return typeset(TEMPLATE, measured_content(found, units), paper)


def measured_content(found: Judgement, units: Units = "mm") -> Data:
    """Everything that the template prints.

    Parameters
    ----------
    found : Judgement
    units : {"mm", "in"}
    """
    file, setup, known = found.file, found.stands.setup, found.stands.known
    rows = [row for row in ledger(setup) if row.figure.unit not in NOT_SHOWN]
    numbers = SourceNumbers(
        (item.target.source for row in rows for item in row.asked), brief_citations
    )
    words = Counter(row.word for row in rows)
    return {
        "reference": found.person.client.reference,
        "order": "",
        "revision": "",
        "name": file.name,
        "dated": found.dated,
        "taken": f"{len(file.readings)} of {len(CHAIR_MEASURES)} measures",
        "feet": file.foot_supports,
        "pushed": propulsion_words(found.person.client),
        "note": file.note,
        "closes": CLOSES if not found.doubt.open_closures else "",
        "open": OPEN if found.doubt.open_closures else "",
        "slips": list(_slips(found)),
        "closures": list(_closures(found)),
        "summary": [
            {"word": word, "words": f"{words[word]} {said}"}
            for word, said in SUMMARY.items()
            if words[word]
        ],
        "missed": [[_valued_label(row), asked_words(row)] for row in rows if row.word == "fails"],
        "pictures": _pictures(found),
        "drawn": DRAWN,
        "groups": list(_groups(found, rows, numbers, units)),
        "spread": SPREAD.replace("+/-", "±"),
        "left_out": NOT_MEASURED.replace("(-)", "(–)").format(names=_labels(known.unknown))
        if known.unknown
        else "",
        "assumed": ASSUMED.replace("+/-", "±").format(names=_labels(known.assumed))
        if known.assumed
        else "",
        "readings": list(_readings(found, units)),
        "proposed": _proposed(found, units),
        "polar": picture(polar_sheet(setup.directions_deg, setup.angles_deg, POLAR_MM), "polar"),
        "sources": [[str(number), words] for number, words in numbers.listed],
        "measured_by": SIGNATURES,
    }


def _valued_label(row: Row) -> str:
    return f"{row.figure.label} {valued_words(row)}"


def _label(name: str) -> str:
    label = CHAIR_MEASURES[name].label
    return label[:1].lower() + label[1:]


def _labels(names: Sequence[str]) -> str:
    return "; ".join(_label(name) for name in names)


def _slips(found: Judgement) -> Iterator[str]:
    """Readings to take again, the likeliest slip first."""
    suspects = found.doubt.suspects[: 1 + MOST_OTHERS]
    if found.doubt.open_closures and not suspects:
        yield NO_SINGLE
    for at, each in enumerate(suspects):
        label = CHAIR_MEASURES[each.reading.name].label
        start, end = ("Or: ", "") if at else ("", " Measure it again first.")
        yield f"{start}{label} {slip_words(each)}{end}"


def _closures(found: Judgement) -> Iterator[str]:
    for each in found.doubt.open_closures:
        names = [name for name in each.uses if name in CHAIR_MEASURES]
        yield f"Does not hold: {each.words[0].lower()}{each.words[1:]} ({_labels(names)})."


def _pictures(found: Judgement) -> list[Picture]:
    shape = found.stands.setup.shape
    return [
        picture(side_sheet(shape, page=SIDE_PAGE), "side"),
        picture(plan_sheet(shape, page=PLAN_PAGE), "plan"),
    ]


def _groups(
    found: Judgement, rows: Sequence[Row], numbers: SourceNumbers, units: Units
) -> Iterator[Data]:
    for question in GROUPS:
        inside = [row for row in rows if row.figure.group == question]
        if inside:
            yield {
                "question": question,
                "cautions": _cautions(found, question),
                "rows": [_figure(row, numbers, units) for row in inside if row.word],
                "also": [
                    [row.figure.label, _valued(row, units)]
                    for row in inside
                    if not row.word and not math.isnan(row.value)
                ],
            }


def _cautions(found: Judgement, question: str) -> list[str]:
    words = list(beside(question, found.person.weighed))
    values = found.file.values
    if question == STEADY and measured_ahead(values) is not None:
        words[0] = WEIGHED if "com_above_floor" in values else f"{WEIGHED} {HEIGHT}"
    return words


def _figure(row: Row, numbers: SourceNumbers, units: Units) -> Data:
    figure = row.figure
    inches = inches_words(figure, row.value) if units == "in" else ""
    return {
        "label": figure.label,
        "value": _with_unit(row),
        "spread": spread_words(figure, row.spread),
        "inches": inches,
        "must": "" if row.must is None else range_words(row.must.target, row.value),
        "prefer": "" if row.prefer is None else range_words(row.prefer.target, row.value),
        "word": row.word or "",
        "source": numbers.of(item.target.source for item in row.asked),
    }


def _readings(found: Judgement, units: Units) -> Iterator[Data]:
    """Every measure as it was taken, and which of them may be slips."""
    suspects = {each.reading.name for each in found.doubt.suspects[: 1 + MOST_OTHERS]}
    for name, reading in found.file.readings.items():
        inches = units == "in" and reading.quantity.unit == "mm"
        yield {
            "label": CHAIR_MEASURES[name].label,
            "typed": reading.quantity.typed,
            "inches": inches_text(reading.value) if inches else "",
            "half": f"± {reading.tolerance:g} {reading.quantity.unit}" if reading.tolerance else "",
            "again": name in suspects,
        }


def _proposed(found: Judgement, units: Units) -> Data | None:
    if found.proposed is None:
        return None
    moved = found.changes
    groups = [
        {"head": head, "lines": [gain_words(each) for each in moved if each.kind == kind] or [none]}
        for kind, head, none in HEADS
        if none or any(each.kind == kind for each in moved)
    ]
    names = found.file.name, found.proposed.name
    shapes = found.stands.setup.shape, found.proposed.setup.shape
    other = [each for each in moved if each.kind == "other"]
    shown = [each for each in other if each.then.figure.unit not in NOT_SHOWN]
    return {
        "name": found.proposed.name,
        "groups": groups,
        "over": picture(overlay_sheet(*shapes, names, OVER_PAGE), "over"),
        "rows": [_change(each, units) for each in shown],
    }


def _change(change: Change, units: Units) -> Data:
    now, then, figure = change.now, change.then, change.now.figure
    return {
        "label": figure.label,
        "now": _valued(now, units),
        "then": _valued(then, units),
        "change": change_words(figure, now.value, then.value),
        "words": [word for word in dict.fromkeys((now.word, then.word)) if word],
    }


def _valued(row: Row, units: Units) -> str:
    """Value, unit, half width and inches of one figure."""
    figure = row.figure
    inches = inches_words(figure, row.value) if units == "in" else ""
    parts = (_with_unit(row), spread_words(figure, row.spread), f"= {inches}" if inches else "")
    return " ".join(part for part in parts if part)


def _with_unit(row: Row) -> str:
    words = value_words(row.figure, row.value, *row.targets)
    return words if math.isnan(row.value) else f"{words} {row.figure.unit}".rstrip()
