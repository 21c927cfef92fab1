"""The way from orders to the engineering: nothing else of the app imports it."""

from __future__ import annotations

from chairwright.errors import InputError, Problem
from chairwright.files.order import LONGEST_REASON, PRIVATE
from chairwright.fitting.described import Described
from chairwright.order.accepted import Acceptance
from chairwright.order.handover_days import day_of
from chairwright.order.handover_upkeep import review
from chairwright.order.payer_result import NO_PROMISE, Assessment
from chairwright.order.price_list_read import read_price_list
from chairwright.reading import FileText
from chairwright_desk.orders.bridge.exports import EXPORTS
from chairwright_desk.orders.bridge.papers import (
    FOR_THE_WORKSHOP,
    WORDS,
    AdjustShown,
    Asked,
    Beside,
    Size,
    adjust_pdf,
    adjust_shown,
    paper,
    whole_pack,
)
from chairwright_desk.orders.bridge.payer import (
    FactAsked,
    PayerShown,
    SchemeShown,
    assessed,
    payer_shown,
    scheme_names,
    schemes_shown,
)
from chairwright_desk.orders.bridge.shown import Missed, Shown, shown
from chairwright_desk.orders.bridge.worked import (
    Worked,
    Written,
    described,
    line_text,
    work_out,
)

__all__ = [
    "EXPORTS",
    "FOR_THE_WORKSHOP",
    "LONGEST_REASON",
    "NO_PROMISE",
    "PRIVATE",
    "WORDS",
    "Acceptance",
    "AdjustShown",
    "Asked",
    "Assessment",
    "Beside",
    "Described",
    "FactAsked",
    "FileText",
    "InputError",
    "Missed",
    "PayerShown",
    "Problem",
    "SchemeShown",
    "Shown",
    "Size",
    "Worked",
    "Written",
    "adjust_pdf",
    "adjust_shown",
    "assessed",
    "described",
    "first_review",
    "line_text",
    "paper",
    "payer_shown",
    "read_prices",
    "scheme_names",
    "schemes_shown",
    "shown",
    "whole_pack",
    "work_out",
]


def read_prices(name: str, text: str) -> str:
    """Read a price list; return its title.

    Parameters
    ----------
    name, text : str

    Raises
    ------
    InputError
        With every mistake at its line.
    """
    return read_price_list(FileText(name, text)).title


def first_review(delivered: str) -> tuple[str, str]:
    """First day on which a chair delivered on a day is reviewed, and the rule as a sentence.

    Parameters
    ----------
    delivered : str
        As ``2026-11-25``.
    """
    found = review(day_of(delivered))
    source, _, certainty = found.source.removesuffix(")").rpartition(" (")
    return found.earliest, f"{found.words}, says {source}; that rule was {certainty}."
