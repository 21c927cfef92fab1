"""One kind of part after the other: from its entry in the file to its options."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import NamedTuple, cast

from chairwright.line import parts, schema
from chairwright.line.choices import NONE
from chairwright.line.model import OptionKind
from chairwright.line.size_words import Units, size_code, size_words
from chairwright.yaml_events import KeyPath

NO_TERMS = {"price": 0.0, "surcharge": 0.0, "extra_days": 0.0, "load_limit_kg": math.inf}
"""Price, days and load limit of what has none of its own."""


class Made(NamedTuple):
    """An option with the place in the file that it comes from."""

    code: str
    name: str
    numbers: dict[str, float]
    at: KeyPath = ()
    part: str = ""
    kind: OptionKind = "standard"


def terms(item: parts.Written) -> dict[str, float]:
    """Price, extra days and load limit of a part."""
    if not isinstance(item, parts.Priced):
        return NO_TERMS
    limit = math.inf if item.load_limit_kg is None else item.load_limit_kg
    return {"price": item.price, "extra_days": float(item.days), "load_limit_kg": limit}


def kind_of(item: parts.Written) -> OptionKind:
    """Whether a part is offered to everybody or only on request."""
    return "on request" if isinstance(item, parts.Priced) and item.on_request else "standard"


def _numbers(item: parts.Written) -> dict[str, float]:
    fields = item.model_dump(exclude={"price", "days", "load_limit_kg", "on_request"})
    plain = {
        key: float(value)
        for key, value in fields.items()
        if isinstance(value, int | float) and not isinstance(value, bool)
    }
    return {**plain, **terms(item)}


def _of(item: parts.Written, code: str, name: str, numbers: dict[str, float]) -> Made:
    part = str(getattr(item, "code", ""))
    return Made(code, name, {**_numbers(item), **numbers}, part=part, kind=kind_of(item))


def plain(item: parts.Written) -> Made:
    """A part whose figures are its fields."""
    fields = item.model_dump()
    return _of(item, str(fields["code"]), str(fields["name"]), {})


def placed(item: parts.Written) -> Made:
    """A part with a place in frame axes."""
    made = plain(item)
    x_mm, z_mm = cast("list[float]", item.model_dump()["at_mm"])
    return made._replace(numbers={**made.numbers, "x_mm": x_mm, "z_mm": z_mm})


def not_fitted(key: str, **numbers: float) -> Made:
    """The option that a thing is not fitted."""
    return Made(NONE, "not fitted", {"mass_kg": 0.0, **numbers}, (key,))


def side_frame(frame: parts.SideFrame) -> Made:
    """A side frame with its hanger pivot."""
    made = placed(frame)
    x_mm, z_mm = frame.hanger_pivot_mm
    return made._replace(numbers={**made.numbers, "hanger_x_mm": x_mm, "hanger_z_mm": z_mm})


ROLLING_MM = {"air": 2.4, "solid": 4.6}
"""Rolling length of a rear tyre where the line gives none: 0.008 and 0.015 of a radius of 305 mm
(from memory, unverified)."""

CASTER_ROLLING_MM = 1.5
"""Rolling length of a caster where the line gives none: 0.02 of a radius of 75 mm, 0.03 of 50 mm
(from memory, unverified)."""


def rear_wheel(wheel: parts.RearWheel) -> Made:
    """A rear wheel: outside radius from bead seat and tyre."""
    radius = wheel.bead_seat_mm / 2 + wheel.tyre_width_mm
    numbers = {
        "radius_mm": radius,
        "hand_rim_radius_mm": wheel.hand_rim_diameter_mm / 2,
        "air": float(wheel.tyre == "air"),
        **_turning(wheel, radius, ROLLING_MM[wheel.tyre]),
    }
    return _of(wheel, wheel.code, wheel.name, numbers)


def _turning(
    wheel: parts.RearWheel | parts.Caster, radius_mm: float, usual_mm: float
) -> dict[str, float]:
    """What a wheel turns with: spin inertia of the pair, a disc's if not given; rolling length."""
    given, length = wheel.spin_inertia_kgm2, wheel.rolling_mm
    disc = wheel.mass_kg * (radius_mm / 1000.0) ** 2 / 2.0
    return {
        "spin_inertia_kgm2": disc if given is None else given,
        "rolling_mm": usual_mm if length is None else length,
        "rolling_assumed": float(length is None),
    }


