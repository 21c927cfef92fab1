"""From the line file as written to one option for each orderable or adjustable state."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import TypeVar

from chairwright.line import made, parts, schema
from chairwright.line.choices import CHOICES
from chairwright.line.made import FOOT_SUPPORTS, Made, not_fitted
from chairwright.line.made_to_order import custom_sizes
from chairwright.line.model import Choice, Option
from chairwright.reading import YamlSource
from chairwright.yaml_events import KeyPath

Item = TypeVar("Item", bound=parts.Written)


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
        Sizes made to order follow the standard ones.
    """
    options = {**_running_gear(line), **_seat_and_back(line), **_feet(line), **_rest(line)}
    return {
        name: Choice(name, kind.label, tuple(_option(each, source) for each in options[name]))
        for name, kind in CHOICES.items()
    }


def _option(each: Made, source: YamlSource) -> Option:
    numbers = {**made.NO_TERMS, **each.numbers}
    where = source.line_of(each.at)
    return Option(each.code, each.name, numbers, where, each.part, each.kind)


def _running_gear(line: schema.WrittenLine) -> dict[str, Sequence[Made]]:
    housings, settings = line.caster_housings, line.caster_housings.stem_settings_deg
    return {
        "side_frame": _each("side_frames", line.side_frames, made.side_frame),
        "rear_wheel": _each("rear_wheels", line.rear_wheels, made.rear_wheel),
        "camber": _each("cambers", line.cambers, made.plain),
        "axle_hole": _several("axle_plates", line.axle_plates, made.axle_holes),
        "caster": _each("casters", line.casters, made.caster),
        "fork": _several("forks", line.forks, made.fork),
        "stem_spacer": (
            not_fitted("stem_spacers", height_mm=0.0),
            *_each("stem_spacers", line.stem_spacers, made.plain),
        ),
        "caster_housing": tuple(made.housings(housings)),
        "stem_setting": _counted(
            ("caster_housings", "stem_settings_deg"), settings, made.stem_setting
        ),
        "hand_rim": (
            *_each("hand_rims", line.hand_rims, made.hand_rim),
            not_fitted("hand_rims", standoff_mm=0.0, fitted=0.0),
        ),
    }


def _seat_and_back(line: schema.WrittenLine) -> dict[str, Sequence[Made]]:
    custom, words = line.custom_sizes, line.typed_in
    return {
        "seat_width": custom_sizes(
            "seat_width",
            custom.seat_width,
            _each("seat_widths", line.seat_widths, made.seat_width(line)),
            words,
        ),
        "arm_support": _several("arm_supports", line.arm_supports, made.arm(words)),
        "seat_depth": custom_sizes(
            "seat_depth",
            custom.seat_depth,
            _each("seat_depths", line.seat_depths, made.seat_depth(words)),
            words,
        ),
        "cushion": _each("cushions", line.cushions, made.cushion),
        "back_angle": _each("back_angles", line.back_angles, made.back_angle),
        "back_support": _several("back_supports", line.back_supports, made.back_support),
        "back_height": custom_sizes(
            "back_height",
            custom.back_height,
            _each("back_heights", line.back_heights, made.back_height(words)),
            words,
        ),
    }


def _feet(line: schema.WrittenLine) -> dict[str, Sequence[Made]]:
    lengths = parts.sizes_of(line.leg_lengths.lengths_mm)
    at: KeyPath = ("leg_lengths", "lengths_mm")
    stepped = isinstance(line.leg_lengths.lengths_mm, parts.Steps)
    make = made.leg_length(line.typed_in)
    standard = (
        tuple(make(length)._replace(at=at) for length in lengths)
        if stepped
        else _counted(at, lengths, make)
    )
    return {
        "foot_supports": FOOT_SUPPORTS,
        "hanger": (*_several("hangers", line.hangers, made.hanger), not_fitted("hangers")),
        "foot_plate": (
            *_each("foot_plates", line.foot_plates, made.plain),
            not_fitted("foot_plates"),
        ),
        "leg_length": (
            *custom_sizes("leg_length", line.custom_sizes.leg_length, standard, line.typed_in),
            not_fitted("leg_lengths"),
        ),
    }


def _rest(line: schema.WrittenLine) -> dict[str, Sequence[Made]]:
    no_handles = not_fitted("push_handles", behind_mm=0.0, above_mm=0.0)
    no_device = not_fitted("anti_tips")
    if any(not each.on_request for each in line.push_handles):
        no_handles = no_handles._replace(kind="on request")
    if line.anti_tip_required:
        no_device = no_device._replace(kind="on request")
    return {
        "push_handle": (*_each("push_handles", line.push_handles, made.plain), no_handles),
        "wheel_lock": _each("wheel_locks", line.wheel_locks, made.placed),
        "anti_tip": (*_several("anti_tips", line.anti_tips, made.anti_tip), no_device),
        "belt": (
            not_fitted("belts", x_mm=0.0, z_mm=0.0),
            *_each("belts", line.belts, made.placed),
        ),
        "finish": _each("finishes", line.finishes, made.plain),
    }


def _each(key: str, items: Iterable[Item], make: Callable[[Item], Made]) -> tuple[Made, ...]:
    return tuple(make(item)._replace(at=(key, at)) for at, item in enumerate(items))


def _several(
    key: str, items: Iterable[Item], make: Callable[[Item], Iterator[Made]]
) -> tuple[Made, ...]:
    return tuple(
        each._replace(at=(key, at, *each.at))
        for at, item in enumerate(items)
        for each in make(item)
    )


def _counted(
    key: KeyPath, values: Iterable[float], make: Callable[[float], Made]
) -> tuple[Made, ...]:
    return tuple(make(value)._replace(at=(*key, at)) for at, value in enumerate(values))
