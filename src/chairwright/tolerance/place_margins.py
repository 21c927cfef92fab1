"""What the sizes of places do to the margins of what the places ask."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.figures.evaluate import figures_of, realise
from chairwright.line.model import Line
from chairwright.places.model import Place, Surroundings
from chairwright.targets.from_places import place_targets
from chairwright.targets.target import Target
from chairwright.tolerance.model import Input
from chairwright.tolerance.place_inputs import moved_places

More = tuple[tuple[Input, float, float], ...]
Pair = tuple[Input, Target, Target]


def place_moves(
    line: Line,
    occupant: Occupant,
    index: Mapping[str, int],
    targets: Sequence[Target],
    surroundings: Surroundings | None,
) -> dict[int, More]:
    """What one standard uncertainty of each size of a place does to the margins there.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    index : mapping of str to int
    targets : sequence of Target
    surroundings : Surroundings or None

    Returns
    -------
    dict of int to tuple of (Input, float, float)
        By the target's place in ``targets``: input, and change of the margin for more and less of
        it. A figure that hangs on the place, as at a slope, is worked out anew for it.
    """
    asked = {target.place for target in targets if target.place}
    if surroundings is None or not asked:
        return {}
    pairs: dict[int, list[Pair]] = {}
    for place in surroundings.places:
        if place.name in asked:
            _pairs(place, occupant, targets, surroundings, pairs)
    names = {target.figure for at in pairs for target in (targets[at], *_all(pairs[at]))}
    rows, _ = realise(line, occupant, {name: np.array([at]) for name, at in index.items()})
    values = {name: float(each[0]) for name, each in figures_of(rows, occupant, names).items()}
    return {at: _moves(targets[at], each, values) for at, each in pairs.items()}


def _all(pairs: Sequence[Pair]) -> list[Target]:
    return [target for _, more, less in pairs for target in (more, less)]


def _pairs(
    place: Place,
    occupant: Occupant,
    targets: Sequence[Target],
    surroundings: Surroundings,
    pairs: dict[int, list[Pair]],
) -> None:
    """Add, for each target of a place that a size moves, what it becomes."""
    if occupant.client is None:
        return
    client, knees = occupant.client, bool(occupant.knee_above_joint_mm)

    def asked(where: Place) -> tuple[Target, ...]:
        return place_targets(where, client, surroundings, knees=knees)

    now = asked(place)
    for made, larger, smaller in moved_places(place):
        more, less = asked(larger), asked(smaller)
        if len(more) == len(now) == len(less):
            for was, up, down in zip(now, more, less, strict=True):
                for at in [k for k, each in enumerate(targets) if each == was]:
                    if _told(up) != _told(was) or _told(down) != _told(was):
                        pairs.setdefault(at, []).append((made, up, down))


def _told(target: Target) -> tuple[str, float | None, float | None]:
    return target.figure, target.low, target.high


def _moves(target: Target, pairs: Sequence[Pair], values: Mapping[str, float]) -> More:
    now = _margin(target, values)
    return tuple(
        (made, float(np.nan_to_num(_margin(up, values) - now)),
         float(np.nan_to_num(_margin(down, values) - now)))
        for made, up, down in pairs
    )  # fmt: skip


def _margin(target: Target, values: Mapping[str, float]) -> float:
    """Distance to the nearer end, one end open as a rule."""
    value = values[target.figure]
    ends = [] if target.low is None else [value - target.low]
    ends += [] if target.high is None else [target.high - value]
    return min(ends, default=np.nan)
