"""From the line file as written to choices with one option per orderable or adjustable state."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import cast

from chairwright.line import schema
from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import Choice, FixedPart, FootPlate, Line, Option, Rule

OptionParts = tuple[str, str, dict[str, float]]


def build_line(written: schema.WrittenLine, path: str) -> Line:
    """Turn a checked line file into the line that the engineering uses.

    Parameters
    ----------
    written : WrittenLine
    path : str
        Where it was read from, for messages.

    Returns
    -------
    Line
    """
    options = _all_options(written)
    choices = {
        name: Choice(
            name, kind.label, tuple(Option(code, words, nums) for code, words, nums in options[name])
        )
        for name, kind in CHOICES.items()
    }
    plate, housings = written.foot_supports, written.caster_housings
    return Line(
        name=written.name,
        title=written.title,
        maker=written.maker,
        version=written.version,
        choices=choices,
        rules=tuple(_rules(written, choices)),
        fixed_parts=tuple(_fixed_parts(written)),
        foot_plate=FootPlate(
            length_mm=plate.plate_length_mm,
            behind_tube_mm=plate.plate_behind_tube_mm,
            thickness_mm=plate.plate_thickness_mm,
            outer_inset_mm=plate.plate_outer_inset_mm,
            width_mm=plate.plate_width_mm,
        ),
        caster_outset_mm=housings.outset_mm,
        crown_gap_mm=housings.crown_gap_mm,
        folded_seat_mm=written.folding.folded_seat_mm,
        push_handle_behind_mm=written.push_handles.behind_mm,
        push_handle_above_mm=written.push_handles.above_mm,
        path=path,
    )


def _all_options(line: schema.WrittenLine) -> dict[str, list[OptionParts]]:
    return {
        "side_frame": [_side_frame(frame) for frame in line.side_frames],
        "rear_wheel": [_rear_wheel(wheel) for wheel in line.rear_wheels],
        "camber": [_plain(item) for item in line.cambers],
        "axle_hole": list(_axle_holes(line.axle_plate)),
        "caster": [_caster(caster) for caster in line.casters],
        "fork": [parts for fork in line.forks for parts in _fork(fork)],
        "caster_housing": list(_housings(line.caster_housings)),
        "stem_setting": [_stem_setting(angle) for angle in line.caster_housings.stem_settings_deg],
        "seat_depth": [_sized(item, f"{item.depth_mm:g} mm") for item in line.seat_depths],
        "cushion": [_cushion(cushion) for cushion in line.cushions],
        "back_angle": [
            _sized(item, f"{item.angle_deg:g} degrees behind square") for item in line.back_angles
        ],
        "back_support": [_plain(item) for item in line.back_supports],
        "seat_width": [_seat_width(item, line) for item in line.seat_widths],
        "arm_support": [parts for arm in line.arm_supports for parts in _arm(arm)],
        "hanger": [*(_plain(item) for item in line.hangers), _fitted_none({"mass_kg": 0.0})],
        "leg_length": [*(_leg_length(mm) for mm in line.foot_supports.lengths_mm), _fitted_none({})],
        "foot_supports": list(_foot_supports()),
        "back_height": [_sized(item, f"{item.height_mm:g} mm") for item in line.back_heights],
        "wheel_lock": [_placed(item) for item in line.wheel_locks],
        "anti_tip": [
            *(parts for device in line.anti_tips for parts in _anti_tip(device)),
            _fitted_none({"mass_kg": 0.0}),
        ],
    }


def _numbers(item: schema.Written) -> dict[str, float]:
    fields = item.model_dump()
    return {key: float(value) for key, value in fields.items() if isinstance(value, int | float)}


def _plain(item: schema.Written) -> OptionParts:
    fields = item.model_dump()
    return str(fields["code"]), str(fields["name"]), _numbers(item)


def _sized(item: schema.Written, words: str) -> OptionParts:
    return str(item.model_dump()["code"]), words, _numbers(item)


def _placed(item: schema.Written) -> OptionParts:
    code, words, numbers = _plain(item)
    x_mm, z_mm = cast(list[float], item.model_dump()["at_mm"])
    return code, words, {**numbers, "x_mm": x_mm, "z_mm": z_mm}


def _fitted_none(numbers: dict[str, float]) -> OptionParts:
    return NONE, "not fitted", numbers


def _side_frame(frame: schema.SideFrame) -> OptionParts:
    code, words, numbers = _placed(frame)
    x_mm, z_mm = frame.hanger_pivot_mm
    return code, words, {**numbers, "hanger_x_mm": x_mm, "hanger_z_mm": z_mm}


def _rear_wheel(wheel: schema.RearWheel) -> OptionParts:
    code, words, numbers = _plain(wheel)
    radius = wheel.bead_seat_mm / 2 + wheel.tyre_width_mm
    rim = wheel.hand_rim_diameter_mm / 2
    return code, words, {**numbers, "radius_mm": radius, "hand_rim_radius_mm": rim}


def _axle_holes(plate: schema.AxlePlate) -> Iterator[OptionParts]:
    share = {"mass_kg": plate.mass_kg}
    for column, x_mm in plate.columns_mm.items():
        for row, z_mm in plate.rows_mm.items():
            code = f"{column}{row}"
            if code not in plate.closed:
                words = f"axle plate column {column}, row {row}"
                yield code, words, {**share, "x_mm": x_mm, "z_mm": z_mm}


def _caster(caster: schema.Caster) -> OptionParts:
    code, words, numbers = _plain(caster)
    return code, words, {**numbers, "radius_mm": caster.diameter_mm / 2}


def _fork(fork: schema.Fork) -> Iterator[OptionParts]:
    for hole, drop_mm in fork.holes_mm.items():
        words = f"{fork.name}, hole {hole} of {len(fork.holes_mm)}"
        yield (
            f"{fork.code}-{hole}",
            words,
            {
                "trail_mm": fork.trail_mm,
                "drop_mm": drop_mm,
                "largest_radius_mm": fork.largest_caster_mm / 2,
                "mass_kg": fork.mass_kg,
            },
        )


def _housings(housings: schema.CasterHousings) -> Iterator[OptionParts]:
    for side, ahead_mm in housings.ahead_of_tube_mm.items():
        for row, z_mm in housings.rows_mm.items():
            words = f"{side}, height hole {row}"
            numbers = {"ahead_mm": ahead_mm, "z_mm": z_mm, "mass_kg": housings.mass_kg}
            yield f"{side[0].upper()}{row}", words, numbers


def _stem_setting(angle_deg: float) -> OptionParts:
    sense = "forward" if angle_deg < 0 else "back"
    words = f"stem turned {abs(angle_deg):g} degrees {sense}" if angle_deg else "stem as drawn"
    return f"N{angle_deg:g}".replace("-", "F"), words, {"angle_deg": angle_deg}


def _cushion(cushion: schema.Cushion) -> OptionParts:
    code, words, numbers = _plain(cushion)
    heights = {"rear_mm": cushion.loaded_rear_mm, "front_mm": cushion.loaded_front_mm}
    return code, words, {**numbers, **heights}


def _seat_width(item: schema.SeatWidth, line: schema.WrittenLine) -> OptionParts:
    middle = sum(frame.at_mm[0] for frame in line.side_frames) / len(line.side_frames)
    height = sum(frame.at_mm[1] for frame in line.side_frames) / len(line.side_frames)
    code, words, numbers = _sized(item, f"{item.width_mm:g} mm")
    return code, words, {**numbers, "x_mm": middle, "z_mm": height}


def _arm(arm: schema.ArmSupport) -> Iterator[OptionParts]:
    numbers = _numbers(arm)
    for pad_mm in arm.pad_heights_mm:
        words = f"{arm.name}, pad {pad_mm:g} mm above the seat rail"
        yield f"{arm.code}-{pad_mm:g}", words, {**numbers, "pad_height_mm": pad_mm}


def _leg_length(length_mm: float) -> OptionParts:
    return f"G{length_mm:g}", f"{length_mm:g} mm along the hanger", {"length_mm": length_mm}


def _foot_supports() -> Iterator[OptionParts]:
    yield "both", "both sides", {"left": 1.0, "right": 1.0}
    yield "left", "left side only", {"left": 1.0, "right": 0.0}
    yield "right", "right side only", {"left": 0.0, "right": 1.0}
    yield "none", "no foot support", {"left": 0.0, "right": 0.0}


def _anti_tip(device: schema.AntiTip) -> Iterator[OptionParts]:
    for hole, z_mm in device.holes_mm.items():
        words = f"{device.name}, hole {hole} of {len(device.holes_mm)}"
        numbers = {
            "x_mm": device.wheel_x_mm,
            "z_mm": z_mm,
            "wheel_radius_mm": device.wheel_radius_mm,
            "mass_kg": device.mass_kg,
        }
        yield f"{device.code}-{hole}", words, numbers


def _fixed_parts(line: schema.WrittenLine) -> Iterator[FixedPart]:
    for part in line.fixed_parts:
        yield FixedPart(part.code, part.name, part.mass_kg, part.at_mm[0], part.at_mm[1], "frame")


def _rules(line: schema.WrittenLine, choices: dict[str, Choice]) -> Iterator[Rule]:
    for rule in line.rules:
        yield Rule(_matched(rule.when, choices), _matched(rule.need, choices), rule.because)
    yield from _foot_support_rules(choices)


def _matched(written: dict[str, list[str]], choices: dict[str, Choice]) -> dict[str, frozenset[str]]:
    return {name: matching_codes(choices[name], codes) for name, codes in written.items()}


def matching_codes(choice: Choice, written: Iterable[str]) -> frozenset[str]:
    """Option codes meant by written ones; ``FM`` means every ``FM-...``.

    Parameters
    ----------
    choice : Choice
    written : iterable of str

    Returns
    -------
    frozenset of str
    """
    wanted = set(written)
    return frozenset(
        code for code in choice.codes if code in wanted or code.partition("-")[0] in wanted
    )


def _foot_support_rules(choices: dict[str, Choice]) -> Iterator[Rule]:
    because = "hanger, hanger length and footplate are fitted together or not at all"
    absent = frozenset({NONE})
    for name in ("hanger", "leg_length"):
        present = frozenset(choices[name].codes) - absent
        sides = frozenset(choices["foot_supports"].codes) - absent
        yield Rule({"foot_supports": absent}, {name: absent}, because)
        yield Rule({"foot_supports": sides}, {name: present}, because)
