"""An order as text: what is refused or accepted, parts, settings, dimensions, load."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chairwright.cli.report_order_money import lead_text, price_text
from chairwright.cli.report_places import CAUTION, place_head
from chairwright.cli.table import text_table
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.order.accepted import Unmet
from chairwright.order.order import Order
from chairwright.order.order_dimensions import Dimension
from chairwright.order.order_load import LoadRating
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.order_words import (
    SEAT_CORNER,
    TOLERANCE,
    dimension_value,
    load_words,
    narrow_words,
    place_words,
    side_words,
    unmet_words,
)
from chairwright.papers.words import Units, wrapped
from chairwright.units import inches_text

NO_DIAGNOSIS = (
    "The reason goes to the maker word for word: write no diagnosis there. A reason that begins "
    'with "private:" stays in the order file and goes on no paper.'
)
TO_ACCEPT = (
    "At these places the chair fails. The order may be sent all the same: change the set-up or the "
    "place, or let whoever answers for it accept each by name with a reason:"
)
PLACES_AT_LENGTH = "'chairwright places' tells what each asks and what would help."
ACCEPTED_THERE = "Fails at a place and is accepted by name:"


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
        *place_sections(order),
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
        yield from (_listed(unmet_words(each, line)) for each in order.open)
        yield wrapped(
            "Change the set-up, or let whoever answers for it accept each by name with a reason:"
        )
        names = dict.fromkeys(each.figure.name for each in order.open)
        yield from (f'  --accept {name} --by NAME --reason "TEXT"' for name in names)
        yield wrapped(NO_DIAGNOSIS)
    elif not order.unmet:
        yield "May be sent: every must holds."
    else:
        yield wrapped("May be sent: every must holds, apart from what is accepted by name.")
    yield from _accepted_lines(order.unmet, line)
    yield from (_listed(narrow_words(item, line)) for item in order.narrow)


def _listed(words: str) -> str:
    return wrapped(f"- {words}", "  ")


def _accepted_lines(unmet: Sequence[Unmet], line: Line) -> Iterator[str]:
    for each in unmet:
        if each.accepted is not None:
            yield _listed(unmet_words(each, line))
            told = f"accepted by {each.accepted.by} in revision {each.accepted.revision}"
            yield wrapped(f"  {told}: {each.accepted.reason}", "  ")


def place_sections(order: Order) -> list[str]:
    """What the client's places say, and what of it is to be accepted or mended; or nothing."""
    if not order.places:
        return []
    line = order.setup.line
    lines = ["The client's places", *(f"- {place_head(each)}" for each in order.places)]
    lines += [wrapped(PLACES_AT_LENGTH), wrapped(CAUTION)]
    lacking = [each for each in order.unmet_at_places if each.accepted is None]
    if lacking:
        lines.append(wrapped(TO_ACCEPT))
        lines += [_listed(unmet_words(each, line)) for each in lacking]
        names = dict.fromkeys(each.figure.name for each in lacking)
        lines += [f'  --accept {name} --by NAME --reason "TEXT"' for name in names]
        lines.append(wrapped(NO_DIAGNOSIS))
    found = list(_accepted_lines(order.unmet_at_places, line))
    lines += [ACCEPTED_THERE, *found] if found else []
    return ["\n".join(lines)]


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
        [str(at), each.label, each.code, str(each.quantity), side_words(each.side), each.words,
         "" if each.mark == "standard" else each.mark]
        for at, each in enumerate(order.parts, 1)
    ]  # fmt: skip
    headers = ["", "part", "code", "pcs", "side", "what", "mark"]
    lines = ["Parts", text_table(headers, rows, "rllr")]
    if order.left_off:
        labels = ", ".join(CHOICES[name].label.lower() for name in order.left_off)
        lines.append(f"Not fitted: {labels}.")
    return "\n".join(lines)


def settings_text(order: Order) -> str:
    """Every hole and setting, with its place from the seat corner."""
    rows = [[each.label, each.code, each.words, place_words(each)] for each in order.settings]
    return "\n".join(
        [
            "Settings",
            text_table(["what", "code", "setting", "from the seat corner"], rows),
            wrapped(SEAT_CORNER),
        ]
    )


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
    return f"Dimensions\n{text_table(headers, rows, right)}\n{TOLERANCE}"


def _dimension(each: Dimension, units: Units) -> list[str]:
    inches = [inches_text(each.value) if each.unit == "mm" else ""] if units == "in" else []
    return [
        f"  {each.label}", dimension_value(each), each.unit, *inches, f"{each.tolerance:g}",
        each.from_, each.to,
    ]  # fmt: skip


def load_text(load: LoadRating) -> str:
    """The rating against occupant and everything carried."""
    return wrapped(f"Load: {load_words(load)}")


def remark_sections(order: Order) -> list[str]:
    """What else is to be said; nothing when there is nothing."""
    lines = [wrapped(f"- {each}", "  ") for each in order.remarks]
    return ["\n".join(["Remarks", *lines])] if lines else []
