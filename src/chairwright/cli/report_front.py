"""A trade-off front as text, and the codes of a set-up in one line."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import islice

from chairwright.cli.table import text_table
from chairwright.figures.registry import FIGURES
from chairwright.fitting.allowed import plain
from chairwright.fitting.fit import Fit
from chairwright.fitting.to_order import MONEY
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.papers.words import measured_words, unit_words, value_words, wrapped
from chairwright.search.front import Front, FrontPoint, Objective

FRONT_ROWS = 12
FRONT_CODES = 9
FRONT_CHOICES = ("rear_wheel", "axle_hole", "caster", "fork", "caster_housing", "seat_width",
                 "arm_support")  # fmt: skip
"""What is shown of set-ups that are all alike."""


def front_text(fit: Fit, front: Front) -> str:
    """The trade-off front: a few of its set-ups, evenly along it.

    Parameters
    ----------
    fit : Fit
    front : Front

    Returns
    -------
    str
    """
    aims = [FIGURES[aim.figure] for aim in fit.objectives]
    words = " against ".join(
        f"{aim.label.lower()} ({WAYS[each.sense]})"
        for aim, each in zip(aims, fit.objectives, strict=True)
    )
    points = list(_evenly(front.points, FRONT_ROWS))
    choices = _telling(points)
    rows = [[*_values(point, fit.objectives), _codes(point, choices, fit.line)] for point in points]
    headers = [f"{aim.label} {unit_words(aim, fit.line)}".rstrip() for aim in aims]
    table = text_table([*headers, "codes"], rows, "r" * len(aims))
    shown = "all shown" if len(points) == len(front.points) else f"{len(points)} shown"
    head = f"Trade-off: {words}. Every must holds"
    if fit.extent == "needed" and not any(aim.figure in MONEY for aim in fit.objectives):
        head += " at the same surcharge for sizes made to order"
    head += f"; no other set-up beats any of these {len(front.points):,} ({shown})."
    foot = f"Codes: {', '.join(plain(name) for name in choices)}. --json has all choices."
    return f"{wrapped(head)}\n{table}\n{wrapped(foot)}"


WAYS = {"min": "least", "max": "most"}


def _telling(points: Sequence[FrontPoint]) -> tuple[str, ...]:
    """The choices in which the set-ups shown differ, the first few."""
    differ = (name for name in CHOICES if len({point.index[name] for point in points}) > 1)
    return tuple(islice(differ, FRONT_CODES)) or FRONT_CHOICES


def _evenly(points: Sequence[FrontPoint], most: int) -> Iterator[FrontPoint]:
    if len(points) <= most:
        yield from points
        return
    last = len(points) - 1
    yield from (points[round(step * last / (most - 1))] for step in range(most))


def _values(point: FrontPoint, objectives: Sequence[Objective]) -> list[str]:
    return [value_words(FIGURES[aim.figure], point.values[aim.figure]) for aim in objectives]


def _codes(point: FrontPoint, choices: Sequence[str], line: Line) -> str:
    return code_words(line, {name: point.index[name] for name in choices})


def code_words(line: Line, index: Mapping[str, int]) -> str:
    """Write the codes of a set-up in one line, in the order of the choices."""
    return " ".join(line.choices[name].options[place].code for name, place in index.items())


def order_words(line: Line, index: Mapping[str, int]) -> str:
    """Say which sizes of a set-up are made to order and what each costs; empty for none."""
    chosen = ((name, line.choices[name].options[at]) for name, at in index.items())
    return "; ".join(
        f"{plain(name)} {option.code}, + "
        f"{measured_words(FIGURES['price'], option.numbers['surcharge'], line)}, "
        f"{option.numbers['extra_days']:g} days longer"
        for name, option in chosen
        if option.kind == "made to order"
    )
