"""Figures of unfinished set-ups as low and high ends."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.chair.steps import STEPS
from chairwright.figures.band import Band, known
from chairwright.figures.mass import MassBox, OpenMass, mass_box
from chairwright.figures.registry import FIGURES
from chairwright.search.early import EARLY_WEIGHED, OF_CORNERS
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
    hard : iterable of Target
        Musts that `quick` is about.
    """

    def __init__(
        self,
        prepared: Prepared,
        names: Iterable[str],
        asked: Iterable[Target] = (),
        hard: Iterable[Target] = (),
    ) -> None:
        self._outlines = outline_bands(prepared, asked)
        self._occupant = prepared.space.occupant
        self._early = prepared.early
        figures = [FIGURES[name] for name in dict.fromkeys(names)]
        self._exact = [figure for figure in figures if figure.exact is not None]
        self._weighed = [figure for figure in figures if figure.weighed is not None]
        self._open_masses = prepared.open_masses if self._weighed else None
        slow = {*self._outlines, *OF_CORNERS}
        self._quick = [
            name
            for name in dict.fromkeys(must.figure for must in hard)
            if FIGURES[name].exact is not None and name not in slow
        ]

    def quick(self, rows: Rows, level: int) -> dict[str, Band]:
        """Ends of the hard musts' figures that take little work, shape (n,) each.

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
        bands = ((name, self._band(rows, name, level)) for name in self._quick)
        return {name: band for name, band in bands if band is not None}

    def of(self, rows: Rows, level: int, quick: dict[str, Band] | None = None) -> dict[str, Band]:
        """Ends of every wanted figure that can be bounded, shape (n,) each.

        Parameters
        ----------
        rows : Rows
        level : int
            Place of the last step taken in ``chair.steps.STEPS``.
        quick : dict of str to Band, or None
            What `quick` told of these rows; None when nobody asked it.

        Returns
        -------
        dict of str to Band
        """
        self._early.begin()
        found = dict(quick or {})
        for figure in self._exact:
            if figure.name not in found:
                band = self._band(rows, figure.name, level)
                if band is not None:
                    found[figure.name] = band
        if self._open_masses is not None:
            found.update(self._of_masses(rows, self._open_masses.after(rows, level), level))
        return found

    def _band(self, rows: Rows, name: str, level: int) -> Band | None:
        if ORDER[FIGURES[name].after] > level:
            early = self._early.of(name)
            return None if early is None else early(rows)
        if name in self._outlines:
            return self._outlines[name].of(rows, level)
        return known(self._settled(rows, name))

    def _settled(self, rows: Rows, name: str) -> np.ndarray:
        """Exact figure, computed once and carried with the rows."""
        key = f"figure {name}"
        if key not in rows.columns:
            formula = FIGURES[name].exact
            assert formula is not None  # noqa: S101  (_exact holds only such figures)
            rows[key] = formula(rows, self._occupant)
        return rows[key]

    def _of_masses(self, rows: Rows, still: OpenMass | None, level: int) -> dict[str, Band]:
        box = mass_box(rows, still)
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
