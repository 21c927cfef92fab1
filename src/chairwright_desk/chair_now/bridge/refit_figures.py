"""Figures beside the trade-off of a re-fit: which there are to choose from, and their values."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass

import numpy as np

from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.registry import FIGURES, GROUPS, Figure
from chairwright.order.refit import Refit
from chairwright_desk.bench.bridge import Units
from chairwright_desk.bench.bridge.words import range_shown, shown, unit_of

Values = Mapping[str, np.ndarray]


@dataclass(frozen=True)
class Pick:
    """A figure that can be seen beside the trade-off."""

    name: str
    label: str
    chosen: bool


@dataclass(frozen=True)
class Column:
    """A chosen figure: its head, what is asked of it, and a value for each row.

    Parameters
    ----------
    label, unit, asked : str
    now : str
        Of the chair as it is; empty when that cannot be judged.
    values : tuple of str
        In the order of the rows.
    """

    label: str
    unit: str
    asked: str
    now: str
    values: tuple[str, ...]

    @property
    def head(self) -> str:
        """The label with its unit."""
        return f"{self.label} [{self.unit}]" if self.unit else self.label


@dataclass(frozen=True)
class Beside:
    """What can be chosen, by question, and the columns that are."""

    picks: tuple[tuple[str, tuple[Pick, ...]], ...]
    columns: tuple[Column, ...]

    @property
    def judged_now(self) -> bool:
        """Whether the chair as it is has one of the chosen figures."""
        return any(column.now for column in self.columns)


def figures_beside(found: Refit, names: Collection[str], units: Units) -> Beside:
    """The figures of every row of a trade-off.

    Parameters
    ----------
    found : Refit
        With at least one row.
    names : collection of str
        Figures that are chosen; what is not on offer is left out.
    units : {"mm", "in"}

    Returns
    -------
    Beside
        On offer is what is asked of the chair, and what differs between the rows.
    """
    values = _values(found)
    asked = {target.figure for target in found.person.targets}
    offered = [each for name, each in FIGURES.items() if _told(values[name], name in asked)]
    groups = ((question, tuple(Pick(each.name, each.label, each.name in names)
                               for each in offered if each.group == question))
              for question in GROUPS)  # fmt: skip
    return Beside(
        picks=tuple(each for each in groups if each[1]),
        columns=tuple(
            _column(found, each, values[each.name], units)
            for each in offered if each.name in names
        ),
    )  # fmt: skip


def _values(found: Refit) -> Values:
    """Every figure of every row, shape (n,) each."""
    line = found.points[0].change.last.line
    index = {
        name: np.array([point.index[name] for point in found.points])
        for name in found.points[0].index
    }
    rows, _ = realise(line, found.person.occupant, index)
    return figures_of(rows, found.person.occupant, tuple(FIGURES))


def _told(values: np.ndarray, asked: bool) -> bool:
    known = values[~np.isnan(values)]
    return bool(len(known)) and (asked or len(known) < len(values) or bool(np.ptp(known) > 0.0))


def _column(found: Refit, figure: Figure, values: np.ndarray, units: Units) -> Column:
    line = found.points[0].change.last.line
    asked = (
        f"{'must be' if target.must else 'preferred'} {range_shown(target, figure, units)}"
        for target in found.person.targets if target.figure == figure.name
    )  # fmt: skip
    return Column(
        label=figure.label,
        unit=unit_of(figure, line, units),
        asked="; ".join(dict.fromkeys(asked)),
        now="" if found.now is None else shown(figure, found.now.figures[figure.name], units),
        values=tuple(shown(figure, float(value), units) for value in values),
    )
