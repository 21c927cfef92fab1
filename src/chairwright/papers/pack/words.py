"""What the quotation and the order say alike: heading, load, accepted musts, marks, delivery."""

from __future__ import annotations

from typing import Any

from chairwright.order.lead import LeadStep, LeadTime
from chairwright.order.order import Order
from chairwright.order.parts_marks import Mark
from chairwright.papers.order_words import load_words, missed_words, narrow_words

Data = dict[str, Any]
NO_NUMBER = "without number"
REFUSED = "Not to be sent: a must is not met and nobody has accepted that by name."


def heading_data(order: Order) -> Data:
    """What stands at the top of every paper of an order, and on each page.

    Parameters
    ----------
    order : Order

    Returns
    -------
    dict
        ``order`` is for the page's head and never empty; ``number`` may be.
    """
    line, heading = order.setup.line, order.heading
    return {
        "reference": order.client_reference,
        "order": heading.number or NO_NUMBER,
        "number": heading.number,
        "revision": str(order.revision),
        "dated": heading.dated,
        "set_up": heading.name,
        "line": f"{line.title}, version {line.version}",
        "maker": line.maker,
        "status": REFUSED if order.refused else "",
        "remarks": list(order.remarks),
    }


def unmet_data(order: Order) -> list[Data]:
    """Musts that are missed, each with why it is asked and who accepted it."""
    line = order.setup.line
    return [
        {
            "missed": missed_words(each, line),
            "why": f"{each.judged.target.reason} ({each.judged.target.source})",
            "by": "" if each.accepted is None else each.accepted.by,
            "reason": "" if each.accepted is None else each.accepted.reason_told,
            "revision": "" if each.accepted is None else str(each.accepted.revision),
        }
        for each in order.unmet
    ]


def narrow_data(order: Order) -> list[str]:
    """Musts that hold on nominal values only."""
    return [narrow_words(item, order.setup.line) for item in order.narrow]


def marks_data(marks: tuple[Mark, ...]) -> list[Data]:
    """What is made to order or on request, with its reasons."""
    return [
        {
            "label": each.label,
            "code": each.code,
            "words": each.words,
            "kind": each.kind,
            "days": f"{each.days} days" if each.days else "",
            "reasons": list(each.reasons),
        }
        for each in marks
    ]


def load_data(order: Order) -> Data:
    """Load rating in words, and whether the chair bears it."""
    words = load_words(order.load)
    return {"words": words[:1].upper() + words[1:], "bears": order.load.bears}


def lead_data(lead: LeadTime) -> Data:
    """Days from the order to the door, their longest path, and what takes days beside it."""
    on_path = {(step.label, step.code) for step in lead.path}
    beside = [step for step in lead.parts if (step.label, step.code) not in on_path]
    return {
        "days": str(lead.days),
        "path": [_step(step) for step in lead.path],
        "beside": [
            f"{step.label} {step.code}: {step.days} days, {step.spare} to spare" for step in beside
        ],
    }


def _step(step: LeadStep) -> Data:
    known = step.kind in ("made to order", "on request")
    return {
        "label": step.label,
        "code": step.code,
        "words": f"{step.words} ({step.kind})" if known else step.words,
        "days": str(step.days),
        "done": str(step.ends),
    }
