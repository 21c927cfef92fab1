"""Figures of unfinished set-ups as low and high ends."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.chair.steps import STEPS
from chairwright.figures.band import Band, known
from chairwright.figures.mass import MassBox, mass_box
from chairwright.figures.registry import FIGURES
from chairwright.search.early import EARLY_WEIGHED
from chairwright.search.outline_bands import outline_bands
from chairwright.search.prepared import Prepared
from chairwright.targets.target import Target

ORDER = {name: place for place, step in enumerate(STEPS) for name in step.choices}


class Bands:
    """Evaluates the wanted figures, each as soon as its choices allow.

    Parameters
    ----------
    prepared : Prepared
    names : iterable of str
        Figures wanted.
    asked : iterable of Target
        All that is wanted of their figures; other figures are worked out themselves.
    """

    def __init__(
        self, prepared: Prepared, names: Iterable[str], asked: Iterable[Target] = ()
    ) -> None:
        self._outlines = outline_bands(prepared, asked)
        self._occupant = prepared.space.occupant
        self._open_masses = prepared.open_masses
        self._early = prepared.early
        figures = [FIGURES[name] for name in dict.fromkeys(names)]
        self._exact = [figure for figure in figures if figure.exact is not None]
        self._weighed = [figure for figure in figures if figure.weighed is not None]

    def of(self, rows: Rows, level: int) -> dict[str, Band]:
        """Ends of every wanted figure that can be bounded, shape (n,) each.

        Parameters
        ----------
        rows : Rows
        level : int
            Place of the last step taken in ``chair.steps.STEPS``.

        Returns
        -------
        dict of str to Band
        """
        self._early.begin()
        found: dict[str, Band] = {}
        for figure in self._exact:
            if ORDER[figure.after] <= level and figure.name in self._outlines:
                found[figure.name] = self._outlines[figure.name].of(rows, level)
            elif ORDER[figure.after] <= level:
                found[figure.name] = known(self._settled(rows, figure.name))
            else:
                early = self._early.of(figure.name)
                if early is not None:
                    found[figure.name] = early(rows)
        if self._weighed:
            found.update(self._of_masses(rows, level))
        return found

    def _settled(self, rows: Rows, name: str) -> np.ndarray:
        """Exact figure, computed once and carried with the rows."""
        key = f"figure {name}"
        if key not in rows.columns:
            formula = FIGURES[name].exact
            assert formula is not None  # noqa: S101  (_exact holds only such figures)
            rows[key] = formula(rows, self._occupant)
        return rows[key]

    def _of_masses(self, rows: Rows, level: int) -> dict[str, Band]:
        box = mass_box(rows, self._open_masses.after(rows, level))
        found: dict[str, Band] = {}
        for figure in self._weighed:
            band = self._weighed_band(rows, box, figure.name, level)
            if band is not None:
                found[figure.name] = band
        return found

    def _weighed_band(self, rows: Rows, box: MassBox, name: str, level: int) -> Band | None:
        figure = FIGURES[name]
        if ORDER[figure.after] <= level and figure.weighed is not None:
            return figure.weighed(rows, box)
        if name in EARLY_WEIGHED:
            return EARLY_WEIGHED[name](rows, box)
        return None