def hand_rim(rim: parts.HandRim) -> Made:
    """A hand rim that is fitted."""
    return _of(rim, rim.code, rim.name, {"fitted": 1.0})


def axle_holes(plate: parts.AxlePlate) -> Iterator[Made]:
    """Every open hole of a plate, and again with the plate turned round when it can be."""
    about = plate.turned_about_x_mm
    for turned in (False,) if about is None else (False, True):
        for column, x_mm in plate.columns_mm.items():
            for row, z_mm in plate.rows_mm.items():
                if f"{column}{row}" not in plate.closed:
                    at: KeyPath = ("rows_mm", row)
                    x_here = 2 * about - x_mm if turned and about is not None else x_mm
                    words = f"{plate.name}{', turned round' if turned else ''}, "
                    words += f"column {column}, row {row}"
                    code = f"{column}{row}{'R' if turned else ''}"
                    place = {"x_mm": x_here, "z_mm": z_mm}
                    yield _of(plate, code, words, place)._replace(at=at)


def caster(caster: parts.Caster) -> Made:
    """A caster."""
    radius = caster.diameter_mm / 2
    numbers = {"radius_mm": radius, **_turning(caster, radius, CASTER_ROLLING_MM)}
    return _of(caster, caster.code, caster.name, numbers)


def fork(fork: parts.Fork) -> Iterator[Made]:
    """A fork with each of its holes."""
    for hole, drop_mm in fork.holes_mm.items():
        numbers = {"drop_mm": drop_mm, "largest_radius_mm": fork.largest_caster_mm / 2}
        words = f"{fork.name}, hole {hole} of {len(fork.holes_mm)}"
        yield _of(fork, f"{fork.code}-{hole}", words, numbers)._replace(at=("holes_mm", hole))


def housings(housings: parts.CasterHousings) -> Iterator[Made]:
    """The housings ahead of the tube and behind it, at each height hole."""
    for side, ahead_mm in housings.ahead_of_tube_mm.items():
        for row, z_mm in housings.rows_mm.items():
            words = f"{side}, height hole {row}"
            at: KeyPath = ("caster_housings", "rows_mm", row)
            made = _of(housings, f"{side[0].upper()}{row}", words, {})
            numbers = {**made.numbers, "ahead_mm": ahead_mm, "z_mm": z_mm}
            yield made._replace(numbers=numbers, at=at)


def stem_setting(angle_deg: float) -> Made:
    """A step by which the stem is squared again."""
    sense = "forward" if angle_deg < 0 else "back"
    words = f"stem turned {abs(angle_deg):g} degrees {sense}" if angle_deg else "stem as drawn"
    code = f"N{angle_deg + 0.0:g}".replace("-", "F")
    return Made(code, words, {"angle_deg": angle_deg})


def seat_depth(typed_in: Units) -> Callable[[parts.SeatDepth], Made]:
    """Seat depths, named in the maker's units."""
    return lambda item: _of(item, item.code, size_words(item.depth_mm, typed_in), {})


def back_height(typed_in: Units) -> Callable[[parts.BackHeight], Made]:
    """Back heights, named in the maker's units."""
    return lambda item: _of(item, item.code, size_words(item.height_mm, typed_in), {})


def seat_width(line: schema.WrittenLine) -> Callable[[parts.SeatWidth], Made]:
    """Seat widths; the cross-brace lies where the side frames lie on average."""
    count = len(line.side_frames)
    x_mm = sum(frame.at_mm[0] for frame in line.side_frames) / count
    z_mm = sum(frame.at_mm[1] for frame in line.side_frames) / count
    place = {"x_mm": x_mm, "z_mm": z_mm}
    return lambda item: _of(item, item.code, size_words(item.width_mm, line.typed_in), place)


