"""Random plausible chairs as somebody measures them, and slips of the pen on one value.

The geometry is written out here on its own, with none of the program's formulas.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from chairwright.files.chair_measures import CHAIR_MEASURES
from chairwright.files.measured import Reading
from chairwright.units import parse_quantity

NEEDLESS = ("com_ahead_of_axle", "com_to_left", "com_above_floor", "anti_tip_behind_axle")


def true_chair(rng: np.random.Generator) -> dict[str, float]:
    """Draw every measure of one chair, exact."""
    u = rng.uniform
    radius, camber, pitch = u(250, 312), rng.choice([0.0, 2.0, 4.0]), math.radians(u(0, 7))
    depth, rear, width = u(380, 480), u(400, 500), u(340, 480)
    axle_up = radius * math.cos(math.radians(camber))
    back, post = math.radians(u(2, 14)), u(300, 480)
    ahead, wheelbase, caster = u(-20, 90), u(360, 470), u(60, 100)
    hub = width / 2 + u(35, 65)
    track = 2 * (hub + radius * math.sin(math.radians(camber)))
    caster_track = width + u(-10, 60)
    rim, standoff, tyre = radius - u(25, 35), u(30, 50), u(25, 37)
    lean = math.radians(camber)
    half = max(
        hub + standoff * math.cos(lean) + rim * math.sin(lean),
        track / 2 + tyre / 2 * math.cos(lean),
    )
    cushion, hanger, plate = u(30, 80), math.radians(u(55, 85)), u(40, 120)
    front = rear + depth * math.sin(pitch)
    cushion_front = cushion + u(0, 15)
    leg = (front + cushion_front - plate - 9.0) / math.sin(hanger)
    tip = depth + leg * math.cos(hanger) + u(60, 160)
    foremost = max(tip - ahead, wheelbase + caster)
    mass, share, load = u(10, 22), u(0.25, 0.42), u(45, 110)
    on_casters = (mass + load) * u(0.22, 0.42)
    handle = rear + post * math.cos(back) + u(-20, 60)
    open_width = 2 * half - width
    return {
        "seat_to_floor_front": front, "seat_to_floor_rear": rear, "seat_depth": depth,
        "seat_width": width, "seat_angle": math.degrees(pitch), "back_angle": math.degrees(back),
        "back_height": post, "rear_wheel_diameter": 2 * radius, "tyre_width": tyre,
        "hand_rim_diameter": 2 * rim, "hand_rim_standoff": standoff, "caster_diameter": 2 * caster,
        "wheelbase": wheelbase, "rear_track": track, "caster_track": caster_track,
        "diagonal": math.hypot(wheelbase, (track + caster_track) / 2), "camber": float(camber),
        "axle_ahead_of_post": ahead, "axle_below_seat": rear - axle_up,
        "caster_ahead_of_post": ahead + wheelbase, "overall_length": radius + foremost,
        "overall_width": 2 * half,
        "overall_height": max(rear + post * math.cos(back), handle, axle_up + radius),
        "folded_width": open_width + u(30, 120), "cushion_front": cushion_front,
        "cushion_rear": cushion, "arm_pad_height": cushion + u(170, 270),
        "leg_support_length": leg, "hanger_angle": math.degrees(hanger),
        "footplate_clearance": plate, "footplate_ahead_of_post": tip, "push_handle_height": handle,
        "chair_mass": mass, "heaviest_piece": mass * u(0.4, 0.8), "rear_wheel_mass": u(1.2, 2.2),
        "empty_on_rear": mass * (1 - share), "empty_on_casters": mass * share,
        "occupied_on_rear": mass + load - on_casters, "occupied_on_casters": on_casters,
        "load": load, "model_ahead": wheelbase * on_casters / (mass + load) + u(-30, 30),
    }  # fmt: skip


def typed(name: str, value: float) -> str:
    """Write a value as on a form: whole millimetres, tenths of degrees and kilograms."""
    unit = CHAIR_MEASURES[name].unit
    return f"{value:.0f} mm" if unit == "mm" else f"{value:.1f} {unit}"


def reading(name: str, text: str) -> Reading:
    """Make a reading of what was written."""
    kind = CHAIR_MEASURES[name]
    return Reading(name, parse_quantity(text, kind.dimension, name), kind.tolerance, f"f:{name}")


def read_off(
    true: dict[str, float], rng: np.random.Generator
) -> tuple[dict[str, Reading], dict[str, tuple[float, float]]]:
    """Measure a chair, every reading within its half width."""
    found = {}
    for name, value in true.items():
        if name in CHAIR_MEASURES:
            half = CHAIR_MEASURES[name].tolerance
            off = rng.uniform(-half, half) * 0.9
            shown = typed(name, value + off)
            if name == "camber":
                shown = typed(name, max(0.0, value))
            found[name] = reading(name, shown)
    return found, {"load": (true["load"], 2.0), "model_ahead": (true["model_ahead"], 0.0)}


def slipped(text: str, kind: str) -> Iterator[str]:
    """Write every slip of one kind that changes a value."""
    number, unit = text.split(" ")
    sign, digits = ("-", number[1:]) if number.startswith("-") else ("", number)
    for at in range(len(digits)):
        pair = digits[at : at + 2]
        if kind == "doubled" and digits[at] != ".":
            made = digits[: at + 1] + digits[at:]
        elif kind == "dropped" and digits[at] != "." and len(digits) > 1:
            made = digits[:at] + digits[at + 1 :]
        elif kind == "swapped" and len(pair) == 2 and "." not in pair and pair[0] != pair[1]:
            made = digits[:at] + pair[::-1] + digits[at + 2 :]
        else:
            continue
        if made[:1].isdigit() and made[-1:].isdigit() and float(made) != float(digits):
            yield f"{sign}{made} {unit}"
