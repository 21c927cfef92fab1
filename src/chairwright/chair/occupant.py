"""The client as a load on the chair: who sits, who pushes, what is carried."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any, Literal

import numpy as np

from chairwright.chair.weighed import CentreWeighed
from chairwright.mass_points import FloatArray, MassPoints
from chairwright.person.body import Body, build_body
from chairwright.person.client import Carried, CarryPlace, Client
from chairwright.person.estimates import MeasureSet

LimbSide = Literal["left", "right"]
SIDES: tuple[LimbSide, LimbSide] = ("left", "right")

# Places of carried loads in frame axes [mm]: common practice, no source.
CARRY_PLACES: dict[CarryPlace, tuple[float, float]] = {
    "backpack": (-140.0, 300.0),
    "under_seat": (120.0, -110.0),
    "lap": (220.0, 220.0),
    "foot_support": (520.0, -330.0),
}


@dataclass(frozen=True)
class Occupant:
    """One client ready to be seated.

    Parameters
    ----------
    body : Body
        Segments with lengths [mm] and masses [kg].
    feet_that_push, hands_that_push : tuple of {"left", "right"}
    carries : tuple of Carried
    lower_leg_mm : dict of side to float [mm]
        Back of the knee to the sole, shoe on, of the legs that are whole.
    knee_above_joint_mm : dict of side to float [mm]
        Top of the bent knee above its joint, of the legs that are whole.
    weighed : CentreWeighed or None
        What scales said of the centre of mass; None leaves it to the body model.
    client, measures : Client and MeasureSet, or None
        Whose body it is, so that errors of the measures can be followed; None for a body made up.
    kept : dict
        What was worked out from it before, by whoever worked it out.
    """

    body: Body
    feet_that_push: tuple[LimbSide, ...]
    hands_that_push: tuple[LimbSide, ...]
    carries: tuple[Carried, ...]
    lower_leg_mm: dict[LimbSide, float]
    knee_above_joint_mm: dict[LimbSide, float] = field(default_factory=dict)
    weighed: CentreWeighed | None = None
    client: Client | None = field(default=None, compare=False, repr=False)
    measures: MeasureSet | None = field(default=None, compare=False, repr=False)
    kept: dict[str, Any] = field(default_factory=dict, compare=False, repr=False)

    @property
    def feet_that_rest(self) -> tuple[LimbSide, ...]:
        """Sides whose foot is there and does not push."""
        whole = (side for side in SIDES if self.body.foot_length_mm.get(side) is not None)
        return tuple(side for side in whole if side not in self.feet_that_push)

    @property
    def load_kg(self) -> float:
        """Mass of the occupant with everything carried [kg]."""
        return self.body.mass_kg + sum(item.mass_kg for item in self.carries)

    def as_weighed(self, points: list[MassPoints]) -> list[MassPoints]:
        """Segments that the body model has placed, where the scales say that they are."""
        return points if self.weighed is None else self.weighed.moved(points)

    def carried_points(self) -> list[MassPoints]:
        """Point masses of the carried loads, frame axes."""
        return [
            MassPoints(item.name, item.mass_kg, x_mm, 0.0, z_mm)
            for item in self.carries
            for x_mm, z_mm in [CARRY_PLACES[item.place]]
        ]


def seat(client: Client, measures: MeasureSet) -> Occupant:
    """The occupant that a client's body and way of propelling make.

    Parameters
    ----------
    client : Client
    measures : MeasureSet

    Returns
    -------
    Occupant

    Raises
    ------
    InputError
        When the measures do not make a body.
    """
    legs = {side: measures.find("lower_leg_length", side) for side in SIDES}
    body = build_body(client, measures)
    return Occupant(
        body=body,
        feet_that_push=client.feet_that_push,
        hands_that_push=client.hands_that_push,
        carries=client.carries,
        lower_leg_mm={side: leg.value for side, leg in legs.items() if leg is not None},
        knee_above_joint_mm=dict(_knees_above(body, measures)),
        client=client,
        measures=measures,
    )


def _knees_above(body: Body, measures: MeasureSet) -> Iterator[tuple[LimbSide, float]]:
    """Top of the bent knee above its joint, of the legs that are whole [mm]."""
    for side in SIDES:
        shank, height = body.shank_mm[side], measures.find("knee_height", side)
        if shank is not None and height is not None and body.foot_length_mm.get(side) is not None:
            above = np.maximum(height.value - shank - body.ankle_height_mm, 0.0)
            yield side, above if np.ndim(above) else float(above)


def own_points(points: Iterable[MassPoints], occupant: Occupant) -> list[MassPoints]:
    """Those points that are segments of the occupant's body: the segment's name and its mass.

    Parameters
    ----------
    points : iterable of MassPoints
    occupant : Occupant
    """
    own = {segment.name: segment.mass_kg for segment in occupant.body.segments}
    return [
        point
        for point in points
        if isinstance(point.mass_kg, float) and own.get(point.name) == point.mass_kg
    ]


def hip_place(
    body: Body,
    back_rad: FloatArray,
    seat_rad: FloatArray,
    behind_post_mm: FloatArray,
    cushion_rear_mm: FloatArray,
) -> tuple[FloatArray, FloatArray]:
    """Mid-hip in frame axes: buttocks against the back surface and on the loaded cushion.

    Parameters
    ----------
    body : Body
    back_rad : ndarray [rad]
        Back post behind square to the seat rail.
    seat_rad : ndarray [rad]
        Loaded cushion top above the seat rail's direction.
    behind_post_mm : ndarray [mm]
        Loaded back surface behind the post's front face.
    cushion_rear_mm : ndarray [mm]
        Loaded cushion top above the seat rail at the back.

    Returns
    -------
    tuple of ndarray [mm]
        x and z.

    References
    ----------
    First principles: the hip lies at its own distances from two planes.
    """
    from_back = body.hip_ahead_of_back_mm - behind_post_mm
    from_seat = body.hip_above_seat_mm + cushion_rear_mm * np.cos(seat_rad)
    spread = np.cos(back_rad - seat_rad)
    x_mm = (from_back * np.cos(seat_rad) - from_seat * np.sin(back_rad)) / spread
    z_mm = (from_seat * np.cos(back_rad) + from_back * np.sin(seat_rad)) / spread
    return x_mm, z_mm


def pushing_shank_rad(
    knee_height_mm: FloatArray, shank_mm: float, ankle_height_mm: float
) -> FloatArray:
    """How far a pushing leg's shank leans forward from the vertical with the sole on the floor.

    Parameters
    ----------
    knee_height_mm : ndarray [mm]
        Knee joint above the floor.
    shank_mm, ankle_height_mm : float [mm]
        Knee to ankle joint; ankle joint to sole, shoe included.

    Returns
    -------
    ndarray [rad]
        0 when the foot hangs clear of the floor.
    """
    reach = (knee_height_mm - ankle_height_mm) / shank_mm
    return np.asarray(np.arccos(np.clip(reach, 0.0, 1.0)))
