"""The weighing sheet: what was read under the wheels, what follows, and what to read again."""

from __future__ import annotations

import math
from collections.abc import Iterator

from chairwright.drawing.sheet import Page
from chairwright.drawing.weighing_plan import pads_sheet
from chairwright.drawing.weighing_view import level_sheet, load_words, raised_sheet
from chairwright.figures.registry import FIGURES
from chairwright.papers.cautions import BESIDE, STEADY
from chairwright.papers.pack.pictures import Picture, picture
from chairwright.papers.pack.words import Data
from chairwright.papers.scales_words import (
    NO_HEIGHT,
    SHARE,
    TILT,
    WHOLE,
    Onto,
    Row,
    Weighed,
    best_again,
    beyond,
    doubt_words,
    half_words,
    look_again,
    reading_words,
    shift_words,
)
from chairwright.papers.typeset import Paper, typeset
from chairwright.papers.words import Units, spread_words, value_words
from chairwright.scales.model import LOADS, Weighing
from chairwright.units import inches_text

TEMPLATE = "pack/weighing_sheet.typ"
SIGNATURES = ("Weighed by, name", "Signature", "Date")
LEVEL_PAGE, RAISED_PAGE, PADS_PAGE = Page(113.0, 156.0), Page(57.0, 76.0), Page(57.0, 74.0)
ALONE_PAGE = Page(96.0, 84.0)
MOST_DOUBTS = 3
"""Readings told for each result: those that count most."""

BEYOND = "outside the estimate"
APART = "Outside the estimate: the two lie farther apart than both can be off."
EXTRA = "Everything that the client has on the chair was on it."
WITHOUT = "What the client carries was taken off first."
READ = "Drawn from the readings alone."
DRAWN = (
    "Pads, wheels' contacts, plumb line and centre of mass are drawn from the readings; chair and "
    "person stand as the set-up has them."
)
ONTO = (
    "Worked out, not weighed: the body model says how the client sits there, the scales how far it "
    "is off. A weighing of the finished chair wins."
)
LOAD_LABELS = {
    "rear_left": "Rear left", "rear_right": "Rear right", "caster_left": "Caster left",
    "caster_right": "Caster right", "rear": "Rear wheels", "casters": "Casters", "total": "Whole",
}  # fmt: skip
SIZES = {
    "wheelbase_mm": "Wheelbase, level",
    "rear_height_mm": "Rear axle above what the wheel stands on",
    "caster_height_mm": "Caster axle above what the wheel stands on",
    "rear_track_mm": "Rear track",
    "caster_track_mm": "Caster track",
}


def weighing_sheet_pdf(
    weighed: Weighed, onto: Onto | None, paper: Paper = "a4", units: Units = "mm"
) -> bytes:
    """Typeset the sheet of one weighing.

    Parameters
    ----------
    weighed : Weighed
        Text is printed as it stands; nothing in it is read as markup.
    onto : Onto or None
        Another set-up with the occupant as weighed.
    paper : {"a4", "us-letter"}
    units : {"mm", "in"}
        ``in`` adds inches to lengths.

    Returns
    -------
    bytes
        A tagged PDF; the same weighing gives the same bytes.
    """
    return typeset(TEMPLATE, weighing_content(weighed, onto, units), paper)


