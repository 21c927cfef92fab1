"""What a line file says, read straight from its text form: options, terms, what goes together.

Nothing of the program's line room is used, so that codes, prices, days, load limits, kinds and
rules that the program makes of a file can be compared with these.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from .lines import Written

Index = dict[str, NDArray[np.intp]]
Options = dict[str, list["Said"]]


class Said(NamedTuple):
    """One option as the file says it; ``own`` holds the part's entry."""

    code: str
    part: str = ""
    size: float = math.nan
    own: Written = {}  # noqa: RUF012  (never changed)
    kind: str = "standard"
    surcharge: float = 0.0

    @property
    def price(self) -> float:
        """Price; a size made to order costs its surcharge."""
        return float(self.own.get("price", 0.0)) + self.surcharge

    @property
    def days(self) -> float:
        """Days that it adds to the delivery when nothing takes longer."""
        return float(self.own.get("days", 0.0))

    @property
    def limit_kg(self) -> float:
        """Load limit; infinite when it has none."""
        return float(self.own.get("load_limit_kg", math.inf))


NOT_FITTED = Said("none")


def said(data: Written) -> Options:
    """Every option of every choice, in the file's order.

    Parameters
    ----------
    data : dict
        A line file in mm, as read from YAML.
    """
    housings = data["caster_housings"]
    rows = [f"{side[0].upper()}{row}" for side in housings["ahead_of_tube_mm"]
            for row in housings["rows_mm"]]  # fmt: skip
    stems = housings["stem_settings_deg"]
    found = {
        "side_frame": _plain(data["side_frames"]),
        "rear_wheel": _plain(data["rear_wheels"], "bead_seat_mm"),
        "camber": _plain(data["cambers"], "angle_deg"),
        "axle_hole": _several(data["axle_plates"], _holes),
        "caster": _plain(data["casters"], "diameter_mm"),
        "fork": _several(data["forks"], _numbered("holes_mm")),
        "stem_spacer": [NOT_FITTED._replace(size=0.0), *_plain(data["stem_spacers"], "height_mm")],
        "caster_housing": [Said(code, housings["code"], own=housings) for code in rows],
        "stem_setting": [Said(f"N{a + 0.0:g}".replace("-", "F"), size=a) for a in stems],
        "hand_rim": [*_plain(data["hand_rims"]), NOT_FITTED],
        "seat_width": [*_plain(data["seat_widths"], "width_mm"), *_ordered(data, "seat_width")],
        "arm_support": _several(data["arm_supports"], _pads),
        "seat_depth": [*_plain(data["seat_depths"], "depth_mm"), *_ordered(data, "seat_depth")],
        "cushion": _plain(data["cushions"]),
        "back_angle": _plain(data["back_angles"], "angle_deg"),
        "back_support": _several(data["back_supports"], _numbered("settings")),
        "foot_supports": [Said(code) for code in ("both", "left", "right", "none")],
        "hanger": [*_several(data["hangers"], _angles), NOT_FITTED],
        "foot_plate": [*_plain(data["foot_plates"], "length_mm"), NOT_FITTED],
        "leg_length": [*_lengths(data), *_ordered(data, "leg_length"), NOT_FITTED],
        "back_height": [*_plain(data["back_heights"], "height_mm"), *_ordered(data, "back_height")],
        "push_handle": [*_plain(data["push_handles"]), NOT_FITTED],
        "wheel_lock": _plain(data["wheel_locks"]),
        "anti_tip": [*_several(data["anti_tips"], _numbered("holes_mm")), NOT_FITTED],
        "belt": [NOT_FITTED, *_plain(data["belts"])],
        "finish": _plain(data["finishes"]),
    }  # fmt: skip
    return {name: [_with_kind(data, name, each) for each in all_] for name, all_ in found.items()}


def _plain(parts: list[Written], size: str = "") -> list[Said]:
    return [Said(p["code"], p["code"], float(p.get(size, math.nan)), p) for p in parts]


def _several(parts: list[Written], codes: Callable[[Written], Iterator[Said]]) -> list[Said]:
    return [each._replace(part=part["code"], own=part) for part in parts for each in codes(part)]


def _numbered(key: str) -> Callable[[Written], Iterator[Said]]:
    """Codes like FM-2 of a part with numbered holes; the part's own code when it has none."""

    def codes(part: Written) -> Iterator[Said]:
        holes = part.get(key)
        yield from (
            [Said(part["code"])]
            if holes is None
            else (Said(f"{part['code']}-{hole}") for hole in holes)
        )

    return codes


def _holes(plate: Written) -> Iterator[Said]:
    """Open holes, then the same with the plate turned round."""
    for end in ("", "R") if plate.get("turned_about_x_mm") is not None else ("",):
        for column in plate["columns_mm"]:
            for row in plate["rows_mm"]:
                if f"{column}{row}" not in plate.get("closed", ()):
                    yield Said(f"{column}{row}{end}")


def _steps(written: Any) -> list[float]:
    """A list of sizes, or the sizes of a stepped range."""
    if not isinstance(written, dict):
        return [float(size) for size in written]
    sizes, at = [], 0
    while (size := written["from_mm"] + at * written["step_mm"]) <= written["to_mm"] + 1e-6:
        sizes.append(round(size, 6))
        at += 1
    return sizes


def _pads(arm: Written) -> Iterator[Said]:
    pads = arm.get("pad_heights_mm")
    yield from (
        [Said(arm["code"])]
        if pads is None
        else (Said(f"{arm['code']}-{pad:g}") for pad in _steps(pads))
    )


def _angles(hanger: Written) -> Iterator[Said]:
    if "angles_deg" not in hanger:
        yield Said(hanger["code"], size=hanger["angle_deg"])
    else:
        for angle in hanger["angles_deg"]:
            yield Said(f"{hanger['code']}-{angle:g}", size=angle)


def _lengths(data: Written) -> list[Said]:
    sizes = _steps(data["leg_lengths"]["lengths_mm"])
    return [Said(f"G{size:g}", size=size) for size in sizes]


MADE = {
    "seat_width": ("S", "seat_widths", "width_mm"),
    "seat_depth": ("D", "seat_depths", "depth_mm"),
    "back_height": ("P", "back_heights", "height_mm"),
    "leg_length": ("G", "", ""),
}


def _ordered(data: Written, name: str) -> list[Said]:
    """Sizes made to order: those of the range that are not standard already."""
    custom = (data.get("custom_sizes") or {}).get(name)
    if custom is None:
        return []
    letter, key, field = MADE[name]
    standard = [p[field] for p in data[key]] if key else [each.size for each in _lengths(data)]
    own = {key: custom[key] for key in ("days", "load_limit_kg") if key in custom}
    return [
        Said(f"M{letter}{size:g}", "", size, own, "made to order", float(custom["surcharge"]))
        for size in _steps(custom)
        if all(abs(size - each) > 0.5 for each in standard)
    ]


def _with_kind(data: Written, name: str, option: Said) -> Said:
    """On request: as marked; no handles where there are some; no device where one is required."""
    asked = bool(option.own.get("on_request", False))
    if option.code == "none":
        handles = any(not part.get("on_request", False) for part in data["push_handles"])
        asked = (name == "push_handle" and handles) or (
            name == "anti_tip" and bool(data["anti_tip_required"])
        )
    return option._replace(kind="on request") if asked else option
