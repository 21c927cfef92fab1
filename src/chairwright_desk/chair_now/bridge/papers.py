"""The papers of a weighing and of a measured chair."""

from __future__ import annotations

from dataclasses import replace

from chairwright.papers.measured_words import Judgement, Proposed
from chairwright.papers.pack.measured_sheet import measured_sheet_pdf
from chairwright.papers.pack.weighing_sheet import weighing_sheet_pdf
from chairwright_desk.bench.bridge import State, Units
from chairwright_desk.chair_now.bridge.measured import Judged
from chairwright_desk.chair_now.bridge.weighing import Pads, weighed_of


def weighing_sheet(pads: Pads, setup_name: str, units: Units) -> bytes:
    """The weighing sheet as a PDF.

    Parameters
    ----------
    pads : Pads
    setup_name : str
        Of the set-up on the pads.
    units : {"mm", "in"}

    Raises
    ------
    InputError
        As `weighed_of`.
    """
    weighed = replace(weighed_of(pads), setup_name=setup_name)
    return weighing_sheet_pdf(weighed, None, "a4", units)


def measured_sheet(
    found: Judged, dated: str, units: Units, beside: tuple[str, State] | None = None
) -> bytes:
    """The sheet of a measured chair as a PDF.

    Parameters
    ----------
    found : Judged
    dated : str
        Day of the measuring.
    units : {"mm", "in"}
    beside : tuple of str and State, or None
        Name of a kept set-up and its state; one that does not stand is left out.
    """
    proposed = None
    if beside is not None and beside[1].setup is not None:
        proposed = Proposed(beside[0], beside[1].setup)
    told = Judgement(found.file, found.bench.person, found.doubt, found.found, proposed, dated)
    return measured_sheet_pdf(told, "a4", units)