def weighing_content(weighed: Weighed, onto: Onto | None, units: Units = "mm") -> Data:
    """Everything that the template prints.

    Parameters
    ----------
    weighed : Weighed
    onto : Onto or None
    units : {"mm", "in"}
    """
    file, found, setup = weighed.file, weighed.found, weighed.setup
    return {
        "reference": file.client,
        "order": "",
        "revision": "",
        "dated": file.dated,
        "method": file.method.capitalize(),
        "setup": _setup_name(weighed),
        "answer": _answer(weighed, units),
        "again": [] if setup is None else look_again(weighed, setup),
        "sizes": list(_sizes(weighed, units)),
        "load_heads": [head for head, _ in _columns(weighed)],
        "loads": list(_loads(weighed)),
        "carried": "" if setup is None else (EXTRA if file.loads_on else WITHOUT),
        "pictures": _pictures(weighed),
        "drawn": READ if setup is None else DRAWN,
        "whole": [_result(row, weighed, units) for row in WHOLE if row.name in found.values],
        "doubt": _doubt(weighed),
        "steady": [BESIDE[STEADY][-1], TILT] if "com_z_mm" in found.values else [TILT],
        "share": [_result(row, weighed, units) for row in SHARE if row.name in found.values]
        if "occupant_mass_kg" in found.values
        else [],
        "shift": shift_words(weighed),
        "best_again": best_again(found) if "com_z_mm" in found.values else NO_HEIGHT,
        "doubts": list(_doubts(weighed, units)),
        "onto": None if onto is None else _onto(onto, units),
        "weighed_by": SIGNATURES,
    }


def _doubt(weighed: Weighed) -> str:
    words = doubt_words(weighed.file.session).replace("+/-", "±")
    return words if weighed.setup is None else f"{words} {APART}"


def _setup_name(weighed: Weighed) -> str:
    if weighed.setup is None:
        return "none named"
    return ", ".join(filter(None, (weighed.setup_name, weighed.setup.line.title)))


def _valued(row: Row, weighed: Weighed, units: Units) -> str:
    value, half = weighed.found.values[row.name], weighed.found.half_width(row.name)
    return _worded(row, value, half, units)


def _worded(row: Row, value: float, half: float, units: Units) -> str:
    words = f"{value:.{row.digits}f} {row.unit} ± {half_words(half, row.digits)}"
    return f"{words} = {inches_text(value)}" if units == "in" and row.unit == "mm" else words


def _answer(weighed: Weighed, units: Units) -> list[str]:
    """The centre of mass in one sentence, and how the chair tips in another."""
    values, rows = weighed.found.values, {row.name: row for row in WHOLE}
    told = [f"{_valued(rows['com_x_mm'], weighed, units)} ahead of the rear axle"]
    if "com_y_mm" in values:
        y, half = values["com_y_mm"], weighed.found.half_width("com_y_mm")
        side = "left" if y >= 0.0 else "right"
        told.append(f"{_worded(rows['com_y_mm'], abs(y), half, units)} to the {side}")
    if "com_z_mm" in values:
        told.append(f"{_valued(rows['com_z_mm'], weighed, units)} above the floor")
    answer = [f"The centre of mass of chair and client lies {', '.join(told)}."]
    if "tip_rear_locked_deg" in values:
        angles = ("tip_rear_locked_deg", "tip_rear_free_deg", "tip_forward_deg")
        back, free, forward = (_valued(rows[name], weighed, units) for name in angles)
        answer.append(
            f"It tips back at {back} with the wheels locked, at {free} with the wheels free, and "
            f"forward at {forward} with the casters trailing."
        )
    return answer


def _sizes(weighed: Weighed, units: Units) -> Iterator[list[str]]:
    session = weighed.file.session
    pairs = [(label, getattr(session, name)) for name, label in SIZES.items()]
    pairs.append(("Block under the casters", session.occupied.block_mm))
    if session.empty is not None:
        pairs.append(("Block under the casters, empty chair", session.empty.block_mm))
    if session.seat is not None and session.seat.by_tape:
        pairs.append(("Seat corner ahead of the rear axle", session.seat.x_mm))
        pairs.append(("Seat corner above the floor", session.seat.z_mm))
    half = f"± {session.tape_mm:g}"
    for label, value in pairs:
        if not math.isnan(value):
            yield [label, f"{value:g} mm", half, inches_text(value) if units == "in" else ""]
    if session.seat is not None and session.seat.by_tape:
        yield ["Seat rail to the level", f"{session.seat.angle_deg:g} deg",
               f"± {session.level_deg:g}", ""]  # fmt: skip


