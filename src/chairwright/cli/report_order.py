"""An order as text: what is refused or accepted, parts, settings, dimensions, load."""

from __future__ import annotations

import math
from collections.abc import Iterator

from chairwright.cli.report_order_money import lead_text, price_text
from chairwright.cli.table import text_table
from chairwright.fitting.described import Judged
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.order.accepted import Unmet
from chairwright.order.order import Order
from chairwright.order.order_dimensions import TOLERANCE_SOURCE, Dimension
from chairwright.order.order_load import LoadRating
from chairwright.order.parts import SettingRow
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.words import (
    Units,
    amount_words,
    measured_words,
    target_words,
    wrapped,
)
from chairwright.units import inches_text


def order_report(order: Order, units: Units) -> str:
    """The whole order.

    Parameters
    ----------
    order : Order
    units : {"mm", "in"}
        ``"in"`` adds inches to lengths.

    Returns
    -------
    str
    """
    sections = [
        head_text(order),
        "\n".join(verdict_lines(order)),
        *change_sections(order),
        parts_text(order),
        settings_text(order),
        *mark_sections(order),
        dimension_text(order, units),
        load_text(order.load),
        price_text(order.quote),
        lead_text(order.lead),
        *remark_sections(order),
        wrapped(PURPOSE),
    ]
    return "\n\n".join(sections)


def head_text(order: Order) -> str:
    """Say what is ordered, for whom, in which revision."""
    line, heading = order.setup.line, order.heading
    number = f"Order {heading.number}" if heading.number else "Order"
    dated = f", dated {heading.dated}" if heading.dated else ", no date"
    return "\n".join(
        [
            f"{number} for {order.client_reference}, revision {order.revision}{dated}",
            f"Set-up {heading.name}: {line.title}, version {line.version}, {line.maker}",
        ]
    )


def verdict_lines(order: Order) -> Iterator[str]:
    """Say whether it may be sent; every must that is missed, and who accepted it."""
    line = order.setup.line
    if order.refused:
        yield wrapped(
            "REFUSED. Do not send this order: a must is not met and nobody has accepted that by "
            "name."
        )
        yield from (unmet_words(each, line) for each in order.open)
        yield wrapped(
            "Change the set-up, or let whoever answers for it accept each by name with a reason:"
        )
        names = dict.fromkeys(each.figure.name for each in order.open)
        yield from (f'  --accept {name} --by NAME --reason "TEXT"' for name in names)
    elif not order.unmet:
        yield "May be sent: every must holds."
    else:
        yield wrapped("May be sent: every must holds, apart from what is accepted by name.")
    for each in order.unmet:
        if each.accepted is not None:
            yield unmet_words(each, line)
            told = f"accepted by {each.accepted.by} in revision {each.accepted.revision}"
            yield wrapped(f"  {told}: {each.accepted.reason}", "  ")
    yield from (_narrow_words(item, line) for item in order.narrow)


def unmet_words(each: Unmet, line: Line) -> str:
    """A must that is missed: what is asked, what is reached, by how much, and why it is asked.

    Parameters
    ----------
    each : Unmet
    line : Line
    """
    item, figure = each.judged, each.figure
    asked = target_words(item.target, line)
    if math.isnan(item.value):
        reached = "this set-up has none"
    else:
        reached = measured_words(figure, item.value, line)
        reached += f", {amount_words(figure, abs(item.verdict.margin), line)} off"
    source = item.target.source
    return wrapped(f"- {asked}: {reached}. {item.target.reason} ({source})", "  ")


def _narrow_words(item: Judged, line: Line) -> str:
    asked = target_words(item.target, line)
    return wrapped(f"- {asked}: holds on nominal values only; check it at delivery.", "  ")


def change_sections(order: Order) -> list[str]:
    """What differs from the earlier revision; nothing for a first one."""
    if not order.earlier:
        return []
    if not order.changes:
        return [f"Nothing differs from revision {order.earlier}."]
    rows = [[each.label, each.before, each.after] for each in order.changes]
    head = f"Revision {order.revision} against revision {order.earlier}"
    return [f"{head}\n{text_table(['what', 'before', 'now'], rows)}"]


