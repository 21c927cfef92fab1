"""Which rules speak to this client: how they push, and which feet need a support."""

from __future__ import annotations

from typing import Literal

from chairwright.person.client import Client, Measure
from chairwright.person.estimates import MeasureSet

LimbSide = Literal["left", "right"]
SIDES: tuple[LimbSide, LimbSide] = ("left", "right")
FOOT_GONE = frozenset({"foot", "below_knee", "through_knee", "above_knee", "hip"})
ELBOW_GONE = frozenset({"above_elbow", "shoulder"})


def foot_sides(client: Client, measures: MeasureSet) -> tuple[LimbSide, ...]:
    """Sides that end in a foot; a prosthesis does not count as one.

    Parameters
    ----------
    client : Client
    measures : MeasureSet

    Returns
    -------
    tuple of {"left", "right"}
    """
    return tuple(side for side in SIDES if _has_foot(client, measures, side))


def foot_support_sides(client: Client, measures: MeasureSet) -> tuple[LimbSide, ...]:
    """Sides whose foot rests on a foot support: it is there and does not push."""
    resting = (side for side in foot_sides(client, measures) if side not in client.feet_that_push)
    return tuple(resting)


def pushing_foot_sides(client: Client, measures: MeasureSet) -> tuple[LimbSide, ...]:
    """Sides whose foot propels the chair on the floor."""
    return tuple(side for side in foot_sides(client, measures) if side in client.feet_that_push)


def pushing_hand_sides(client: Client, measures: MeasureSet) -> tuple[LimbSide, ...]:
    """Sides whose hand drives a rim and has a forearm to do so."""
    there = (side for side in SIDES if measures.find("forearm_length", side) is not None)
    return tuple(side for side in there if side in client.hands_that_push)


def has_elbow(client: Client) -> bool:
    """Whether an arm is left that an arm support can carry."""
    gone = {lost.side for lost in client.amputations if lost.level in ELBOW_GONE}
    return len(gone) < len(SIDES)


def audience(client: Client, measures: MeasureSet) -> frozenset[str]:
    """Return every value of the tables' ``applies_to`` that this client answers to.

    Parameters
    ----------
    client : Client
    measures : MeasureSet

    Returns
    -------
    frozenset of str
        ``any``; ``hands`` or ``no_hands``; ``foot_propelling``; ``foot_supports`` (a foot
        rests on a support); ``feet_on_supports`` (the same, and no foot pushes).
    """
    supports = bool(foot_support_sides(client, measures))
    pushes = bool(pushing_foot_sides(client, measures))
    flags = {
        "any": True,
        "hands": bool(pushing_hand_sides(client, measures)),
        "no_hands": not pushing_hand_sides(client, measures),
        "foot_propelling": pushes,
        "foot_supports": supports,
        "feet_on_supports": supports and not pushes,
    }
    return frozenset(name for name, holds in flags.items() if holds)


def base_measure(
    name: str, applies_to: str, client: Client, measures: MeasureSet
) -> Measure | None:
    """Return the measure that a rule starts from: the shorter of the sides it is about.

    Parameters
    ----------
    name : str
        Catalogue name.
    applies_to : str
        The rule's column; decides which legs count.
    client : Client
    measures : MeasureSet

    Returns
    -------
    Measure or None
        None when no such part of the body is left.

    References
    ----------
    WHO WSTP, measure B (restated by a secondary source): the shorter side for seat depth.
    The shorter side for the lower leg: common practice, no source.
    """
    sides: tuple[LimbSide, ...] = SIDES
    if name == "lower_leg_length":
        pushing = applies_to == "foot_propelling"
        sides = (pushing_foot_sides if pushing else foot_support_sides)(client, measures)
    found = [measures.find(name, side) for side in sides]
    there = [measure for measure in found if measure is not None]
    return min(there, key=lambda measure: measure.value, default=None)


def _has_foot(client: Client, measures: MeasureSet, side: LimbSide) -> bool:
    lost = any(gone.side == side and gone.level in FOOT_GONE for gone in client.amputations)
    return measures.find("lower_leg_length", side) is not None and not lost
