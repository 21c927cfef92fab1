"""Random set-ups for the laws, and the same set-ups with something changed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from chairwright.chair.buildable import buildable
from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.evaluate import figures_of, realise
from chairwright.line.model import Line
from tests.oracles.draws import random_setups
from tests.oracles.lines import everyday
from tests.oracles.people import adult, anybody, seated

Array = NDArray[np.float64]
Index = dict[str, NDArray[np.intp]]
HOW_MANY = 40
ROUNDING = 1e-9


@dataclass(frozen=True)
class Made:
    """Some set-ups with all that follows from them."""

    rows: Rows
    occupant: Occupant
    figures: dict[str, Array]
    stands: NDArray[np.bool_]

    def __getitem__(self, figure: str) -> Array:
        """One figure, shape (n,)."""
        return self.figures[figure]

    def changed(
        self,
        index: Mapping[str, NDArray[np.intp]] | None = None,
        *,
        line: Line | None = None,
        occupant: Occupant | None = None,
    ) -> Made:
        """The same set-ups with some choices, the line or the client changed."""
        new = {**self.rows.index, **(index or {})}
        return make(line or self.rows.line, occupant or self.occupant, new)

    def option(self, choice: str, code: str) -> dict[str, NDArray[np.intp]]:
        """Give one option for all the set-ups."""
        at = self.rows.line.choices[choice].codes[code]
        return {choice: np.full(len(self.rows), at)}


def make(line: Line, occupant: Occupant, index: Index) -> Made:
    """Realise set-ups and evaluate every figure."""
    rows, _ = realise(line, occupant, index)
    figures = {name: np.array(v) for name, v in figures_of(rows, occupant).items()}
    return Made(rows, occupant, figures, buildable(rows))


def some(seed: int, line: Line | None = None, *, any_body: bool = False) -> Made:
    """Draw a client and set-ups that stand."""
    rng = np.random.default_rng(seed)
    occupant = seated(anybody(rng) if any_body else adult(rng))
    rows, _ = random_setups(line or everyday(), occupant, rng, HOW_MANY)
    return make(rows.line, occupant, rows.index)


def for_many(examples: int = 20) -> Callable[[Any], Any]:
    """Run a law on many clients, each in forty set-ups."""

    def wrap(law: Any) -> Any:
        tries = settings(max_examples=examples, deadline=None)
        return tries(given(seed=st.integers(0, 2**32 - 1))(law))

    return wrap


def moved_hole(made: Made, columns: int) -> tuple[Index, NDArray[np.bool_]]:
    """Axle some columns farther forward in its row, and where there is such a hole."""
    options = made.rows.line.choices["axle_hole"].options
    found, there = [], []
    for at in made.rows.index["axle_hole"]:
        here = options[at]
        row = [
            place
            for place, option in enumerate(options)
            if option.mounting == here.mounting and option.numbers["z_mm"] == here.numbers["z_mm"]
        ]
        row.sort(key=lambda place: options[place].numbers["x_mm"])
        wanted = row.index(at) + columns
        there.append(0 <= wanted < len(row))
        found.append(row[wanted] if there[-1] else at)
    return {"axle_hole": np.array(found)}, np.array(there)
