"""Random small lines: a few of the shipped line's parts, with their sizes and masses moved.

Prices, days, load limits, what is only on request, ranges made to order and rules are drawn anew.
"""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np

from chairwright.errors import InputError
from chairwright.line.model import Line

from .lines import Written, everyday_as_written, line_from
from .small_rules import random_rules
from .small_terms import random_terms

Rng = np.random.Generator

FEW_OF = {
    "side_frames": 2, "rear_wheels": 3, "cambers": 2, "hand_rims": 2, "seat_widths": 3,
    "arm_supports": 2, "seat_depths": 3, "cushions": 3, "back_angles": 3, "back_supports": 2,
    "hangers": 2, "foot_plates": 2, "back_heights": 3, "wheel_locks": 2, "finishes": 3,
}  # fmt: skip
"""Lists with at least one part, and how many at most."""
MAYBE = {"stem_spacers": 2, "push_handles": 2, "belts": 2}
"""Lists that may be empty; not fitted counts as one more."""
WITHIN = {
    "axle_plates": 2, "columns": 3, "rows": 3, "forks": 2, "fork_holes": 2, "casters": 2,
    "housings": 2, "housing_rows": 3, "stems": 3, "pads": 2, "lengths": 3, "anti_tip_holes": 3,
    "made_to_order": 5,
}  # fmt: skip
FIRST = {**dict.fromkeys(MAYBE, 0), "anti_tip_holes": 0, "made_to_order": 2}
"""How many a line starts with, where that is not one."""
WITH_NONE = frozenset({*MAYBE, "anti_tip_holes", "made_to_order"})


class Drawn(NamedTuple):
    """A small line, and its file as written."""

    line: Line
    written: Written


def small_line(rng: Rng, largest: int) -> Line:
    """Draw a line with up to about ``largest`` set-ups.

    Parameters
    ----------
    rng : numpy.random.Generator
    largest : int
    """
    return drawn_line(rng, largest).line


def drawn_line(rng: Rng, largest: int) -> Drawn:
    """Draw a line as `small_line` does, and return its file as well.

    Parameters
    ----------
    rng : numpy.random.Generator
    largest : int
    """
    while True:
        written = _drawn(rng, largest)
        try:
            return Drawn(line_from(written), written)
        except InputError:
            continue  # a part that fits no other: the loader is right to refuse it


def _drawn(rng: Rng, largest: int) -> Written:
    data = everyday_as_written()
    data["stem_spacers"].append(
        {"code": "Z20", "name": "20 mm stem spacer", "height_mm": 20, "mass_kg": 0.12}
    )
    count = _counts(rng, largest)
    for name in (*FEW_OF, *MAYBE):
        if name not in {"side_frames", "seat_depths"}:
            data[name] = _some(rng, data[name], count[name])
    _few_frames(data, rng, count)
    _few_plates(data, rng, count)
    _few_casters(data, rng, count)
    _few_lengths(data, rng, count)
    for name in MOVED:
        data[name] = _moved(data[name], rng, name)
    _stepped_or_listed(data, rng)
    _folding(data, rng)
    random_terms(data, rng, count["made_to_order"])
    data["rules"] = random_rules(data, rng)
    return data


def _counts(rng: Rng, largest: int) -> dict[str, int]:
    """How many options of each: one more of something while the product stays small."""
    most = {**FEW_OF, **MAYBE, **WITHIN}
    count, total = {name: FIRST.get(name, 1) for name in most}, 6.0
    for _ in range(200):
        name = str(rng.choice(list(most)))
        now = count[name] + (name in WITH_NONE)
        grown = total * (now + 1) / now
        if count[name] < most[name] and grown <= largest:
            count[name], total = count[name] + 1, grown
    return count


def _some(rng: Rng, items: list[Any], count: int) -> list[Any]:
    """Draw some items in random order."""
    return [items[at] for at in rng.permutation(len(items))[:count]]


def _some_keys(rng: Rng, items: dict[Any, Any], count: int) -> dict[Any, Any]:
    return {key: items[key] for key in _some(rng, list(items), count)}


def _few_frames(data: Written, rng: Rng, count: dict[str, int]) -> None:
    """Side frames, and seat depths: at least one for each frame."""
    frames = data["side_frames"] = _some(rng, data["side_frames"], count["side_frames"])
    depths = _some(rng, data["seat_depths"], len(data["seat_depths"]))
    fits = [[depth for depth in depths if _in_frame(frame, depth)] for frame in frames]
    more = [depth for each in fits for depth in each[1:]]
    kept = [*(each[0] for each in fits), *_some(rng, more, count["seat_depths"] - 1)]
    data["seat_depths"] = [depth for depth in depths if depth in kept]


def _in_frame(frame: Written, depth: Written) -> bool:
    """Whether a depth is made with a frame, whatever it is moved by."""
    low, high = frame["depth_from_mm"] + 12, frame["depth_to_mm"] - 12
    return bool(low <= depth["depth_mm"] <= high)


