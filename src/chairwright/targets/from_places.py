"""From a client's surroundings to targets: every place asks for figures, each with its reason."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Any

from chairwright.figures.carer import HANDLE_SHARE, best_handle_height_mm
from chairwright.person.client import Client
from chairwright.places.kinds import (
    Basin,
    Bed,
    Boot,
    CarSeat,
    Corner,
    Corridor,
    CrossSlope,
    Door,
    Kerb,
    Lift,
    Ramp,
    Room,
    Seat,
    Table,
    Threshold,
    Toilet,
)
from chairwright.places.model import Carer, Place, Surroundings
from chairwright.targets.place_asks import Asking
from chairwright.targets.place_rooms import (
    boot_targets,
    corner_targets,
    corridor_targets,
    door_targets,
    lift_targets,
    room_targets,
)
from chairwright.targets.place_seats import transfer_targets, under_top_targets
from chairwright.targets.place_slopes import (
    cross_slope_targets,
    kerb_targets,
    ramp_targets,
    threshold_targets,
)
from chairwright.targets.target import Target

CARER = "the carer"
"""What stands in the place of a place's name where the carer alone asks."""

HANDLE_SPARE_MM = 50.0
"""Push handles this near to the best height will do (common practice, no source)."""

NARROWER_IS_HARDER = ("corner_free_mm", "corner_arc_mm", "door_turn_mm")
MORE_IS_HARDER = ("device_spare_deg", "start_lift_mps2", "braking_lift_mps2")
"""Families that grow or fall with their one number, whatever the chair: a narrower way in needs a
wider way out, a steeper slope leaves less to tipping, a higher step less to the device."""

_MAKERS: dict[type[Place], Callable[[Any, Asking], Iterable[Target]]] = {
    Door: door_targets,
    Corridor: corridor_targets,
    Corner: corner_targets,
    Room: room_targets,
    Ramp: ramp_targets,
    CrossSlope: cross_slope_targets,
    Threshold: threshold_targets,
    Kerb: kerb_targets,
    Table: under_top_targets,
    Basin: under_top_targets,
    Bed: transfer_targets,
    Toilet: transfer_targets,
    Seat: transfer_targets,
    CarSeat: transfer_targets,
    Boot: boot_targets,
    Lift: lift_targets,
}


def place_targets(
    place: Place, client: Client, surroundings: Surroundings, *, knees: bool = True
) -> tuple[Target, ...]:
    """What one place asks.

    Parameters
    ----------
    place : Place
    client : Client
    surroundings : Surroundings
        Who helps.
    knees : bool
        Whether the client has a whole leg.

    Returns
    -------
    tuple of Target
        Each with the place's name; empty when no figure answers for it.
    """
    asking = Asking(place, client, surroundings.carer, surroundings.own, knees)
    return tuple(_MAKERS[type(place)](place, asking))


def carer_targets(carer: Carer | None) -> tuple[Target, ...]:
    """What the carer asks wherever they push: the height of the push handles.

    Parameters
    ----------
    carer : Carer or None

    Returns
    -------
    tuple of Target
        Empty when their shoulder height is not known.
    """
    if carer is None or carer.shoulder_height_mm is None:
        return ()
    best = best_handle_height_mm(carer.shoulder_height_mm)
    return (
        Target(
            figure="push_handle_height_mm",
            low=best - HANDLE_SPARE_MM,
            high=best + HANDLE_SPARE_MM,
            must=False,
            weight=0.25,
            source="van der Woude 1995 (read in the abstract only)",
            reason=f"{CARER}: handles at {HANDLE_SHARE:.1%} of a shoulder height of "
            f"{carer.shoulder_height_mm:g} mm, to within {HANDLE_SPARE_MM:g} mm",
            place=CARER,
        ),
    )


def from_places(client: Client, surroundings: Surroundings, *, knees: bool = True) -> list[Target]:
    """Every target of the surroundings that another does not imply.

    Parameters
    ----------
    client : Client
    surroundings : Surroundings
    knees : bool
        Whether the client has a whole leg.

    Returns
    -------
    list of Target
        In the order of the file, the carer's last. Of two that ask for the same end of the
        same figure the tighter one stays, the earlier one of two alike.
    """
    every = [
        target
        for place in surroundings.places
        for target in place_targets(place, client, surroundings, knees=knees)
    ]
    return list(not_implied([*every, *carer_targets(surroundings.carer)]))


def not_implied(targets: Sequence[Target]) -> Iterator[Target]:
    """Leave out every must that another must of the same figure implies; wishes likewise.

    Parameters
    ----------
    targets : sequence of Target

    Yields
    ------
    Target
        Two-sided wishes are never left out: what they cost adds up.
    """
    for at, target in enumerate(targets):
        others = [*targets[:at], *targets[at + 1 :]]
        earlier = targets[:at]
        if not any(_implies(other, target, strict=other not in earlier) for other in others):
            yield target


def as_hard(figure: str, other: str) -> bool:
    """Whether a range of one figure is never easier to hold than the same range of another.

    Parameters
    ----------
    figure, other : str
        The same figure is as hard as itself; of a family, one of a narrower way or of a steeper
        slope or a higher step.
    """
    if figure == other:
        return True
    (family, _, typed), (second, _, easier) = figure.partition("@"), other.partition("@")
    if family != second:
        return False
    if family in NARROWER_IS_HARDER:
        return float(typed) <= float(easier)
    if family in MORE_IS_HARDER:
        (kind, _, more), (same, _, less) = typed.partition("_"), easier.partition("_")
        return kind == same and bool(more and less) and float(more) >= float(less)
    return False


def _implies(other: Target, target: Target, *, strict: bool) -> bool:
    """Whether whoever holds one target holds the other; not for two alike when ``strict``."""
    if other.must != target.must or other.weight < target.weight:
        return False
    if not as_hard(other.figure, target.figure):
        return False
    if not target.must and None not in (target.low, target.high):
        return False
    low = target.low is None or (other.low is not None and other.low >= target.low)
    high = target.high is None or (other.high is not None and other.high <= target.high)
    same = (other.figure, other.low, other.high) == (target.figure, target.low, target.high)
    return low and high and not (strict and same)
