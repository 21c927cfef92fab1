"""Prices, days, load limits, what is on request and what is made to order, for a small line."""

from __future__ import annotations

from typing import Any

import numpy as np

from .lines import Written

Rng = np.random.Generator

PARTS = (
    "side_frames", "rear_wheels", "cambers", "axle_plates", "casters", "forks", "stem_spacers",
    "hand_rims", "seat_widths", "arm_supports", "seat_depths", "cushions", "back_angles",
    "back_supports", "hangers", "foot_plates", "back_heights", "push_handles", "wheel_locks",
    "anti_tips", "belts", "finishes",
)  # fmt: skip
OPTIONAL = ("stem_spacers", "push_handles", "anti_tips", "belts")
"""Lists of which every part may be on request: not fitted is left."""
SIZES = {
    "seat_width": ("seat_widths", "width_mm"),
    "seat_depth": ("seat_depths", "depth_mm"),
    "back_height": ("back_heights", "height_mm"),
    "leg_length": ("leg_lengths", "length_mm"),
}
MOST_LOAD_KG = 260


def random_terms(data: Written, rng: Rng, made_to_order: int) -> None:
    """Draw them for every part of a line file.

    Parameters
    ----------
    data : dict
        Changed in place.
    rng : numpy.random.Generator
    made_to_order : int
        How many sizes made to order, those counted that are standard as well.
    """
    data["base_price"] = float(rng.integers(200, 900))
    data["build_days"] = int(rng.integers(0, 30))
    data["anti_tip_required"] = bool(data["anti_tips"]) and bool(rng.random() < 0.3)
    for name in PARTS:
        for part in data[name]:
            _priced(part, rng, needs_limit=name == "side_frames")
        _on_request(data, rng, name)
    for part in (*data["fixed_parts"], data["caster_housings"]):
        _priced(part, rng, needs_limit=False)
    data["custom_sizes"] = _custom(data, rng, made_to_order)


def _priced(part: Written, rng: Rng, *, needs_limit: bool) -> None:
    for key in ("price", "days", "load_limit_kg", "on_request"):
        part.pop(key, None)
    if rng.random() < 0.6:
        part["price"] = _price(rng)
    if rng.random() < 0.25:
        part["days"] = int(rng.integers(0, 21))
    if needs_limit or rng.random() < 0.15:
        part["load_limit_kg"] = float(rng.integers(80, MOST_LOAD_KG))


def _price(rng: Rng) -> float:
    """Often round, so that sums tie."""
    if rng.random() < 0.5:
        return float(rng.choice([5, 10, 20, 50, 100]))
    return round(float(rng.uniform(0.0, 200.0)), 2)


def _on_request(data: Written, rng: Rng, name: str) -> None:
    """Some parts only on request, never the last that a chair could have."""
    required = name not in OPTIONAL or (name == "anti_tips" and data["anti_tip_required"])
    parts = data[name]
    for at in rng.permutation(len(parts)):
        left = sum(not part.get("on_request", False) for part in parts)
        if (left > 1 or not required) and rng.random() < 0.2:
            parts[at]["on_request"] = True


def _custom(data: Written, rng: Rng, count: int) -> Written:
    """Ranges beside the standard sizes, some of which they meet."""
    found: Written = {}
    for name in rng.permutation(list(SIZES)):
        more = min(count, int(rng.integers(1, 4)))
        if more:
            found[str(name)] = _range(_standard(data, str(name)), rng, more)
            count -= more
    return found


def _standard(data: Written, name: str) -> list[float]:
    key, field = SIZES[name]
    if name == "leg_length":
        written: Any = data[key]["lengths_mm"]
        return [written["from_mm"]] if isinstance(written, dict) else list(written)
    return [part[field] for part in data[key]]


def _range(standard: list[float], rng: Rng, count: int) -> Written:
    step = float(rng.choice([5.0, 10.0, 12.7]))
    start = float(rng.choice(standard)) + step * float(rng.choice([-2.0, -1.0, 0.0, 0.4, 1.0]))
    light = round(float(rng.uniform(0.0, 1.0)), 2)
    written: Written = {
        "from_mm": round(start, 3),
        "to_mm": round(start + (count - 1) * step + float(rng.choice([0.0, 2.0])), 3),
        "step_mm": step,
        "mass_kg": [light, round(light + float(rng.uniform(0.0, 0.5)), 2)],
        "surcharge": _price(rng),
        "days": int(rng.integers(0, 21)),
    }
    if rng.random() < 0.3:
        written["load_limit_kg"] = float(rng.integers(80, MOST_LOAD_KG))
    return written
