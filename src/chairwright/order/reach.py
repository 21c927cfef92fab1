"""Which set-ups a chair in use can be set to without any part being bought."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import IndexArray
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.order.change_table import change_table

FREE = ("kept", "set")
"""Kinds of change for which nothing is bought."""

Sets = dict[str, IndexArray]
"""Option positions of each choice."""


class Reach:
    """From each option of each choice, the options that holes and settings reach.

    Parameters
    ----------
    line : Line
    """

    def __init__(self, line: Line) -> None:
        self._from: dict[str, NDArray[np.bool_]] = {}
        counts = {name: len(line.choices[name].options) for name in CHOICES}
        rows: dict[str, list[list[bool]]] = {name: [] for name in CHOICES}
        for at in range(max(counts.values())):
            index = {name: min(at, count - 1) for name, count in counts.items()}
            kinds = change_table(line, index).kinds
            for name, count in counts.items():
                if at < count:
                    rows[name].append([kind in FREE for kind in kinds[name]])
        for name, table in rows.items():
            self._from[name] = np.array(table, dtype=bool)

    def of(self, index: Mapping[str, int]) -> Sets:
        """Options that each choice of one set-up can be set to."""
        return {name: np.nonzero(self._from[name][at])[0] for name, at in index.items()}

    def union(self, name: str, options: Iterable[int]) -> IndexArray:
        """Options that any of some options of a choice can be set to."""
        return np.nonzero(self._from[name][list(options)].any(axis=0))[0]

    def fixed(self, name: str, allowed: IndexArray) -> bool:
        """Whether none of the allowed options of a choice can be set to another of them."""
        table = self._from[name][np.ix_(allowed, allowed)]
        return bool((table == np.eye(len(allowed), dtype=bool)).all())

    def inside(self, index: Mapping[str, int], other: Mapping[str, int]) -> bool:
        """Whether one set-up can be set to another one."""
        return all(bool(self._from[name][at, other[name]]) for name, at in index.items())
