"""What the places change: the best set-up with them beside the best without them."""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.fitting.alone import Alone
from chairwright.fitting.described import Described, Judged
from chairwright.fitting.fit import Fit


@dataclass(frozen=True)
class PlaceEffect:
    """How the best set-up differs because of the places.

    Parameters
    ----------
    changed : dict of str to tuple of str
        Choice to its code without and with the places.
    decided : tuple of Judged
        Musts of places that the set-up without them misses: these decided.
    drew : tuple of Judged
        Where it misses none: wishes of places that the set-up with them comes nearer to.
    """

    changed: dict[str, tuple[str, str]]
    decided: tuple[Judged, ...]
    drew: tuple[Judged, ...]


def place_effect(fit: Fit) -> PlaceEffect | None:
    """Compare the best set-up with the one that would be best without the places.

    Parameters
    ----------
    fit : Fit

    Returns
    -------
    PlaceEffect or None
        None when there is no such pair.
    """
    alone, chosen = fit.without_places, fit.setup
    if alone is None or chosen is None:
        return None
    before, after = alone.codes, chosen.codes
    changed = {name: (before[name], code) for name, code in after.items() if before[name] != code}
    return PlaceEffect(
        changed=changed,
        decided=tuple(item for item in alone.broken if item.target.place),
        drew=tuple(_nearer(alone, chosen)),
    )


def _nearer(alone: Alone, chosen: Described) -> list[Judged]:
    """Wishes of places that the set-up without them misses by more."""
    pairs = zip(alone.judged, chosen.judged, strict=True)
    return [
        before
        for before, after in pairs
        if before.target.place
        and not before.target.must
        and before.target.weight > 0
        and before.verdict.margin < min(after.verdict.margin, 0.0)
    ]