def cushion(cushion: parts.Cushion) -> Made:
    """A cushion with its loaded heights."""
    heights = {"rear_mm": cushion.loaded_rear_mm, "front_mm": cushion.loaded_front_mm}
    return _of(cushion, cushion.code, cushion.name, heights)


def back_angle(item: parts.BackAngle) -> Made:
    """A back angle."""
    return _of(item, item.code, f"{item.angle_deg:g} degrees behind square", {})


def back_support(back: parts.BackSupport) -> Iterator[Made]:
    """A sling as one option, a solid back with each of its settings."""
    if back.settings is None:
        behind = 0.0 if back.behind_post_mm is None else back.behind_post_mm
        yield _of(back, back.code, back.name, {"behind_post_mm": behind, "tilt_deg": 0.0})
        return
    for hole, place in back.settings.items():
        tilt = f", {place.tilt_deg:+g} degrees to the post" if place.tilt_deg else ""
        words = f"{back.name}, setting {hole}: {place.behind_post_mm:g} mm behind the post{tilt}"
        numbers = {"behind_post_mm": place.behind_post_mm, "tilt_deg": place.tilt_deg}
        yield _of(back, f"{back.code}-{hole}", words, numbers)._replace(at=("settings", hole))


def arm(typed_in: Units) -> Callable[[parts.ArmSupport], Iterator[Made]]:
    """An arm support with each pad height; a side guard as one option."""

    def make(arm: parts.ArmSupport) -> Iterator[Made]:
        if arm.pad_heights_mm is None:
            yield _of(arm, arm.code, arm.name, {})
            return
        for at, pad_mm in enumerate(parts.sizes_of(arm.pad_heights_mm)):
            words = f"{arm.name}, pad {size_words(pad_mm, typed_in)} above the seat rail"
            here = () if isinstance(arm.pad_heights_mm, parts.Steps) else (at,)
            code = f"{arm.code}-{size_code(pad_mm, typed_in)}"
            made = _of(arm, code, words, {"pad_height_mm": pad_mm})
            yield made._replace(at=("pad_heights_mm", *here))

    return make


def hanger(hanger: parts.Hanger) -> Iterator[Made]:
    """A fixed hanger as one option, an elevating one at each of its angles."""
    if hanger.angles_deg is None:
        angle = 0.0 if hanger.angle_deg is None else hanger.angle_deg
        yield _of(hanger, hanger.code, hanger.name, {"angle_deg": angle})
        return
    for at, angle_deg in enumerate(hanger.angles_deg):
        words = f"{hanger.name}, set at {angle_deg:g} degrees"
        made = _of(hanger, f"{hanger.code}-{angle_deg:g}", words, {"angle_deg": angle_deg})
        yield made._replace(at=("angles_deg", at))


def leg_length(typed_in: Units) -> Callable[[float], Made]:
    """A hanger length."""

    def make(length_mm: float) -> Made:
        words = f"{size_words(length_mm, typed_in)} along the hanger"
        return Made(f"G{size_code(length_mm, typed_in)}", words, {"length_mm": length_mm})

    return make


def anti_tip(device: parts.AntiTip) -> Iterator[Made]:
    """An anti-tip device with each of its height holes."""
    for hole, z_mm in device.holes_mm.items():
        words = f"{device.name}, hole {hole} of {len(device.holes_mm)}"
        numbers = {
            "x_mm": device.wheel_x_mm,
            "z_mm": z_mm,
            "flips_up": float(device.flips_up),
        }
        made = _of(device, f"{device.code}-{hole}", words, numbers)
        yield made._replace(at=("holes_mm", hole))


FOOT_SUPPORTS = (
    Made("both", "both sides", {"left": 1.0, "right": 1.0}, ("leg_lengths",)),
    Made("left", "left side only", {"left": 1.0, "right": 0.0}, ("leg_lengths",)),
    Made("right", "right side only", {"left": 0.0, "right": 1.0}, ("leg_lengths",)),
    Made(NONE, "no foot support", {"left": 0.0, "right": 0.0}, ("leg_lengths",)),
)
