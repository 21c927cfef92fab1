"""The factory's build sheet: step by step, hole by hole, known by a reference only.

No name, no diagnosis, no mass of a person and no reason for a measure: only what is built.
"""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.drawing.hole_marks import Codes
from chairwright.line.choices import CHOICES, NONE
from chairwright.order.adjust_follow import BOTH_SIDES, DEVICE_TEST, LOCK_TEST, NEW_LOCKS, SQUARE
from chairwright.order.handover import Measured
from chairwright.order.handover_checks import measured
from chairwright.order.order import Order
from chairwright.order.parts import PartRow, SettingRow
from chairwright.order.steps import CASTERS, DEVICE, EXTRAS, LAST, LOCKS, WHEEL, WORKS
from chairwright.papers.order import step_words
from chairwright.papers.order_words import SEAT_CORNER, TOLERANCE, place_words, side_words
from chairwright.papers.pack.pictures import pictures
from chairwright.papers.pack.tightening import tightening, torque_words
from chairwright.papers.pack.words import Data, heading_data
from chairwright.papers.typeset import Paper, typeset
from chairwright.papers.words import COMMON, Units
from chairwright.units import inches_text

TEMPLATE = "pack/build_sheet.typ"
FIXED = "fixed_parts"
MEASURED = (
    "seat_to_floor_rear_mm", "seat_to_floor_front_mm", "seat_angle_deg", "caster_stem_angle_deg",
    "footplate_clearance_mm", "wheelbase_mm", "seat_width.width_mm", "seat_depth.depth_mm",
    "back_angle.angle_deg", "back_height.height_mm", "arm_support.pad_height_mm",
    "hanger.angle_deg", "leg_length.length_mm", "camber.angle_deg", "axle_hole.x_mm",
    "axle_hole.z_mm", "anti_tip.z_mm", "overall_width_mm", "folded_width_mm", "chair_mass_kg",
)  # fmt: skip
"""What is measured on the finished chair with nobody in it, in this order."""
MEASURE_WORDS = (
    "Empty chair on a level floor, tyres at full pressure, casters trailing. The chair leaves only "
    "when every reading lies within its limits."
)
LAST_WORDS = (
    "Every bolt is tight, every button has sprung out, no tool is left on the chair.",
    "Both casters swing round clear of footplates, frame and rear tyres.",
    "Wheels spin freely, brakes hold, all four wheels touch the level floor.",
)
SIGNATURES = (("Built by, name", "Signature", "Date"), ("Checked by, name", "Signature", "Date"))


def build_sheet_pdf(order: Order, paper: Paper = "a4", units: Units = "mm") -> bytes:
    """Typeset the build sheet.

    Parameters
    ----------
    order : Order
        Text is printed as it stands; nothing in it is read as markup.
    paper : {"a4", "us-letter"}
    units : {"mm", "in"}
        ``in`` adds inches to lengths.

    Returns
    -------
    bytes
        A tagged PDF; the same order gives the same bytes.

    Raises
    ------
    ValueError
        When the paper is neither of the two.
    InputError
        When the font does not have a letter of the text.
    """
    return typeset(TEMPLATE, build_content(order, units), paper)


def build_content(order: Order, units: Units = "mm") -> Data:
    """Everything that the template prints.

    Parameters
    ----------
    order : Order
    units : {"mm", "in"}
    """
    known = heading_data(order)
    kept = ("reference", "order", "number", "revision", "dated", "line", "maker", "status")
    limits = order.load.rated_kg if order.load.limits else None
    return {
        **{key: known[key] for key in kept},
        "rated": "" if limits is None else f"{limits:g} kg",
        "steps": list(_steps(order, units)),
        "left_off": ", ".join(CHOICES[name].label.lower() for name in order.left_off),
        "seat_corner": SEAT_CORNER,
        "torque_words": torque_words(order.setup),
        "measure_words": MEASURE_WORDS,
        "measured": list(_measured(order, units)),
        "tolerance": TOLERANCE,
        "last": LAST_WORDS,
        "last_source": COMMON,
        "signatures": SIGNATURES,
    }


def _steps(order: Order, units: Units) -> Iterator[Data]:
    groups = dict.fromkeys(work.group for work in WORKS)
    codes = Codes(order.setup.line, order.setup.codes, {})
    number = 0
    for group in groups:
        choices = [name for work in WORKS if work.group == group for name in work.choices]
        if group == LAST:
            choices = [*choices, FIXED]
        parts = [_part(each) for name in choices for each in order.parts if each.choice == name]
        settings = [
            _setting(each, units)
            for name in choices for each in order.settings if each.choice == name
        ]  # fmt: skip
        if not parts and not settings:
            continue
        number += 1
        inside = [name for name in choices if name not in (EXTRAS, FIXED)]
        yield {
            "number": str(number),
            "title": step_words(group),
            "parts": parts,
            "settings": settings,
            "fasteners": tightening(order.setup, inside),
            "pictures": pictures(codes, inside, f"step{number}", units),
            "notes": list(_notes(group, order)),
        }


def _part(each: PartRow) -> Data:
    words = each.words if each.mark == "standard" else f"{each.words} ({each.mark})"
    return {
        "label": each.label,
        "code": each.code,
        "pieces": str(each.quantity),
        "side": side_words(each.side),
        "words": words,
    }


def _setting(each: SettingRow, units: Units) -> Data:
    places = place_words(each)
    if units == "in" and places:
        inches = [inches_text(abs(value)) for value in (each.x_mm, each.z_mm) if value is not None]
        places += f" ({', '.join(inches)})"
    return {"label": each.label, "code": each.code, "words": each.words, "place": places}


def _notes(group: str, order: Order) -> Iterator[str]:
    if group in (WHEEL, CASTERS):
        yield BOTH_SIDES
    if group == CASTERS:
        yield SQUARE
    if group == LOCKS:
        yield from (NEW_LOCKS, LOCK_TEST)
    if group == DEVICE and order.setup.codes["anti_tip"] != NONE:
        yield DEVICE_TEST


def _measured(order: Order, units: Units) -> Iterator[Data]:
    found = {each.dimension.name: each for each in measured(order)}
    for name in MEASURED:
        if name in found:
            yield _reading(found[name], units)


def _reading(allowed: Measured, units: Units) -> Data:
    each, low, high = allowed.dimension, allowed.low, allowed.high
    inches = ""
    if units == "in" and each.unit == "mm":
        inches = f"{inches_text(low, 16)} to {inches_text(high, 16)}".replace("-", "−")
    return {
        "label": each.label,
        "way": f"{each.from_} to {each.to}",
        "value": f"{_number(each.value, each.digits)} {each.unit}",
        "limits": f"{_number(low, each.digits)} to {_number(high, each.digits)}",
        "inches": inches,
        "unit": each.unit,
    }


def _number(value: float, digits: int) -> str:
    text = f"{value:.{digits}f}"
    return text.lstrip("-") if float(text) == 0.0 else text.replace("-", "−")
