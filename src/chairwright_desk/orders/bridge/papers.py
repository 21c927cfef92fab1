"""The papers of one revision, and sheets to adjust a chair: bytes of PDF."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Literal

from chairwright.cli.papers_table import ADJUST, PAPERS, Pack
from chairwright.fitting.described import Described
from chairwright.order.adjust import Adjustment, adjust
from chairwright.order.payer_result import Assessment
from chairwright.papers.pack.adjust_sheet import adjust_sheet_pdf
from chairwright_desk.bench.bridge import Units
from chairwright_desk.orders.bridge.worked import Worked

Size = Literal["a4", "us-letter"]
WORDS: dict[str, str] = {
    "quotation": "Quotation",
    "order": "Order to the maker",
    "build-sheet": "Build sheet",
    "letter": "Letter of justification, draft",
    "handover": "Handover",
    "label": "Label",
    "set-up-sheet": "Set-up sheet",
    ADJUST: "Adjust sheet from the present chair",
}
FOR_THE_WORKSHOP = frozenset({"order", "build-sheet", "label", ADJUST})
"""Papers without anything clinical; all others are for those who may see the client's own."""


@dataclass(frozen=True)
class Asked:
    """How papers are wanted.

    Parameters
    ----------
    size : {"a4", "us-letter"}
    units : {"mm", "in"}
    places : bool
        Whether the client's places stand on them.
    """

    size: Size
    units: Units
    places: bool


@dataclass(frozen=True)
class Beside:
    """What papers tell besides the revision.

    Parameters
    ----------
    first : Described or None
        The chair as it is.
    first_name : str
    payer : Assessment or None
    serial, delivered : str
    """

    first: Described | None = None
    first_name: str = ""
    payer: Assessment | None = None
    serial: str = ""
    delivered: str = ""


def paper(name: str, worked: Worked, asked: Asked, beside: Beside) -> bytes:
    """Typeset one paper; the same input gives the same bytes.

    Parameters
    ----------
    name : str
        Of `WORDS`.
    worked : Worked
        One that is not refused.
    asked : Asked
    beside : Beside

    Raises
    ------
    InputError
        When a letter of the text is not in the font, or the chair as it is is of another line.
    """
    pack = Pack(
        order=worked.order,
        person=worked.person,
        paper=asked.size,
        units=asked.units,
        first=beside.first,
        first_name=beside.first_name,
        surroundings=worked.surroundings if asked.places else None,
        payer=beside.payer,
        serial=beside.serial,
        delivered=beside.delivered,
    )
    return PAPERS[name](pack)


def adjust_pdf(worked: Worked, last: Described, last_name: str, asked: Asked) -> bytes:
    """Typeset the sheet from an order's set-up to another one.

    Parameters
    ----------
    worked : Worked
        The chair as it was delivered.
    last : Described
        As it shall be.
    last_name : str
    asked : Asked
    """
    order = worked.order
    found = adjust(order.setup, last, worked.person.occupant)
    return adjust_sheet_pdf(found, order.heading.name, last_name, asked.size, asked.units)


@dataclass(frozen=True)
class AdjustShown:
    """What an adjustment changes, step by step, for the page."""

    steps: tuple[tuple[str, tuple[str, ...], str], ...]


def adjust_shown(worked: Worked, last: Described) -> AdjustShown:
    """Say what changes from an order's set-up to another one.

    Parameters
    ----------
    worked : Worked
    last : Described
    """
    found = adjust(worked.order.setup, last, worked.person.occupant)
    return AdjustShown(tuple(_steps(found)))


def _steps(found: Adjustment) -> list[tuple[str, tuple[str, ...], str]]:
    rows = []
    for step in found.steps:
        moves = tuple(f"{each.label}: {each.before} to {each.after}" for each in step.moves)
        state = "on its wheels" if step.state.stands else "chair off its wheels"
        rows.append((f"{step.number}. {step.group}", (*moves, *step.notes), state))
    return rows


Progress = Callable[[int, int, str], None]


def whole_pack(
    names: tuple[str, ...],
    worked: Worked,
    asked: Asked,
    beside: Beside,
    progress: Progress | None = None,
) -> Mapping[str, bytes]:
    """Typeset several papers.

    Parameters
    ----------
    names : tuple of str
    worked : Worked
    asked : Asked
    beside : Beside
    progress : callable, optional
        Told before each paper.
    """
    made = {}
    for at, name in enumerate(names):
        if progress is not None:
            progress(at, len(names), WORDS[name])
        made[name] = paper(name, worked, asked, beside)
    return made
