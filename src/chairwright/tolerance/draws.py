"""Errors drawn at random, the same ones every time."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

import numpy as np

from chairwright.mass_points import FloatArray
from chairwright.tolerance.model import Input, Shape

SEED = 20261125
DRAWS = 10_000
FIRST_DRAWS = 500


def drawn_steps(inputs: Iterable[Input], count: int = DRAWS, seed: int = SEED) -> FloatArray:
    """Errors of every input, in standard uncertainties.

    Parameters
    ----------
    inputs : iterable of Input
    count : int
    seed : int

    Returns
    -------
    ndarray, shape (count, inputs)
        Normal, or anywhere between limits alike, as each input says.

    References
    ----------
    JCGM 101:2008, 6.4.2 and 6.4.7.
    """
    return _drawn(tuple(each.shape for each in inputs), count, seed)


@lru_cache(maxsize=4)
def _drawn(shapes: tuple[Shape, ...], count: int, seed: int) -> FloatArray:
    rng = np.random.default_rng(seed)
    found = np.empty((count, len(shapes)))
    for at, shape in enumerate(shapes):
        edge = np.sqrt(3.0)
        found[:, at] = (
            rng.uniform(-edge, edge, count) if shape == "limits" else rng.standard_normal(count)
        )
    found.flags.writeable = False
    return found
