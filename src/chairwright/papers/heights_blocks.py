"""A seat-height chart cut into what is printed: one block for each rear wheel and caster."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from chairwright.fitting.heights_chart import FRONT, REAR, STANDS, HeightsChart
from chairwright.fitting.heights_fixed import HoleColumn, plate_code
from chairwright.line.model import Option


@dataclass(frozen=True)
class LeftOut:
    """Fork holes that have no height anywhere in a block, and why."""

    codes: str
    reasons: tuple[str, ...]


@dataclass(frozen=True)
class Block:
    """One rear wheel with one caster, the printed column's axle holes down, fork holes across.

    Parameters
    ----------
    wheel, caster : int
        Places along the chart's axes.
    forks : tuple of int
        Places of the fork holes that have a height at one axle hole at least.
    left_out : tuple of LeftOut
        The other fork holes.
    """

    wheel: int
    caster: int
    forks: tuple[int, ...]
    left_out: tuple[LeftOut, ...]


def blocks(chart: HeightsChart) -> Iterator[Block]:
    """Cut a chart into its blocks, wheels first.

    Parameters
    ----------
    chart : HeightsChart

    Yields
    ------
    Block
    """
    holes = printed_holes(chart)
    wheels, _, casters, forks = chart.why.shape
    for wheel in range(wheels):
        for caster in range(casters):
            why = chart.why[wheel, holes, caster, :]
            standing = (why == STANDS).any(axis=0)
            shown = tuple(int(fork) for fork in np.nonzero(standing)[0])
            rest = [fork for fork in range(forks) if not standing[fork]]
            yield Block(wheel, caster, shown, tuple(_left_out(chart, why, rest)))


def printed_holes(chart: HeightsChart) -> list[int]:
    """Places along the axle-hole axis of the printed column, highest hole first."""
    places = chart.options["axle_hole"]
    return [places.index(at) for at in chart.column.rows.values()]


def _left_out(
    chart: HeightsChart, why: NDArray[np.intp], forks: Iterable[int]
) -> Iterator[LeftOut]:
    groups: dict[tuple[str, ...], list[int]] = {}
    for fork in forks:
        reasons = tuple(chart.reasons[at] for at in dict.fromkeys(why[:, fork].tolist()))
        groups.setdefault(reasons, []).append(fork)
    for reasons, places in groups.items():
        yield LeftOut(_fork_codes(chart, places), reasons)


def _fork_codes(chart: HeightsChart, places: Sequence[int]) -> str:
    """Codes of fork holes, a whole fork by its own: ``FL, FS-1``."""
    options = [chart.option("fork", place) for place in range(chart.why.shape[3])]
    named: list[str] = []
    for part in dict.fromkeys(fork_part(options[place]) for place in places):
        own = [place for place, option in enumerate(options) if fork_part(option) == part]
        missing = [place for place in own if place in places]
        whole = len(missing) == len(own)
        named += [part] if whole else [options[place].code for place in missing]
    return ", ".join(named)


def fork_part(option: Option) -> str:
    """The fork that a fork hole belongs to: its order code."""
    return option.code.rpartition("-")[0] or option.code


def other_columns(chart: HeightsChart) -> list[HoleColumn]:
    """The columns of the same axle plate that are not printed, turned round or not."""
    plate = plate_code(chart.line, chart.column)
    return [
        column
        for column in chart.columns
        if plate_code(chart.line, column) == plate and column.label != chart.column.label
    ]


def column_spread_mm(chart: HeightsChart) -> float:
    """How much a height differs at most in another column of the plate, same hole number [mm].

    Parameters
    ----------
    chart : HeightsChart

    Returns
    -------
    float
        0 when there is no other column, or nothing stands in both.
    """
    places = chart.options["axle_hole"]
    worst = 0.0
    for column in other_columns(chart):
        shared = [number for number in chart.column.rows if number in column.rows]
        here = [places.index(chart.column.rows[number]) for number in shared]
        there = [places.index(column.rows[number]) for number in shared]
        for name in (REAR, FRONT):
            heights = chart.figures[name]
            apart = np.abs(heights[:, there] - heights[:, here])
            worst = max(worst, float(np.nanmax(apart, initial=0.0)))
    return worst


def lettered(reasons: Iterable[str]) -> dict[str, str]:
    """A letter for each reason of a dash: a, b, ... then a2, b2, ..."""
    found: dict[str, str] = {}
    for at, reason in enumerate(dict.fromkeys(reasons)):
        turn, place = divmod(at, 26)
        found[reason] = chr(ord("a") + place) + (str(turn + 1) if turn else "")
    return found
