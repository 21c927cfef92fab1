"""The demo client, its set-up, and states of it: invented, the same for everybody."""

from __future__ import annotations

from collections.abc import Mapping

from chairwright_desk.bench.bridge import Bench, State, open_bench, sketch_of, state_of

LINE = "everyday"
NAME = "the demo set-up"
CLIENT = """\
format: chairwright client 1
reference: TEACH-001
sex: male
note: Invented for teaching. Pushes with both hands.
propulsion: hands
measures:
  stature: 176 cm
  body_mass: 78 kg
  hip_width: 38 cm
  shoulder_height: 60 cm
  axilla_height: 46.5 cm
  scapula_height: 45 cm
  elbow_height: 24.5 cm
  buttock_thigh_depth: 49 cm
  lower_leg_length: 45 cm
  foot_length: 285 mm
  upper_arm_length: 36.5 cm
  forearm_length: 35.5 cm
  shoe_sole: 25 mm
"""
CODES = {
    "side_frame": "SFL", "rear_wheel": "W24", "camber": "K0", "axle_hole": "D8", "caster": "C6",
    "fork": "FL-4", "stem_spacer": "none", "caster_housing": "L4", "stem_setting": "NF2",
    "hand_rim": "RA", "seat_width": "S400", "arm_support": "AW-275", "seat_depth": "D420",
    "cushion": "Q30", "back_angle": "B4", "back_support": "BS", "foot_supports": "both",
    "hanger": "H70", "foot_plate": "FP", "leg_length": "G380", "back_height": "P400",
    "push_handle": "VF", "wheel_lock": "LP", "anti_tip": "TS-9", "belt": "none", "finish": "FG",
}  # fmt: skip


def demo_bench() -> Bench:
    """The demo client on its line."""
    return open_bench(CLIENT, LINE)


def base() -> State:
    """The demo set-up, with the spreads of its own."""
    return state_of(demo_bench(), CODES)


def state_with(codes: Mapping[str, str]) -> State:
    """The demo set-up with other choices, judged with the spreads of the demo set-up.

    Parameters
    ----------
    codes : mapping of str to str
        Those that differ.

    Raises
    ------
    InputError
        When the line has no such option.
    """
    if all(CODES.get(name) == code for name, code in codes.items()):
        return base()
    return sketch_of(demo_bench(), {**CODES, **codes}, base())
