"""What can be measured on a chair with a tape, a level and scales, and how finely.

Places are taken plumb and level on the chair as it stands, casters trailing. Bounds, tape
tolerances and assumed values: common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from chairwright.units import Dimension

TAPE_MM = 5.0
CALLIPER_MM = 2.0
LEVEL_DEG = 1.0
SCALE_KG = 0.2


@dataclass(frozen=True)
class ChairMeasure:
    """One thing to measure.

    Parameters
    ----------
    label : str
        For people.
    dimension : {"length", "mass", "angle"}
    low, high : float [mm, kg or deg]
        No chair lies outside.
    tolerance : float [mm, kg or deg]
        Half width of a reading, unless the file says another.
    needed : bool
        True when there are no figures without it.
    assumed, assumed_by : float
        Value and half width that stand in when it is not measured; NaN when figures that hang on
        it are left out.
    """

    label: str
    dimension: Dimension
    low: float
    high: float
    tolerance: float
    needed: bool = False
    assumed: float = math.nan
    assumed_by: float = math.nan

    @property
    def unit(self) -> str:
        """Base unit."""
        return {"length": "mm", "mass": "kg", "angle": "deg"}[self.dimension]


def _mm(
    label: str,
    low: float,
    high: float,
    tolerance: float = TAPE_MM,
    *,
    needed: bool = False,
    assumed: tuple[float, float] = (math.nan, math.nan),
) -> ChairMeasure:
    return ChairMeasure(label, "length", low, high, tolerance, needed, *assumed)


def _deg(
    label: str,
    low: float,
    high: float,
    tolerance: float = LEVEL_DEG,
    assumed: tuple[float, float] = (math.nan, math.nan),
) -> ChairMeasure:
    return ChairMeasure(label, "angle", low, high, tolerance, False, *assumed)


def _kg(
    label: str,
    low: float,
    high: float,
    tolerance: float = SCALE_KG,
    assumed: tuple[float, float] = (math.nan, math.nan),
) -> ChairMeasure:
    return ChairMeasure(label, "mass", low, high, tolerance, False, *assumed)


CHAIR_MEASURES: dict[str, ChairMeasure] = {
    "seat_to_floor_front": _mm("Seat rail to floor, front", 300, 650, needed=True),
    "seat_to_floor_rear": _mm("Seat rail to floor, back", 280, 620, needed=True),
    "seat_depth": _mm("Seat depth, back post to seat front", 250, 600, needed=True),
    "seat_width": _mm("Seat width", 220, 700),
    "seat_angle": _deg("Seat angle to the level", -5, 20),
    "back_angle": _deg("Back angle to the vertical", -5, 45),
    "back_height": _mm("Top of the back above the seat rail, along the post", 150, 750),
    "back_behind_post": _mm(
        "Loaded back surface behind the post", -60, 100, 10, assumed=(25.0, 15.0)
    ),
    "rear_wheel_diameter": _mm("Rear wheel with tyre", 250, 720, 4, needed=True),
    "tyre_width": _mm("Width of the rear tyre", 15, 70, CALLIPER_MM, assumed=(30.0, 7.0)),
    "hand_rim_diameter": _mm("Hand rim", 200, 680, 4),
    "hand_rim_standoff": _mm("Hand rim outward of the wheel plane", 10, 80, 4),
    "caster_diameter": _mm("Caster", 60, 260, CALLIPER_MM, needed=True),
    "caster_width": _mm("Width of the caster", 15, 70, CALLIPER_MM, assumed=(27.0, 8.0)),
    "wheelbase": _mm("Wheelbase, rear axle to caster axle", 220, 700, needed=True),
    "diagonal": _mm("Rear contact to the opposite caster contact", 350, 1100),
    "rear_track": _mm("Rear track at the floor", 350, 900),
    "caster_track": _mm("Caster track at the floor", 220, 800),
    "camber": _deg("Camber", 0, 20, 0.5),
    "caster_trail": _mm("Caster trail, axle behind the stem", 0, 110, 3),
    "caster_stem_angle": _deg("Caster stem off the vertical", -12, 12, assumed=(0.0, 1.5)),
    "axle_ahead_of_post": _mm("Rear axle ahead of the back post", -180, 250),
    "axle_below_seat": _mm("Rear axle below the seat rail at the post", -50, 400),
    "caster_ahead_of_post": _mm("Caster axle ahead of the back post", 180, 750),
    "overall_length": _mm("Overall length of the empty chair", 600, 1450, 8),
    "overall_width": _mm("Overall width", 400, 1000),
    "overall_height": _mm("Overall height", 550, 1400, 8),
    "folded_width": _mm("Folded width", 150, 600),
    "cushion_front": _mm("Loaded cushion top above the seat rail, front", -20, 180, 8),
    "cushion_rear": _mm("Loaded cushion top above the seat rail, back", -20, 180, 8),
    "arm_pad_height": _mm("Arm pad above the seat rail", 80, 450),
    "leg_support_length": _mm("Cushion front edge to footplate, along the hanger", 200, 700, 8),
    "hanger_angle": _deg("Hanger to the level, 90 hangs straight down", 0, 120, 2),
    "footplate_clearance": _mm("Footplate to floor", 15, 350),
    "footplate_ahead_of_post": _mm("Footplate tip ahead of the back post", 250, 1100, 8),
    "footplate_length": _mm("Length of the footplate", 60, 320, assumed=(150.0, 30.0)),
    "footplate_inset": _mm(
        "Footplate's outer edge inward of the seat's edge", -40, 150, assumed=(15.0, 15.0)
    ),
    "push_handle_height": _mm("Push handle grips above floor", 600, 1300, 8),
    "push_handle_behind_post": _mm(
        "Push handle grips behind the back's top", 0, 200, 8, assumed=(80.0, 40.0)
    ),
    "anti_tip_behind_axle": _mm("Anti-tip wheel behind the rear axle", 50, 500),
    "anti_tip_clearance": _mm("Anti-tip wheel to floor", 0, 200),
    "anti_tip_wheel_diameter": _mm("Anti-tip wheel", 20, 120, 3, assumed=(50.0, 15.0)),
    "chair_mass": _kg("Chair, whole", 5, 45),
    "heaviest_piece": _kg("Heaviest piece to lift", 1.5, 40),
    "rear_wheel_mass": _kg("One rear wheel", 0.7, 4.5, 0.1, (1.9, 0.5)),
    "rated_load": _kg("Rated load", 40, 400, 0.0),
    "empty_on_rear": _kg("Empty chair, on the rear wheels", 1, 40),
    "empty_on_casters": _kg("Empty chair, on the casters", 0.2, 30),
    "occupied_on_rear": _kg("Occupied chair, on the rear wheels", 10, 380),
    "occupied_on_casters": _kg("Occupied chair, on the casters", 0.5, 250),
    "com_ahead_of_axle": _mm("Centre of mass ahead of the axle, occupied", -200, 450, 8),
    "com_to_left": _mm("Centre of mass to the left, occupied", -120, 120, 8),
    "com_above_floor": _mm("Centre of mass above floor, occupied", 300, 1000, 20),
}
"""Every measure, in the order of taking them."""
