"""Amounts that a set-up adds up choice by choice, with shares that several choices have in common.

A sum of a finished set-up: for each choice the amount of its option, and each shared amount once
when any of its choices has an option that makes it due.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import IndexArray
from chairwright.mass_points import FloatArray


@dataclass(frozen=True)
class Shared:
    """An amount that is due once, however many of its choices make it due.

    Parameters
    ----------
    amount : float
        0 or more.
    due : dict of str to ndarray of bool, shape (options,) each
        Which options of which choices make it due.
    """

    amount: float
    due: dict[str, NDArray[np.bool_]]


@dataclass(frozen=True)
class Sum:
    """What a set-up adds up to.

    Parameters
    ----------
    own : dict of str to ndarray, shape (options,) each
        Amount of every option; a choice that is absent adds nothing. 0 or more.
    shared : tuple of Shared
    """

    own: dict[str, FloatArray]
    shared: tuple[Shared, ...] = ()

    @property
    def choices(self) -> frozenset[str]:
        """Choices that can add something."""
        return frozenset(self.own).union(*(each.due for each in self.shared))

    def columns(self) -> Iterator[tuple[str, FloatArray]]:
        """Yield each choice with what tells its options apart, shape (options,)."""
        yield from self.own.items()
        for each in self.shared:
            for name, marks in each.due.items():
                yield name, marks.astype(float)

    def of(self, index: Mapping[str, int]) -> float:
        """Return the sum of one finished set-up."""
        one = {name: np.array([place]) for name, place in index.items()}
        return float(self.made(one)[0])

    def made(self, index: Mapping[str, IndexArray]) -> FloatArray:
        """What the choices made so far add up to, shape (n,)."""
        total = self.due(index) @ np.array([each.amount for each in self.shared])
        for name, amounts in self.own.items():
            if name in index and amounts.any():
                total += amounts[index[name]]
        return np.asarray(total, dtype=float)

    def due(self, index: Mapping[str, IndexArray]) -> NDArray[np.bool_]:
        """Which shared amounts the choices made so far make due, shape (n, shared)."""
        count = len(next(iter(index.values())))
        found = np.zeros((count, len(self.shared)), dtype=bool)
        for number, each in enumerate(self.shared):
            for name, marks in each.due.items():
                if name in index:
                    found[:, number] |= marks[index[name]]
        return found

    def added(
        self,
        made: Mapping[str, IndexArray],
        parent: IndexArray,
        choice: str,
        option: IndexArray,
    ) -> FloatArray:
        """What one more choice adds, shape (n,).

        Parameters
        ----------
        made : mapping of str to ndarray of int, shape (m,)
            Choices of the parents.
        parent, option : ndarray of int, shape (n,)
            Row of each child's parent; its option of the choice.
        choice : str
        """
        amounts = self.own.get(choice)
        found = np.zeros(len(option)) if amounts is None else amounts[option]
        due = self.due(made)
        for number, each in enumerate(self.shared):
            if choice in each.due:
                found = found + each.amount * (each.due[choice][option] & ~due[parent, number])
        return np.asarray(found)

    def still(self, made: frozenset[str], allowed: Mapping[str, IndexArray]) -> float:
        """Least that the choices still open add by themselves.

        Parameters
        ----------
        made : frozenset of str
        allowed : mapping of str to ndarray of int
            Options of every choice.
        """
        return sum(
            float(amounts[allowed[name]].min())
            for name, amounts in self.own.items() if name not in made
        )  # fmt: skip
