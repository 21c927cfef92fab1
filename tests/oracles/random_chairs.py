"""The random occupied chairs that the balance oracles look at."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.evaluate import figures_of

from .draws import random_setups
from .independent import OnFloor, contacts, on_floor
from .lines import everyday
from .people import anybody, seated

Array = NDArray[np.float64]
DIRECTIONS = (0.0, 45.0, 90.0, 135.0, 180.0, -135.0, -90.0, -45.0)
STANDS_BY_DEG = 1.0
"""A chair that tips on the level, or nearly, cannot be put on an engine's floor."""


class Batch(NamedTuple):
    """Some set-ups of one client."""

    rows: Rows
    occupant: Occupant
    masses: OnFloor
    figures: dict[str, Array]
    feet_mm: Array


def batches(seed: int, clients: int, each: int) -> Iterator[Batch]:
    """Draw set-ups of the shipped line for random clients, ``each`` for every client."""
    rng = np.random.default_rng(seed)
    for _ in range(clients):
        occupant = seated(anybody(rng))

        def stands(rows: Rows, who: Occupant = occupant) -> NDArray[np.bool_]:
            return figures_of(rows, who, ["tip_least_deg"])["tip_least_deg"] > STANDS_BY_DEG

        rows, points = random_setups(everyday(), occupant, rng, each, stands)
        figures = figures_of(rows, occupant)
        yield Batch(rows, occupant, on_floor(rows, points), figures, contacts(rows))
