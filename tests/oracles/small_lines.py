"""Random small lines: a few of the shipped line's parts, with their sizes and masses jittered."""

from __future__ import annotations

from typing import Any

import numpy as np

from chairwright.errors import InputError
from chairwright.line.model import Line

from .lines import Written, everyday_as_written, line_from

Rng = np.random.Generator
MOST_OPTIONS = {
    "side_frames": 2, "rear_wheels": 3, "cambers": 2, "columns": 4, "rows": 4, "casters": 2,
    "fork_holes": 3, "housings": 2, "housing_rows": 3, "stems": 3, "seat_depths": 3,
    "cushions": 3, "back_angles": 3, "back_supports": 2, "hangers": 2, "lengths": 3,
    "seat_widths": 3, "arm_pads": 3, "back_heights": 2, "wheel_locks": 2, "anti_tip_holes": 2,
}  # fmt: skip
LISTS = (
    "side_frames", "rear_wheels", "cambers", "casters", "seat_depths", "cushions", "back_angles",
    "back_supports", "hangers", "seat_widths", "back_heights", "wheel_locks",
)  # fmt: skip
CHOICES_OF = {"side_frames": "side_frame", "rear_wheels": "rear_wheel", "cambers": "camber"}
CHOICES_OF.update({name: name[:-1] for name in LISTS if name not in CHOICES_OF})


def small_line(rng: Rng, largest: int) -> Line:
    """Draw a line with up to about ``largest`` set-ups.

    Parameters
    ----------
    rng : numpy.random.Generator
    largest : int
    """
    while True:
        try:
            return line_from(_drawn(rng, largest))
        except InputError:
            continue  # a part that fits no other: the loader is right to refuse it


def _drawn(rng: Rng, largest: int) -> Written:
    data = everyday_as_written()
    count = _counts(rng, largest)
    _few_frames(data, rng, count)
    for name in LISTS:
        if name not in {"side_frames", "seat_depths", "casters"}:
            data[name] = _some(rng, data[name], count[name])
    plate, housings = data["axle_plate"], data["caster_housings"]
    plate["columns_mm"] = _some_keys(rng, plate["columns_mm"], count["columns"])
    plate["rows_mm"] = _some_keys(rng, plate["rows_mm"], count["rows"])
    housings["ahead_of_tube_mm"] = _some_keys(rng, housings["ahead_of_tube_mm"], count["housings"])
    housings["rows_mm"] = _some_keys(rng, housings["rows_mm"], count["housing_rows"])
    housings["stem_settings_deg"] = _some(rng, housings["stem_settings_deg"], count["stems"])
    data["casters"] = _some(rng, data["casters"][:3], count["casters"])
    data["forks"] = _some(rng, data["forks"][1:], 1)
    data["forks"][0]["holes_mm"] = _some_keys(
        rng, data["forks"][0]["holes_mm"], count["fork_holes"]
    )
    legs = data["foot_supports"]
    legs["lengths_mm"] = _some(rng, legs["lengths_mm"], count["lengths"])
    data["arm_supports"] = _some(rng, data["arm_supports"], 1 + int(rng.integers(2)))
    for arm in data["arm_supports"]:
        pads = max(1, count["arm_pads"] // len(data["arm_supports"]))
        arm["pad_heights_mm"] = _some(rng, arm["pad_heights_mm"], pads)
    data["anti_tips"] = _some(rng, data["anti_tips"], 1)
    tube = data["anti_tips"][0]
    tube["holes_mm"] = _some_keys(rng, tube["holes_mm"], count["anti_tip_holes"])
    for name, part in data.items():
        data[name] = _jittered(part, rng, name)
    data["rules"] = _rules(data, rng)
    return data


def _counts(rng: Rng, largest: int) -> dict[str, int]:
    """How many options of each; anti-tip counts one more, for none fitted."""
    count, total = dict.fromkeys(MOST_OPTIONS, 1), 2.0
    for _ in range(200):
        name = str(rng.choice(list(MOST_OPTIONS)))
        now = count[name]
        grown = (
            total * (now + 2) / (now + 1) if name == "anti_tip_holes" else total * (now + 1) / now
        )
        if now < MOST_OPTIONS[name] and grown <= largest:
            count[name], total = now + 1, grown
    return count


def _few_frames(data: Written, rng: Rng, count: dict[str, int]) -> None:
    """Side frames, and seat depths that at least one of them takes."""
    frames = data["side_frames"] = _some(rng, data["side_frames"], count["side_frames"])
    fits = [
        depth
        for depth in data["seat_depths"]
        if any(
            f["depth_from_mm"] + 12 <= depth["depth_mm"] <= f["depth_to_mm"] - 12 for f in frames
        )
    ]
    data["seat_depths"] = _some(rng, fits, count["seat_depths"])


def _some(rng: Rng, items: list[Any], count: int) -> list[Any]:
    """Draw some items in random order."""
    return [items[at] for at in rng.permutation(len(items))[:count]]


def _some_keys(rng: Rng, items: dict[Any, Any], count: int) -> dict[Any, Any]:
    return {key: items[key] for key in _some(rng, list(items), count)}


LEAST = {"hub_extra_mm": 0.0, "angle_deg": 0.0}
KEPT = {"depth_from_mm", "depth_to_mm", "largest_caster_mm", "plate_thickness_mm"}


def _jittered(part: Any, rng: Rng, name: str) -> Any:
    """Move every size by a few mm, masses by a fifth, angles by half a degree."""
    if isinstance(part, dict):
        return {key: _jittered(value, rng, f"{name}.{key}") for key, value in part.items()}
    if isinstance(part, list):
        return [_jittered(value, rng, name) for value in part]
    last = name.rpartition(".")[2]
    if isinstance(part, str) or last in KEPT:
        return part
    if last.endswith(("_kg", "_kgm2")):
        return round(float(part) * rng.uniform(0.8, 1.2), 4)
    moved = float(part) + rng.uniform(-0.5, 0.5) * (1.0 if "deg" in last else 8.0)
    return round(max(moved, LEAST.get(last, -1e9)), 2)


def _rules(data: Written, rng: Rng) -> list[Written]:
    """Up to three random rules between parts that the line still has."""
    codes = {CHOICES_OF[name]: [part["code"] for part in data[name]] for name in LISTS}
    several = [name for name, known in codes.items() if len(known) > 1]
    rules: list[Written] = []
    while len(several) > 1 and rng.random() < 0.6 and len(rules) < 3:
        when, need = (str(name) for name in rng.permutation(several)[:2])
        rules.append(
            {
                "when": {when: _some(rng, codes[when], 1)},
                "need": {need: _some(rng, codes[need], len(codes[need]) - 1)},
                "because": "drawn for a test",
            }
        )
    return rules
