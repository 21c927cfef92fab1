"""From the line file as written to one option for each orderable or adjustable state."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import NamedTuple, TypeVar, cast

from chairwright.line import schema
from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import Choice, Option
from chairwright.reading import YamlSource
from chairwright.yaml_events import KeyPath

Item = TypeVar("Item", bound=schema.Written)


class Made(NamedTuple):
    """An option with the place in the file that it comes from."""

    code: str
    name: str
    numbers: dict[str, float]
    at: KeyPath = ()


def expand_choices(line: schema.WrittenLine, source: YamlSource) -> dict[str, Choice]:
    """Every choice with its options, in the order in which ties are broken.

    Parameters
    ----------
    line : WrittenLine
    source : YamlSource
        The file, for each option's ``file:line``.

    Returns
    -------
    dict of str to Choice
    """
    made = _all_options(line)
    return {
        name: Choice(
            name,
            kind.label,
            tuple(
                Option(each.code, each.name, each.numbers, source.line_of(each.at))
                for each in made[name]
            ),
        )
        for name, kind in CHOICES.items()
    }


def _all_options(line: schema.WrittenLine) -> dict[str, Sequence[Made]]:
    housings = line.caster_housings
    return {
        "side_frame": _each("side_frames", line.side_frames, _side_frame),
        "rear_wheel": _each("rear_wheels", line.rear_wheels, _rear_wheel),
        "camber": _each("cambers", line.cambers, _plain),
        "axle_hole": tuple(_axle_holes(line.axle_plate)),
        "caster": _each("casters", line.casters, _caster),
        "fork": _several("forks", line.forks, _fork),
        "caster_housing": tuple(_housings(housings)),
        "stem_setting": _counted(
            ("caster_housings", "stem_settings_deg"), housings.stem_settings_deg, _stem_setting
        ),
        "seat_depth": _each("seat_depths", line.seat_depths, _seat_depth),
        "cushion": _each("cushions", line.cushions, _cushion),
        "back_angle": _each("back_angles", line.back_angles, _back_angle),
        "back_support": _each("back_supports", line.back_supports, _plain),
        "foot_supports": FOOT_SUPPORTS,
        "hanger": (
            *_each("hangers", line.hangers, _plain),
            _not_fitted("hangers", {"mass_kg": 0.0}),
        ),
        "leg_length": (
            *_counted(("foot_supports", "lengths_mm"), line.foot_supports.lengths_mm, _leg_length),
            _not_fitted("foot_supports", {}),
        ),
        "seat_width": _each("seat_widths", line.seat_widths, _seat_width_on(line)),
        "arm_support": _several("arm_supports", line.arm_supports, _arm),
        "back_height": _each("back_heights", line.back_heights, _back_height),
        "wheel_lock": _each("wheel_locks", line.wheel_locks, _placed),
        "anti_tip": (
            *_several("anti_tips", line.anti_tips, _anti_tip),
            _not_fitted("anti_tips", {"mass_kg": 0.0}),
        ),
    }


def _each(key: str, items: Iterable[Item], make: Callable[[Item], Made]) -> tuple[Made, ...]:
    return tuple(make(item)._replace(at=(key, at)) for at, item in enumerate(items))


def _several(
    key: str, items: Iterable[Item], make: Callable[[Item], Iterator[Made]]
) -> tuple[Made, ...]:
    return tuple(
        made._replace(at=(key, at, *made.at))
        for at, item in enumerate(items)
        for made in make(item)
    )


def _counted(
    key: KeyPath, values: Iterable[float], make: Callable[[float], Made]
) -> tuple[Made, ...]:
    return tuple(make(value)._replace(at=(*key, at)) for at, value in enumerate(values))


def _numbers(item: schema.Written) -> dict[str, float]:
    fields = item.model_dump()
    return {key: float(value) for key, value in fields.items() if isinstance(value, int | float)}


def _plain(item: schema.Written) -> Made:
    fields = item.model_dump()
    return Made(str(fields["code"]), str(fields["name"]), _numbers(item))


def _placed(item: schema.Written) -> Made:
    made = _plain(item)
    x_mm, z_mm = cast("list[float]", item.model_dump()["at_mm"])
    return made._replace(numbers={**made.numbers, "x_mm": x_mm, "z_mm": z_mm})


def _not_fitted(key: str, numbers: dict[str, float]) -> Made:
    return Made(NONE, "not fitted", numbers, (key,))


def _side_frame(frame: schema.SideFrame) -> Made:
    made = _placed(frame)
    x_mm, z_mm = frame.hanger_pivot_mm
    return made._replace(numbers={**made.numbers, "hanger_x_mm": x_mm, "hanger_z_mm": z_mm})


def _rear_wheel(wheel: schema.RearWheel) -> Made:
    made = _plain(wheel)
    radii = {
        "radius_mm": wheel.bead_seat_mm / 2 + wheel.tyre_width_mm,
        "hand_rim_radius_mm": wheel.hand_rim_diameter_mm / 2,
    }
    return made._replace(numbers={**made.numbers, **radii})


def _axle_holes(plate: schema.AxlePlate) -> Iterator[Made]:
    for column, x_mm in plate.columns_mm.items():
        for row, z_mm in plate.rows_mm.items():
            code = f"{column}{row}"
            if code not in plate.closed:
                words = f"axle plate column {column}, row {row}"
                numbers = {"mass_kg": plate.mass_kg, "x_mm": x_mm, "z_mm": z_mm}
                yield Made(code, words, numbers, ("axle_plate", "rows_mm", row))


def _caster(caster: schema.Caster) -> Made:
    made = _plain(caster)
    return made._replace(numbers={**made.numbers, "radius_mm": caster.diameter_mm / 2})


def _fork(fork: schema.Fork) -> Iterator[Made]:
    for hole, drop_mm in fork.holes_mm.items():
        numbers = {
            "trail_mm": fork.trail_mm,
            "drop_mm": drop_mm,
            "largest_radius_mm": fork.largest_caster_mm / 2,
            "mass_kg": fork.mass_kg,
        }
        words = f"{fork.name}, hole {hole} of {len(fork.holes_mm)}"
        yield Made(f"{fork.code}-{hole}", words, numbers, ("holes_mm", hole))


def _housings(housings: schema.CasterHousings) -> Iterator[Made]:
    for side, ahead_mm in housings.ahead_of_tube_mm.items():
        for row, z_mm in housings.rows_mm.items():
            words = f"{side}, height hole {row}"
            numbers = {"ahead_mm": ahead_mm, "z_mm": z_mm, "mass_kg": housings.mass_kg}
            at = ("caster_housings", "rows_mm", row)
            yield Made(f"{side[0].upper()}{row}", words, numbers, at)


def _stem_setting(angle_deg: float) -> Made:
    sense = "forward" if angle_deg < 0 else "back"
    words = f"stem turned {abs(angle_deg):g} degrees {sense}" if angle_deg else "stem as drawn"
    code = f"N{angle_deg + 0.0:g}".replace("-", "F")
    return Made(code, words, {"angle_deg": angle_deg})


def _seat_depth(item: schema.SeatDepth) -> Made:
    return Made(item.code, f"{item.depth_mm:g} mm", _numbers(item))


def _cushion(cushion: schema.Cushion) -> Made:
    made = _plain(cushion)
    heights = {"rear_mm": cushion.loaded_rear_mm, "front_mm": cushion.loaded_front_mm}
    return made._replace(numbers={**made.numbers, **heights})


def _back_angle(item: schema.BackAngle) -> Made:
    return Made(item.code, f"{item.angle_deg:g} degrees behind square", _numbers(item))


def _back_height(item: schema.BackHeight) -> Made:
    return Made(item.code, f"{item.height_mm:g} mm", _numbers(item))


def _seat_width_on(line: schema.WrittenLine) -> Callable[[schema.SeatWidth], Made]:
    """The cross-brace lies where the side frames lie on average."""
    count = len(line.side_frames)
    x_mm = sum(frame.at_mm[0] for frame in line.side_frames) / count
    z_mm = sum(frame.at_mm[1] for frame in line.side_frames) / count

    def make(item: schema.SeatWidth) -> Made:
        numbers = {**_numbers(item), "x_mm": x_mm, "z_mm": z_mm}
        return Made(item.code, f"{item.width_mm:g} mm", numbers)

    return make


def _arm(arm: schema.ArmSupport) -> Iterator[Made]:
    for at, pad_mm in enumerate(arm.pad_heights_mm):
        words = f"{arm.name}, pad {pad_mm:g} mm above the seat rail"
        numbers = {**_numbers(arm), "pad_height_mm": pad_mm}
        yield Made(f"{arm.code}-{pad_mm:g}", words, numbers, ("pad_heights_mm", at))


def _leg_length(length_mm: float) -> Made:
    return Made(f"G{length_mm:g}", f"{length_mm:g} mm along the hanger", {"length_mm": length_mm})


def _anti_tip(device: schema.AntiTip) -> Iterator[Made]:
    for hole, z_mm in device.holes_mm.items():
        words = f"{device.name}, hole {hole} of {len(device.holes_mm)}"
        numbers = {
            "x_mm": device.wheel_x_mm,
            "z_mm": z_mm,
            "wheel_radius_mm": device.wheel_radius_mm,
            "mass_kg": device.mass_kg,
        }
        yield Made(f"{device.code}-{hole}", words, numbers, ("holes_mm", hole))


FOOT_SUPPORTS = (
    Made("both", "both sides", {"left": 1.0, "right": 1.0}, ("foot_supports",)),
    Made("left", "left side only", {"left": 1.0, "right": 0.0}, ("foot_supports",)),
    Made("right", "right side only", {"left": 0.0, "right": 1.0}, ("foot_supports",)),
    Made(NONE, "no foot support", {"left": 0.0, "right": 0.0}, ("foot_supports",)),
)
