"""The set-up that would be best if no place asked for anything, judged by the places as well."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from chairwright.chair.occupant import Occupant
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Judged, judge, one_row
from chairwright.line.model import Line
from chairwright.targets.target import Target


@dataclass(frozen=True)
class Alone:
    """Such a set-up.

    Parameters
    ----------
    codes : dict of str to str
        The chosen code of every choice.
    figures : dict of str to float
        Every fixed figure, and those of the targets.
    judged : tuple of Judged
        In the order of the targets, on nominal values.
    """

    codes: dict[str, str]
    figures: dict[str, float]
    judged: tuple[Judged, ...]

    @property
    def broken(self) -> tuple[Judged, ...]:
        """The musts that it misses."""
        return tuple(item for item in self.judged if item.verdict.breaks)


def judged_alone(
    line: Line, occupant: Occupant, index: Mapping[str, int], targets: Sequence[Target]
) -> Alone:
    """Judge a set-up on nominal values.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    index : mapping of str to int
        Option position of every choice.
    targets : sequence of Target

    Returns
    -------
    Alone
    """
    rows, _ = realise(line, occupant, one_row(index))
    names = tuple(dict.fromkeys([*FIGURES, *(target.figure for target in targets)]))
    figures = {name: float(each[0]) for name, each in figures_of(rows, occupant, names).items()}
    codes = {name: line.choices[name].options[place].code for name, place in index.items()}
    return Alone(codes, figures, judge(figures, {}, targets))