def _columns(weighed: Weighed) -> list[tuple[str, dict[str, float]]]:
    """Heads and loads of every weighing that was done."""
    session = weighed.file.session
    named: list[tuple[str, Weighing | None]] = [
        ("With client", session.occupied), ("Empty", session.empty),
    ]  # fmt: skip
    return [
        (f"{name}, {stance}", loads)
        for name, weighing in named
        if weighing is not None
        for stance, loads in (("level", weighing.level), ("raised", weighing.raised))
        if loads
    ]


def _loads(weighed: Weighed) -> Iterator[list[str]]:
    columns, step = _columns(weighed), weighed.file.session.resolution_kg
    for name in LOADS:
        if any(name in loads for _, loads in columns):
            yield [
                LOAD_LABELS[name],
                *(load_words(loads[name], step) if name in loads else "" for _, loads in columns),
            ]


def _pictures(weighed: Weighed) -> list[Picture]:
    """The level chair, and beside it the raised one and the pads from above."""
    session, found, setup = weighed.file.session, weighed.found, weighed.setup
    shape = None if setup is None else setup.shape
    page = ALONE_PAGE if shape is None else LEVEL_PAGE
    drawn = [picture(level_sheet(session, found, shape, page), "level")]
    if session.occupied.raised:
        drawn.append(picture(raised_sheet(session, found, RAISED_PAGE), "raised"))
    if "com_y_mm" in found.values:
        drawn.append(picture(pads_sheet(session, found, PADS_PAGE), "pads"))
    return drawn


def _result(row: Row, weighed: Weighed, units: Units) -> Data:
    found, setup = weighed.found, weighed.setup
    value = found.values[row.name]
    inches = inches_text(value) if units == "in" and row.unit == "mm" else ""
    shown: Data = {
        "label": row.label,
        "value": f"{value:.{row.digits}f}",
        "unit": row.unit,
        "half": half_words(found.half_width(row.name), row.digits),
        "inches": inches,
        "estimate": "",
        "off": "",
        "word": "",
    }
    if setup is None or row.name not in setup.figures:
        return shown
    estimate, spread = setup.figures[row.name], setup.spreads.get(row.name, 0.0)
    wide = f" ± {spread:.{row.digits}f}" if spread else ""
    return shown | {
        "estimate": f"{estimate:.{row.digits}f}{wide}",
        "off": f"{value - estimate:+.{row.digits}f}",
        "word": BEYOND if beyond(weighed, setup, row.name) else "",
    }


def _doubts(weighed: Weighed, units: Units) -> Iterator[list[str]]:
    """For height and place: the readings that count most for how far they can be off."""
    found, rows = weighed.found, {row.name: row for row in WHOLE}
    for name in ("com_z_mm", "com_x_mm", "com_y_mm"):
        if name not in found.values:
            continue
        for at, (reading, share) in enumerate(list(found.shares(name).items())[:MOST_DOUBTS]):
            if round(100.0 * share) > 0:
                label = "" if at else f"{rows[name].label}, {_valued(rows[name], weighed, units)}"
                words = reading_words(reading)
                yield [label, words[:1].upper() + words[1:], f"{share:.0%}"]


def _onto(onto: Onto, units: Units) -> Data:
    rows = []
    for name, value in onto.there.figures.items():
        if math.isnan(value):
            continue
        figure, was = FIGURES[name], onto.setup.figures[name]
        half, spread = onto.there.half_widths.get(name, 0.0), onto.setup.spreads.get(name, 0.0)
        inches = inches_text(value) if units == "in" and figure.unit == "mm" else ""
        rows.append([
            figure.label,
            value_words(figure, value),
            figure.unit,
            spread_words(figure, half),
            inches,
            f"{value_words(figure, was)} {spread_words(figure, spread)}".rstrip(),
        ])  # fmt: skip
    return {"name": onto.name, "rows": rows, "words": ONTO}
