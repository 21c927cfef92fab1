"""The technician's sheet from one set-up to another: only what changes, and what follows."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from chairwright.drawing.hole_marks import Codes
from chairwright.line.choices import NONE
from chairwright.line.model import Line
from chairwright.order.adjust import Adjustment, Fetch, Step
from chairwright.order.adjust_readings import Reading
from chairwright.order.order import Order
from chairwright.order.order_dimensions import FOLLOWS, TOLERANCE_SOURCE
from chairwright.order.steps import EXTRAS
from chairwright.order.steps_words import Move
from chairwright.papers.adjust_words import (
    NOTHING_DIFFERS,
    before_words,
    far_words,
    state_words,
    title_words,
)
from chairwright.papers.order_words import side_words
from chairwright.papers.pack.pictures import SHOWS, pictures
from chairwright.papers.pack.tightening import tightening, torque_words
from chairwright.papers.pack.words import Data, heading_data
from chairwright.papers.typeset import Paper, typeset
from chairwright.papers.words import Units
from chairwright.units import inches_text

TEMPLATE = "pack/adjust_sheet.typ"
ONE_SIDE = frozenset({"plate-left"})
"""Drawings that only repeat another one in a mirror."""
MIRROR = "The left side is the same in a mirror: the same hole, counted by its letter and number."
READ_WORDS = (
    "Read on a level floor, casters trailing, cushion loaded; what is read in the frame, wherever "
    f"it stands. +/- is what a reading may be off ({TOLERANCE_SOURCE})."
)
SIGNATURES = ("Adjusted by, name", "Signature", "Date")
CHECKED = ("Tip check with a spotter done by, name", "Signature", "Date")


def adjust_sheet_pdf(
    found: Adjustment,
    first_name: str,
    last_name: str,
    paper: Paper = "a4",
    units: Units = "mm",
    order: Order | None = None,
) -> bytes:
    """Typeset the sheet that leads from one set-up to another.

    Parameters
    ----------
    found : Adjustment
        Text is printed as it stands; nothing in it is read as markup.
    first_name, last_name : str
        What the set-ups are called.
    paper : {"a4", "us-letter"}
    units : {"mm", "in"}
        ``in`` adds inches to lengths.
    order : Order or None
        Of the set-up that it shall be: each page names client, order and revision.

    Returns
    -------
    bytes
        A tagged PDF; the same adjustment gives the same bytes.

    Raises
    ------
    ValueError
        When the paper is neither of the two.
    InputError
        When the font does not have a letter of the text.
    """
    return typeset(TEMPLATE, adjust_content(found, first_name, last_name, units, order), paper)


def adjust_content(
    found: Adjustment,
    first_name: str,
    last_name: str,
    units: Units = "mm",
    order: Order | None = None,
) -> Data:
    """Everything that the template prints.

    Parameters
    ----------
    found : Adjustment
    first_name, last_name : str
    units : {"mm", "in"}
    order : Order or None
    """
    line = found.last.line
    known = {} if order is None else heading_data(order)
    named = ("reference", "order", "number", "revision", "dated")
    return {
        **{key: known.get(key, "") for key in named},
        "first": first_name,
        "last": last_name,
        "line": f"{line.title}, version {line.version}",
        "maker": line.maker,
        "nothing": "" if found.steps else NOTHING_DIFFERS,
        "start": "" if found.start.stands else "; ".join(found.start.reasons),
        "before": list(before_words(found)) if found.steps else [],
        "parts_on": [_fetched(each) for each in found.parts_on],
        "parts_off": [_fetched(each) for each in found.parts_off],
        "torque_words": torque_words(found.last),
        "steps": list(_steps(found, units)),
        "read_words": READ_WORDS,
        "adjusted_by": SIGNATURES,
        "checked_by": CHECKED,
    }


def _fetched(each: Fetch) -> Data:
    return {
        "pieces": str(each.quantity),
        "code": each.code,
        "label": each.label,
        "words": each.words,
        "side": side_words(each.side),
    }


def _steps(found: Adjustment, units: Units) -> Iterator[Data]:
    line, before = found.last.line, found.start
    for step in found.steps:
        changed = [each.choice for each in step.moves if each.choice != EXTRAS]
        fitted = [each.choice for each in step.moves if each.after != NONE]
        ways = _codes(line, before.index), _codes(line, step.state.index)
        yield {
            "number": str(step.number),
            "title": title_words(step),
            "undo": [*([step.lift] if step.lift else []), *step.undo],
            "moves": [_move(each) for each in step.moves],
            "notes": list(step.notes),
            "fasteners": tightening(found.last, fitted),
            **_drawn(line, ways, changed, step.number, units),
            "readings": [_reading(each, units) for each in step.readings],
            "stands": step.state.stands,
            "state": state_words(step, before.reasons),
            "reasons": _new_reasons(step, before.reasons),
        }
        before = step.state


def _codes(line: Line, index: Mapping[str, int]) -> dict[str, str]:
    return {name: line.choices[name].options[at].code for name, at in index.items()}


def _move(each: Move) -> Data:
    return {
        "label": each.label,
        "before": each.before,
        "after": each.after,
        "far": far_words(each),
        "words_before": each.words_before,
        "words_after": each.words_after,
    }


def _drawn(
    line: Line,
    ways: tuple[dict[str, str], dict[str, str]],
    changed: list[str],
    number: int,
    units: Units,
) -> Data:
    """The holes as they are and as they shall be, side by side."""
    first, last = ways
    was = pictures(Codes(line, first, {}, as_is=True), changed, f"was{number}", units, ONE_SIDE)
    now = pictures(Codes(line, last, first), changed, f"now{number}", units, ONE_SIDE)
    mirror = bool(SHOWS["plate-left"] & set(changed))
    return {
        "pairs": [{"was": one, "now": two} for one, two in zip(was, now, strict=True)],
        "mirror": MIRROR if mirror else "",
    }


def _reading(each: Reading, units: Units) -> Data:
    tolerance = FOLLOWS[each.name][2] if each.name in FOLLOWS else None
    inches = inches_text(each.after) if units == "in" and each.unit == "mm" else ""
    return {
        "label": each.label,
        "was": "" if each.before is None else _number(each.before, each.digits),
        "value": f"{_number(each.after, each.digits)} {each.unit}".rstrip(),
        "moved": each.moved,
        "inches": inches.replace("-", "−"),
        "tolerance": "" if tolerance is None else f"{tolerance:g}",
    }


def _number(value: float, digits: int) -> str:
    text = f"{value:.{digits}f}"
    return text.lstrip("-") if float(text) == 0.0 else text.replace("-", "−")


def _new_reasons(step: Step, before: tuple[str, ...]) -> list[str]:
    return [] if step.state.reasons == before else list(step.state.reasons)
