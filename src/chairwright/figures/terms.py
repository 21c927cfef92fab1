"""Load limit, price and delivery time: what every part of the order brings."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import IndexArray, Rows
from chairwright.line.model import FixedPart, Line
from chairwright.mass_points import FloatArray


@dataclass(frozen=True)
class Term:
    """How one number of every option makes one figure.

    Parameters
    ----------
    key : str
        The number, in ``Option.numbers``.
    add : callable
        Joins two numbers.
    base : callable
        What the chair has before any option.
    figure : callable
        From the joined numbers to the figure.
    """

    key: str
    add: Callable[[FloatArray, FloatArray], FloatArray]
    base: Callable[[Line], float]
    figure: Callable[[Line, Occupant, FloatArray], FloatArray]


def _parts(line: Line, key: Callable[[FixedPart], float]) -> list[float]:
    return [key(part) for part in line.fixed_parts]


TERMS: dict[str, Term] = {
    "load_margin_kg": Term(
        "load_limit_kg",
        np.minimum,
        lambda line: min(_parts(line, lambda part: part.load_limit_kg), default=math.inf),
        lambda line, occupant, joined: joined - occupant.load_kg,
    ),
    "price": Term(
        "price",
        np.add,
        lambda line: line.base_price + sum(_parts(line, lambda part: part.price)),
        lambda line, occupant, joined: joined,
    ),
    "custom_surcharge": Term(
        "surcharge", np.add, lambda line: 0.0, lambda line, occupant, joined: joined
    ),
    "lead_days": Term(
        "extra_days",
        np.maximum,
        lambda line: max(_parts(line, lambda part: part.extra_days), default=0.0),
        lambda line, occupant, joined: line.build_days + joined,
    ),
}
"""Load: the least limit of all parts. Price: the sum. Days: the part that takes longest decides,
since parts are made side by side (common practice, no source)."""


SEPARATE = tuple(name for name, term in TERMS.items() if term.add is not np.add)
"""Figures that take the number of one option, or the base: the least or the greatest of all."""


def attainable(
    name: str, line: Line, occupant: Occupant, allowed: Mapping[str, IndexArray]
) -> FloatArray:
    """Every value that one of `SEPARATE` can have, and perhaps more.

    Parameters
    ----------
    name : str
    line : Line
    occupant : Occupant
    allowed : mapping of str to ndarray of int
        Option positions of each choice.

    Returns
    -------
    ndarray, shape (values,)
    """
    term = TERMS[name]
    low = high = np.array(term.base(line))
    numbers = [np.atleast_1d(low)]
    for choice, places in allowed.items():
        own = line.column(choice, term.key)[places]
        low, high = term.add(low, own.min()), term.add(high, own.max())
        numbers.append(own)
    every = np.unique(np.concatenate(numbers))
    return term.figure(line, occupant, every[(every >= low) & (every <= high)])


def joined(name: str, rows: Rows) -> FloatArray:
    """A term's number joined over the base and all choices made so far, shape (n,)."""
    term = TERMS[name]
    total = np.full(len(rows), term.base(rows.line))
    for choice in rows.index:
        if matters(rows.line, choice, term):
            total = term.add(total, rows.option(choice, term.key))
    return total


def matters(line: Line, choice: str, term: Term) -> bool:
    """Whether the options of a choice differ from the term's neutral number.

    Parameters
    ----------
    line : Line
    choice : str
    term : Term

    Returns
    -------
    bool
        False when joining the choice changes nothing.
    """
    neutral = math.inf if term.add is np.minimum else 0.0
    return bool((line.column(choice, term.key) != neutral).any())


def of_term(name: str) -> Callable[[Rows, Occupant], FloatArray]:
    """The figure of a term, for complete set-ups."""

    def formula(rows: Rows, occupant: Occupant) -> FloatArray:
        return TERMS[name].figure(rows.line, occupant, joined(name, rows))

    return formula
