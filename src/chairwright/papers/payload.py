"""What stands on a set-up sheet: plain text that a caller has already worked out and worded."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

Verdict = Literal[
    "holds",
    "holds, not as preferred",
    "holds on nominal values",
    "not as preferred",
    "fails",
    "not known",
]
MeasureMark = Literal["measured", "estimated"]
MustState = Literal["met", "accepted", "not met"]


@dataclass(frozen=True)
class Choice:
    """One settled choice.

    Parameters
    ----------
    label : str
        What is chosen, such as "Axle hole".
    code : str
        Code in the product line.
    description : str
        In words for the bench: which hole, counted from where.
    note : str
        A remark to print under the description; empty for none.
    """

    label: str
    code: str
    description: str
    note: str = ""


@dataclass(frozen=True)
class ChoiceGroup:
    """One step of the adjustment with its choices."""

    step: str
    choices: tuple[Choice, ...]


@dataclass(frozen=True)
class FigureRow:
    """One figure beside its target.

    Parameters
    ----------
    label, value, unit : str
        ``value`` is text, rounded already; "–" when there is none.
    spread : str
        Such as "± 1.9", or empty; for a length, the same in inches when those are wanted.
    target : str
        What must hold, such as "10 to 20"; empty when nothing must.
    verdict : Verdict or None
        None when there is no target.
    source : str
        Numbers or short names in the sheet's list of sources.
    prefer : str
        What is preferred, such as "12 to 15"; empty when nothing is.
    """

    label: str
    value: str
    unit: str = ""
    spread: str = ""
    target: str = ""
    verdict: Verdict | None = None
    source: str = ""
    prefer: str = ""


@dataclass(frozen=True)
class FigureGroup:
    """Figures that answer one question, with the cautions that belong beside them."""

    question: str
    rows: tuple[FigureRow, ...]
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True)
class Drawing:
    """One drawing: SVG text, what it shows in words, and its width at true scale [mm]."""

    svg: str
    alt: str
    width_mm: float


@dataclass(frozen=True)
class Drawings:
    """The drawings of the sheet; None leaves one out."""

    side: Drawing | None = None
    plan: Drawing | None = None
    polar: Drawing | None = None


@dataclass(frozen=True)
class MeasureRow:
    """One body measure: value, the same in another unit, measured or estimated, how sure.

    Parameters
    ----------
    label : str
    typed : str
        The value in another unit, for brackets; empty for none.
    value : str
    mark : {"measured", "estimated"}
    tolerance : str
        Empty for the usual one.
    """

    label: str
    typed: str
    value: str
    mark: MeasureMark
    tolerance: str = ""


@dataclass(frozen=True)
class MustRow:
    """One decision, or one must that needs a word, with its state and the reason."""

    label: str
    state: MustState
    reason: str = ""


@dataclass(frozen=True)
class PlaceRow:
    """One of the client's places: name, verdict, and what decides it or is to be minded.

    Parameters
    ----------
    name : str
    verdict : Verdict
    words : str
    """

    name: str
    verdict: Verdict
    words: str


@dataclass(frozen=True)
class Source:
    """A short citation and what it stands for."""

    short: str
    citation: str


@dataclass(frozen=True)
class SheetPayload:
    """Everything on one set-up sheet.

    Parameters
    ----------
    client_reference : str
        The client's number, never a name.
    setup_id, revision : str
        Which set-up, and which state of it.
    line_title, line_version : str
        Product line.
    propulsion : str
        In words.
    date : str
        As it should be printed; empty leaves a rule to write on.
    status : str
        Printed in a frame at the top, such as that the set-up misses a must; empty for none.
    units : {"mm", "in"}
        ``"in"`` when lengths are given in inches as well.
    choices : tuple of ChoiceGroup
        In the order of adjustment, see ``papers.order.in_order``.
    places : tuple of PlaceRow
        The client's places; empty when none are known.
    place_drawings : tuple of Drawing
        Of some of the places.
    place_words : tuple of str
        What the places changed.
    unsure : tuple of str
        Musts that hold on nominal values only, each with what to measure again.
    assumed : tuple of str
        Values without a neutral source.
    """

    client_reference: str
    setup_id: str
    line_title: str
    line_version: str
    propulsion: str
    choices: tuple[ChoiceGroup, ...]
    figures: tuple[FigureGroup, ...]
    drawings: Drawings = field(default_factory=Drawings)
    measures: tuple[MeasureRow, ...] = ()
    musts: tuple[MustRow, ...] = ()
    places: tuple[PlaceRow, ...] = ()
    place_drawings: tuple[Drawing, ...] = ()
    place_words: tuple[str, ...] = ()
    unsure: tuple[str, ...] = ()
    assumed: tuple[str, ...] = ()
    sources: tuple[Source, ...] = ()
    revision: str = "1"
    date: str = ""
    status: str = ""
    units: Literal["mm", "in"] = "mm"
