"""Ends of load limit, price and delivery time while choices are open."""

from __future__ import annotations

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.figures.band import Band, known
from chairwright.figures.terms import TERMS, joined, matters
from chairwright.search.space import Space


class EarlyTerm:
    """Low and high end of one figure of `figures.terms`.

    Parameters
    ----------
    space : Space
    name : str
    """

    def __init__(self, space: Space, name: str) -> None:
        term = TERMS[name]
        self._space, self._name = space, name
        self._ends = {
            choice: (float(values.min()), float(values.max()))
            for choice, options in space.allowed.items()
            if matters(space.line, choice, term)
            for values in [space.line.column(choice, term.key)[options]]
        }

    def __call__(self, rows: Rows) -> Band:
        """Ends for unfinished set-ups, shape (n,) each; one array when nothing is open.

        The figure is carried with the rows from then on.
        """
        term, key = TERMS[self._name], f"figure {self._name}"
        if key in rows.columns:
            return known(rows[key])
        low = high = joined(self._name, rows)
        still = [ends for choice, ends in self._ends.items() if choice not in rows.index]
        for least, most in still:
            low = term.add(low, np.full(len(rows), least))
            high = term.add(high, np.full(len(rows), most))
        line, occupant = self._space.line, self._space.occupant
        if not still:
            rows[key] = term.figure(line, occupant, low)
            return known(rows[key])
        return Band(term.figure(line, occupant, low), term.figure(line, occupant, high))
