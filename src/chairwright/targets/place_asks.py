"""What makes a target of a place: who helps there, working values, and how a target is written."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from chairwright.figures.carer import push_limits
from chairwright.person.client import Client
from chairwright.places.model import Carer, OwnLimits, Place
from chairwright.targets.target import Target

WALL_MM = 5.0
"""Least distance kept from every wall and jamb (common practice, no source)."""

PUSH_OFF_MPS2 = 0.5
"""A calm push-off up a ramp must not lift the casters (common practice, no source)."""

BRAKE_MPS2 = 1.0
"""Braking to a stand down a ramp must not lift the rear wheels (common practice, no source)."""

SIDE_SPARE_DEG = 5.0
"""What sideways tipping must have beyond a cross slope, for leaning (common practice,
no source)."""

RIM_FORCE_N = 60.0
"""Rim force of each hand, mean of a stroke, that most keep up for some metres; used where no own
limit is given, and then as a wish only (from memory, no source)."""

TOLD = 0.0
"""Weight of a wish that is judged and told but does not draw the set-up: steps depend on skill and
technique more than on the chair, and no chair brings them near a published limit."""

PRACTICE = "common practice, no source"
MEMORY = "from memory, no source"
PHYSICS = "First principles"
WISH_WEIGHT = 0.5
"""Weight of a place's wish beside 1 of a seating rule (working value)."""


@dataclass(frozen=True)
class Asking:
    """A place with those who help there.

    Parameters
    ----------
    place : Place
    client : Client
    carer : Carer or None
    own : OwnLimits
    knees : bool
        Whether the client has a whole leg, so that knees must go under tables.
    """

    place: Place
    client: Client
    carer: Carer | None
    own: OwnLimits
    knees: bool = True

    @property
    def helped(self) -> bool:
        """Whether a carer pushes here; as the client moves where the place does not say."""
        said: bool | None = getattr(self.place, "helped", None)
        if said is not None:
            return said
        return not (self.client.hands_that_push or self.client.feet_that_push)

    @property
    def by_hand(self) -> bool:
        """Whether the client pushes here at the rims."""
        return not self.helped and bool(self.client.hands_that_push)

    def ask(
        self,
        figure: str,
        reason: str,
        *,
        low: float | None = None,
        high: float | None = None,
        source: str = PRACTICE,
        wish: bool = False,
        weight: float = WISH_WEIGHT,
    ) -> Target:
        """One target of the place.

        Parameters
        ----------
        figure : str
        reason : str
            Put behind the place's name.
        low, high : float or None
            In the figure's unit.
        source : str
        wish : bool
            True for a preference even where the place must be managed.
        weight : float
        """
        return Target(
            figure=figure,
            low=low,
            high=high,
            must=self.place.must and not wish,
            weight=weight,
            source=source,
            reason=f"{self.place.name}: {reason}",
            place=self.place.name,
        )


PushKind = Literal["start", "keep"]


def push_limit(carer: Carer | None, kind: PushKind) -> tuple[float, str]:
    """What a carer can push, and where the number is from.

    Parameters
    ----------
    carer : Carer or None
        None counts as one of whom nothing is known.
    kind : {"start", "keep"}

    Returns
    -------
    tuple of float and str
        Limit [N] and source.
    """
    carer = carer or Carer()
    own = carer.push_start_n if kind == "start" else carer.push_keep_n
    if own is not None:
        return own, "the carer's own limit (places file)"
    published = push_limits()[carer.limits]
    limit = published.start_n if kind == "start" else published.keep_n
    return limit, f"{published.source}, {carer.limits}; a filter, not a safe limit"
