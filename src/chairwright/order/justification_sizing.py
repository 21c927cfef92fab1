"""From which of the client's measures the rules come to the range of a dimension."""

from __future__ import annotations

from chairwright.fitting.person import Person
from chairwright.person.client import Measure
from chairwright.person.estimates import MeasureSet
from chairwright.person.measures import CATALOGUE
from chairwright.targets.audience import audience, base_measure, pushing_hand_sides
from chairwright.targets.envelope import envelope, setters
from chairwright.targets.rules import rules_for

SEAT = "cushion_to_floor_front_mm"
LEG = "leg_support_length_mm"
ELBOW = "elbow_angle_deg"
SIZED = ("seat_width_mm", "seat_depth_mm", SEAT, LEG, "back_height_mm", "arm_height_mm", ELBOW)
"""Figures that are sized to the body, in the order in which a letter tells them."""


def told_apart(measures: MeasureSet, name: str) -> bool:
    """Whether the sides of a measure differ in value, or in how they were taken.

    Parameters
    ----------
    measures : MeasureSet
    name : str
        In the catalogue.
    """
    if not CATALOGUE[name].sided:
        return False
    left, right = measures.both(name)
    if left is None or right is None:
        return True
    return (left.value, left.estimated) != (right.value, right.estimated)


def measure_key(measures: MeasureSet, measure: Measure) -> str:
    """Key of the fact of a measure; a pair that is alike has one.

    Parameters
    ----------
    measures : MeasureSet
    measure : Measure
        One of them.
    """
    side = measure.side if told_apart(measures, measure.name) else "both"
    return f"client.measures.{measure.name}.{side}"


def started_from(person: Person, figure: str) -> tuple[str, ...]:
    """Keys of the measures from which the range of a figure comes.

    Parameters
    ----------
    person : Person
    figure : str

    Returns
    -------
    tuple of str
        Empty when the figure is sized to no measure.
    """
    keys = (measure_key(person.measures, each) for each in _measures(person, figure))
    return tuple(dict.fromkeys(keys))


def _measures(person: Person, figure: str) -> tuple[Measure, ...]:
    client, measures = person.client, person.measures
    if figure not in SIZED:
        return ()
    if figure == ELBOW:
        names = ("upper_arm_length", "forearm_length")
        sides = pushing_hand_sides(client, measures)
        found = [measures.find(name, side) for name in names for side in sides]
        whole = tuple(each for each in found if each is not None)
        return whole if len(whole) == len(found) else ()
    pushes = "foot_propelling" in audience(client, measures)
    if figure == LEG or (figure == SEAT and not pushes):
        leg = base_measure("lower_leg_length", "foot_supports", client, measures)
        return () if leg is None else (leg,)
    results = rules_for(figure, client, measures)
    sets = setters(envelope(results), results)
    return tuple(result.measure for result in sets if result.measure is not None)
