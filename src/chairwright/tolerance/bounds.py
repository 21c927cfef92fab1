"""Ends of targets that were made from measures: how they move with the measures."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import cast

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.chair.weighed import COVERAGE
from chairwright.mass_points import FloatArray
from chairwright.targets.build import targets_for
from chairwright.targets.target import Target
from chairwright.tolerance.chain import Chain
from chairwright.tolerance.traced import slopes_of

Named = Mapping[tuple[str, bool], Target]


@dataclass(frozen=True)
class Bound:
    """One end of a target.

    Parameters
    ----------
    value : float
        In the figure's unit.
    slopes : ndarray, shape (inputs,)
        What one standard uncertainty of each input does to it.
    apart : float
        Standard uncertainty that no input of the set-up accounts for.
    """

    value: float
    slopes: FloatArray
    apart: float


def bounds_of(chain: Chain, targets: Sequence[Target]) -> list[tuple[Bound | None, Bound | None]]:
    """Low and high end of each target; None for an open end.

    Parameters
    ----------
    chain : Chain
    targets : sequence of Target

    Returns
    -------
    list of tuple
        An end that no measure of the client made, or that somebody moved since, stays where it
        is, but for the tolerance that the target itself states. Which rule and which side of the
        body set an end is settled by the values as taken.
    """
    traced = _traced(chain)
    return [_both(chain, target, traced.get((target.figure, target.must))) for target in targets]


def _both(chain: Chain, target: Target, traced: Target | None) -> tuple[Bound | None, Bound | None]:
    if traced is None or target.place:
        return _end(chain, target, target.low, None), _end(chain, target, target.high, None)
    return (
        _end(chain, target, target.low, traced.low),
        _end(chain, target, target.high, traced.high),
    )


def _end(chain: Chain, target: Target, value: float | None, traced: float | None) -> Bound | None:
    if value is None:
        return None
    found = np.zeros(len(chain.inputs))
    if traced is None or float(traced) != float(value):
        return Bound(float(value), found, target.tolerance / COVERAGE)
    own = slopes_of(traced)
    if own.ndim:
        found[: len(own)] = own
    return Bound(float(value), found, 0.0)


def _traced(chain: Chain) -> Named:
    """The client's targets with slopes on their ends, kept with the occupant."""
    occupant: Occupant = chain.occupant
    if chain.person is None or occupant.client is None:
        return {}
    kept = occupant.kept.get("targets")
    if kept is None:
        made = targets_for(occupant.client, chain.person.traced())
        kept = {(target.figure, target.must): target for target in made}
        occupant.kept["targets"] = kept
    return cast("Named", kept)