def parts_text(order: Order) -> str:
    """The parts list, and what is not fitted."""
    rows = [
        [str(at), each.label, each.code, str(each.quantity), _side(each.side), each.words,
         "" if each.mark == "standard" else each.mark]
        for at, each in enumerate(order.parts, 1)
    ]  # fmt: skip
    headers = ["", "part", "code", "pcs", "side", "what", "mark"]
    lines = ["Parts", text_table(headers, rows, "rllr")]
    if order.left_off:
        labels = ", ".join(CHOICES[name].label.lower() for name in order.left_off)
        lines.append(f"Not fitted: {labels}.")
    return "\n".join(lines)


def _side(side: str) -> str:
    return "" if side == "one" else side


def settings_text(order: Order) -> str:
    """Every hole and setting, with its place from the seat corner."""
    rows = [[each.label, each.code, each.words, place_words(each)] for each in order.settings]
    return "\n".join(
        [
            "Settings",
            text_table(["what", "code", "setting", "from the seat corner"], rows),
            "Seat corner: front of the back post at the top of the seat rail. Both sides alike,",
            "foot supports apart.",
        ]
    )


def place_words(each: SettingRow) -> str:
    """Where a hole is: ``55 mm ahead, 196 mm below``; empty when it has no place of its own."""
    words = []
    if each.x_mm is not None:
        words.append(f"{abs(each.x_mm):g} mm {'ahead' if each.x_mm >= 0 else 'behind'}")
    if each.z_mm is not None:
        words.append(f"{abs(each.z_mm):g} mm {'above' if each.z_mm >= 0 else 'below'}")
    return ", ".join(words)


def mark_sections(order: Order) -> list[str]:
    """What is not in the standard range, with reasons; nothing when all is standard."""
    if not order.marks:
        return ["Everything is in the standard range."]
    lines = ["Not in the standard range"]
    for each in order.marks:
        days = f", {each.days} days" if each.days else ""
        lines.append(f"- {each.label}: {each.code}, {each.words} ({each.kind}{days})")
        lines += [wrapped(f"  {reason}", "    ") for reason in each.reasons]
    return ["\n".join(lines)]


def dimension_text(order: Order, units: Units) -> str:
    """Every dimension with its reference points.

    Parameters
    ----------
    order : Order
    units : {"mm", "in"}
    """
    headers, right = ["dimension", "value", "unit", "+/-", "from", "to"], "lrlr"
    if units == "in":
        headers.insert(3, "inches")
        right = "lrlrr"
    rows = []
    for title, origin in (("Ordered sizes", "ordered"), ("What follows from them", "follows")):
        rows.append([title, *[""] * (len(headers) - 1)])
        rows += [_dimension(each, units) for each in order.dimensions if each.origin == origin]
    words = f"+/- is what the delivered chair may be off ({TOLERANCE_SOURCE})."
    return f"Dimensions\n{text_table(headers, rows, right)}\n{words}"


def _dimension(each: Dimension, units: Units) -> list[str]:
    value = f"{each.value:.{each.digits}f}"
    value = value.lstrip("-") if float(value) == 0.0 else value
    inches = [inches_text(each.value) if each.unit == "mm" else ""] if units == "in" else []
    return [
        f"  {each.label}", value, each.unit, *inches, f"{each.tolerance:g}", each.from_, each.to,
    ]  # fmt: skip


def load_text(load: LoadRating) -> str:
    """The rating against occupant and everything carried."""
    carried = ", ".join(f"{each.name} {each.mass_kg:.1f} kg" for each in load.loads)
    if not load.limits:
        return wrapped(f"Load: {carried}; {load.load_kg:.1f} kg in all. No part states a limit.")
    least = ", ".join(f"{each.label.lower()} {each.code}" for each in load.least)
    verdict = (
        f"{load.margin_kg:.1f} kg to spare"
        if load.bears
        else f"OVERLOADED by {-load.margin_kg:.1f} kg: the maker's limit is a limit, whatever else "
        "is accepted"
    )
    return wrapped(
        f"Load: {carried}; {load.load_kg:.1f} kg in all. Rated load {load.rated_kg:g} kg "
        f"({least}): {verdict}."
    )


def remark_sections(order: Order) -> list[str]:
    """What else is to be said; nothing when there is nothing."""
    lines = [wrapped(f"- {each}", "  ") for each in order.remarks]
    return ["\n".join(["Remarks", *lines])] if lines else []
