"""Why a figure moved: a sentence that fits the way it went, and who has published that sign."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from chairwright.figures.registry import Figure
from chairwright.fitting.moved import direction, printed
from chairwright.fitting.sweep import SweptRun
from chairwright.papers.lesson_reasons_figures import FIGURE_REASONS
from chairwright.papers.lesson_reasons_gear import GEAR
from chairwright.papers.lesson_reasons_seat import SEAT
from chairwright.tables.load import load_table

REASONS = {**GEAR, **SEAT}


@dataclass(frozen=True)
class Sign:
    """A published sign.

    Parameters
    ----------
    choice, along, figure : str
        What rises, and which figure goes with it.
    sign : {-1, 0, 1}
        0 when the work names a link without a sign.
    finding, source, certainty : str
    """

    choice: str
    along: str
    figure: str
    sign: int
    finding: str
    source: str
    certainty: str

    @property
    def citation(self) -> str:
        """The source with how certain it is."""
        return f"{self.source} ({self.certainty})"


@dataclass(frozen=True)
class Why:
    """Why one figure moved along one run.

    Parameters
    ----------
    figure : Figure
    text : str
    sources : tuple of str
        Citations of the published sign; otherwise of the formula.
    """

    figure: Figure
    text: str
    sources: tuple[str, ...]


def published_signs() -> tuple[Sign, ...]:
    """Every sign of the shipped table, in its order."""
    return tuple(
        Sign(
            row["choice"],
            row["along"],
            row["figure"],
            int(row["sign"]),
            row["finding"],
            row["source"],
            row["certainty"],
        )
        for row in load_table("experiments", "published_signs")
    )


def why(choice: str, run: SweptRun, figure: Figure) -> Why:
    """Explain how a figure moved along a run.

    Parameters
    ----------
    choice : str
    run : SweptRun
    figure : Figure

    Returns
    -------
    Why
        The sentence written for this choice and figure when the calculated figure goes the way
        that it explains, otherwise what the figure hangs on.
    """
    values = [setup.figures[figure.name] for setup in run.setups()]
    along = run.run.along
    text = reason(choice, along, figure, values) or FIGURE_REASONS[figure.name]
    return Why(figure, text, sources(choice, along, figure, values) or (figure.source,))


def reason(choice: str, along: str, figure: Figure, values: Sequence[float]) -> str:
    """The sentence written for a choice and a figure; empty when none fits the way it went.

    Parameters
    ----------
    choice, along : str
        What was changed, and the number that rises.
    figure : Figure
    values : sequence of float
        The figure in the order of the run.
    """
    sign, text = REASONS.get((choice, along), {}).get(figure.name, (None, ""))
    if sign is None:
        return text
    if sign == 0:
        return text if reach(figure, values) <= figure.scale else ""
    return text if direction(figure, values) == sign else ""


def sources(choice: str, along: str, figure: Figure, values: Sequence[float]) -> tuple[str, ...]:
    """Citations of the published signs that agree with the way a figure went.

    Parameters
    ----------
    choice, along : str
        What was changed, and the number that rises.
    figure : Figure
    values : sequence of float
        The figure in the order of the run.

    Returns
    -------
    tuple of str
        Those that name a link without a sign as well.
    """
    wanted = (0, direction(figure, values))
    return tuple(
        sign.citation
        for sign in published_signs()
        if (sign.choice, sign.along, sign.figure) == (choice, along, figure.name)
        and sign.sign in wanted
    )


def reach(figure: Figure, values: Sequence[float]) -> float:
    """Distance from the least to the greatest printed value; 0 when there is none."""
    shown = [printed(figure, value) for value in values if not math.isnan(value)]
    return max(shown) - min(shown) if shown else 0.0