def _few_plates(data: Written, rng: Rng, count: dict[str, int]) -> None:
    """One axle plate or two, with few holes, some closed; now and then turned round."""
    plates = data["axle_plates"] = _some(rng, data["axle_plates"], count["axle_plates"])
    for plate in plates:
        columns = max(1, count["columns"] // len(plates))
        plate["columns_mm"] = _some_keys(rng, plate["columns_mm"], columns)
        plate["rows_mm"] = _some_keys(rng, plate["rows_mm"], count["rows"])
        holes = [f"{column}{row}" for column in plate["columns_mm"] for row in plate["rows_mm"]]
        if len(holes) > 1 and rng.random() < 0.3:
            plate["closed"] = _some(rng, holes, 1)
        if rng.random() < 0.3:
            plate["turned_about_x_mm"] = float(rng.uniform(-30.0, 20.0))


def _few_casters(data: Written, rng: Rng, count: dict[str, int]) -> None:
    """Forks, casters that one of them takes, housings, stem settings, anti-tip holes."""
    data["forks"] = _some(rng, data["forks"], count["forks"])
    for fork in data["forks"]:
        fork["holes_mm"] = _some_keys(rng, fork["holes_mm"], count["fork_holes"])
    fits = [
        caster
        for caster in data["casters"]
        if any(
            caster["diameter_mm"] <= fork["largest_caster_mm"]
            and caster["diameter_mm"] / 2 + 14 <= max(fork["holes_mm"].values())
            for fork in data["forks"]
        )
    ]
    data["casters"] = _some(rng, fits or data["casters"], count["casters"])
    housings = data["caster_housings"]
    housings["ahead_of_tube_mm"] = _some_keys(rng, housings["ahead_of_tube_mm"], count["housings"])
    housings["rows_mm"] = _some_keys(rng, housings["rows_mm"], count["housing_rows"])
    housings["stem_settings_deg"] = _some(rng, housings["stem_settings_deg"], count["stems"])
    holes = count["anti_tip_holes"]
    data["anti_tips"] = _some(rng, data["anti_tips"], min(1, holes))
    for device in data["anti_tips"]:
        device["holes_mm"] = _some_keys(rng, device["holes_mm"], holes)


def _few_lengths(data: Written, rng: Rng, count: dict[str, int]) -> None:
    """Hanger lengths, pad heights, settings of a solid back, angles of an elevating hanger."""
    lengths = list(range(240, 501, 20))
    data["leg_lengths"]["lengths_mm"] = _some(rng, lengths, count["lengths"])
    for arm in data["arm_supports"]:
        pads = _some(rng, list(range(190, 291, 25)), count["pads"])
        arm["pad_heights_mm"] = pads if len(pads) > 1 or rng.random() < 0.7 else None
    for back in data["back_supports"]:
        if "settings" in back:
            back["settings"] = _some_keys(rng, back["settings"], 2)
    for hanger in data["hangers"]:
        if "angles_deg" in hanger:
            hanger["angles_deg"] = _some(rng, hanger["angles_deg"], 2)


LEAST = {"hub_extra_mm": 0.0, "angle_deg": 0.0, "height_mm": 2.0}
KEPT = {"depth_from_mm", "depth_to_mm", "largest_caster_mm", "thickness_mm"}
TERMS = {"price", "days", "load_limit_kg", "on_request", "flips_up"}
MOVED = (
    *FEW_OF, *MAYBE, "axle_plates", "forks", "casters", "caster_housings", "anti_tips",
    "leg_lengths", "fixed_parts", "folding",
)  # fmt: skip


def _moved(part: Any, rng: Rng, name: str) -> Any:
    """Move every size by a few mm, masses by a fifth, angles by half a degree."""
    if isinstance(part, dict):
        return {key: _moved(value, rng, f"{name}.{key}") for key, value in part.items()}
    if isinstance(part, list):
        return [_moved(value, rng, name) for value in part]
    last = name.rpartition(".")[2]
    if part is None or isinstance(part, str) or last in KEPT | TERMS:
        return part
    if last.endswith(("_kg", "_kgm2")):
        return round(float(part) * rng.uniform(0.8, 1.2), 4)
    moved = float(part) + rng.uniform(-0.5, 0.5) * (1.0 if "deg" in name else 8.0)
    return round(max(moved, LEAST.get(last, -1e9)), 2)


def _stepped_or_listed(data: Written, rng: Rng) -> None:
    """Now and then write the hanger lengths or the pad heights as equal steps."""
    legs = data["leg_lengths"]
    if rng.random() < 0.4:
        legs["lengths_mm"] = _steps(rng, legs["lengths_mm"])
    for arm in data["arm_supports"]:
        if arm["pad_heights_mm"] is None:
            del arm["pad_heights_mm"]
        elif rng.random() < 0.4:
            arm["pad_heights_mm"] = _steps(rng, arm["pad_heights_mm"])


def _steps(rng: Rng, sizes: list[float]) -> Written:
    """As many sizes as were listed, the last step met or not quite."""
    step = round(float(rng.uniform(10.0, 30.0)), 1)
    beyond = round(float(rng.choice([0.0, 0.4])) * step, 2)
    last = round(min(sizes) + (len(sizes) - 1) * step + beyond, 2)
    return {"from_mm": min(sizes), "to_mm": last, "step_mm": step}


def _folding(data: Written, rng: Rng) -> None:
    """A rigid line, or one that folds up to some of its widths."""
    if rng.random() < 0.3:
        data["folding"] = None
        return
    widths = [width["width_mm"] for width in data["seat_widths"]]
    data["folding"]["folds_to_width_mm"] = float(rng.choice(widths)) + float(rng.choice([0, 50]))
