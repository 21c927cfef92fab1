"""Changes, options and runs in the words that reports and lesson sheets share."""

from __future__ import annotations

import math
from collections.abc import Sequence

from chairwright.figures.registry import Figure
from chairwright.fitting.moved import change
from chairwright.fitting.runs import EVERY, FORE_AFT, NAMED, PARTS, SETTINGS, UP_DOWN
from chairwright.fitting.sweep import GEAR, Sweep, SweptRun
from chairwright.line.model import FixedPart, Option
from chairwright.papers.lesson_kinds import kind_of
from chairwright.papers.order import STEPS
from chairwright.papers.words import NO_VALUE, value_words

SQUARE_AGAIN = (
    "What tilts the frame tilts the caster stems: square the housings again (after any move of the "
    "axle: NSW, read in the source)"
)

BODY = frozenset({*STEPS["Seat"], *STEPS["Back"]}) - GEAR
"""Choices that move the body, so that what came before them is looked at again."""

RUN_WORDS = {
    FORE_AFT: "fore and aft at the same height",
    UP_DOWN: "up and down in the same place",
    SETTINGS: "the settings of the same part",
    PARTS: "the other parts, each in its setting nearest to the present one",
    EVERY: "every option",
    NAMED: "the options named",
}


def extra_words(extras: Sequence[FixedPart]) -> str:
    """Accessories with codes and names, as a lesson names them."""
    return "; ".join(f"{each.code}, {each.name}" for each in extras)


def change_words(figure: Figure, first: float, second: float) -> str:
    """Write how far a figure moved: ``+1.3``, ``-27``, ``0``; a dash when it cannot be said.

    Parameters
    ----------
    figure : Figure
    first, second : float
        In the figure's unit.
    """
    moved = change(figure, first, second)
    if math.isnan(moved):
        return NO_VALUE
    text = value_words(figure, abs(moved))
    if moved == 0.0:
        return "0"
    return f"{'+' if moved > 0 else '-'}{text}"


def option_words(option: Option) -> str:
    """An option's code and what it is: ``E8, axle plate column E, row 8``."""
    return f"{option.code}, {option.name}" if option.name else option.code


def run_words(sweep: Sweep, run: SweptRun) -> str:
    """What a run is, from where to where: ``every option, Q30 to Q100, thinnest to thickest``."""
    codes = [each.option.code for each in run.tried]
    words = RUN_WORDS[run.run.name]
    if len(codes) == 1:
        return f"{words}, {codes[0]}"
    if not run.run.along:
        return f"{words}: {', '.join(codes)}"
    low, high = kind_of(sweep.choice, run.run.along).ends
    return f"{words}, {codes[0]} to {codes[-1]}, {low} to {high}"


def afterwards(choice: str) -> str:
    """What is adjusted after a change of one choice, in the order of adjustment; may be empty."""
    steps = list(STEPS)
    here = next((at for at, step in enumerate(steps) if choice in STEPS[step]), len(steps))
    later = steps[here + 1 :] if choice not in BODY else [*steps[:here], *steps[here + 1 :]]
    if not later:
        return ""
    listed = "; ".join(step[0].lower() + step[1:] for step in later)
    words = f"Then see to, in this order: {listed} (order: common practice, no source)."
    return f"{SQUARE_AGAIN}. {words}" if choice in GEAR else words
