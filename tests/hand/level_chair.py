"""One chair of round numbers whose seat comes out level, so that a pencil is enough."""

from __future__ import annotations

from functools import cache

import numpy as np

from chairwright.line.model import Line
from tests.laws.setups import Made, make
from tests.oracles.lines import Written, everyday_as_written, line_from
from tests.oracles.people import client, seated


def _written() -> Written:
    """The shipped line with round sizes in the parts that the hand chair uses."""
    data = everyday_as_written()
    data.update(base_price=500, build_days=10)
    data["side_frames"] = [
        {
            "code": "SF", "name": "frame", "caster_tube_x_mm": 400, "hanger_pivot_mm": [420, -50],
            "depth_from_mm": 300, "depth_to_mm": 520, "load_limit_kg": 130, "mass_kg": 4.0,
            "at_mm": [200, -150],
        }
    ]  # fmt: skip
    data["rear_wheels"] = [
        {
            "code": "W", "name": "wheel", "bead_seat_mm": 550, "tyre_width_mm": 25,
            "hand_rim_diameter_mm": 540, "spin_inertia_kgm2": 0.25, "load_limit_kg": 140,
            "mass_kg": 3.5,
        }
    ]  # fmt: skip
    data["hand_rims"] = [
        {"code": "RA", "name": "rim", "standoff_mm": 50, "mass_kg": 0.5, "price": 12.5}
    ]
    data["axle_plates"] = [
        {
            "code": "XN", "name": "plate", "mass_kg": 1.0, "columns_mm": {"A": 0, "B": 50},
            "rows_mm": {1: -200}, "turned_about_x_mm": 60,
        }
    ]  # fmt: skip
    data["casters"] = [
        {"code": "C", "name": "caster", "diameter_mm": 150, "width_mm": 30, "mass_kg": 1.0,
         "load_limit_kg": 120}
    ]  # fmt: skip
    data["forks"] = [
        {
            "code": "F", "name": "fork", "trail_mm": 50, "largest_caster_mm": 160, "mass_kg": 0.5,
            "holes_mm": {1: 125},
        }
    ]  # fmt: skip
    housings = data["caster_housings"]
    housings.update(ahead_of_tube_mm={"leading": 50, "trailing": -50}, rows_mm={1: -300})
    housings.update(stem_settings_deg=[0, -5], outset_mm=10, mass_kg=0.6)
    data["arm_supports"] = [
        {
            "code": "AR", "name": "arm", "hub_outset_mm": 40, "outer_outset_mm": 30,
            "mass_kg": 1.5, "pad_heights_mm": [250], "price": 30, "days": 2,
        }
    ]  # fmt: skip
    data["back_angles"] = [{"code": "B0", "angle_deg": 0}, {"code": "B10", "angle_deg": 10}]
    data["hangers"] = [
        {"code": "H60", "name": "hanger", "angle_deg": 60, "swings": "out", "mass_kg": 1.4}
    ]
    data["foot_plates"] = [
        {
            "code": "FP", "name": "footplate", "length_mm": 150, "width_mm": 150,
            "thickness_mm": 8, "behind_tube_mm": 20, "outer_inset_mm": 20, "mass_kg": 0.8,
        }
    ]  # fmt: skip
    data["leg_lengths"] = {"lengths_mm": [300, 340]}
    data["push_handles"] = [
        {"code": "VF", "name": "handles", "behind_mm": 70, "above_mm": 30, "mass_kg": 0.4}
    ]
    data["folding"] = {"folded_seat_mm": 70, "folds_to_width_mm": 500}
    data["rules"] = []
    for name, mass in MASSES.items():
        for part in data[name]:
            part["mass_kg"] = mass
    data["anti_tips"][0].update(price=45, days=4)
    data["custom_sizes"] = {
        "seat_width": {"from_mm": 350, "to_mm": 450, "step_mm": 10, "mass_kg": [1.5, 2.5],
                       "surcharge": 240, "days": 12}
    }  # fmt: skip
    data["fixed_parts"] = [
        {"code": "X", "name": "fixed", "mass_kg": 0.5, "at_mm": [0, 0]},
    ]
    return data


MASSES = {
    "seat_depths": 0.4, "cushions": 0.8, "back_supports": 0.6, "seat_widths": 2.0,
    "back_heights": 0.7, "wheel_locks": 0.3, "anti_tips": 0.5,
}  # fmt: skip


@cache
def line() -> Line:
    """Load the line once."""
    return line_from(_written())


CODES = {
    "side_frame": "SF", "rear_wheel": "W", "camber": "K0", "axle_hole": "A1", "caster": "C",
    "fork": "F-1", "stem_spacer": "none", "caster_housing": "L1", "stem_setting": "N0",
    "hand_rim": "RA", "seat_width": "S400", "arm_support": "AR-250", "seat_depth": "D400",
    "cushion": "Q50", "back_angle": "B0", "back_support": "BT", "foot_supports": "both",
    "hanger": "H60", "foot_plate": "FP", "leg_length": "G300", "back_height": "P400",
    "push_handle": "VF", "wheel_lock": "LP", "anti_tip": "TS-7", "belt": "none", "finish": "FG",
}  # fmt: skip


def level_chair(**other: str) -> Made:
    """A man of 1.75 m and 80 kg in the hand chair, with other codes where they are named."""
    codes = CODES | other
    index = {name: np.array([line().choices[name].codes[code]]) for name, code in codes.items()}
    return make(line(), seated(client()), index)
