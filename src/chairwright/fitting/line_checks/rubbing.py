"""Wheels, rims and seats that would touch each other, and folding that does not fold."""

from __future__ import annotations

import math
from collections.abc import Iterator

from chairwright.fitting.line_checks.finding import Finding, mistake
from chairwright.line.model import Line, Option
from chairwright.line.reachable import Deduction

CHECK_BOTH = "Check both numbers, or keep the two apart by a rule."


def rubbing_findings(line: Line) -> Iterator[Finding]:
    """Parts of one set-up that would lie inside each other.

    Parameters
    ----------
    line : Line

    Yields
    ------
    Finding
        Mistakes.
    """
    deduction = Deduction(line)
    for wheel in line.choices["rear_wheel"].options:
        yield from _rim_of(wheel)
        yield from _rims_beside(line, deduction, wheel)
        yield from _seat_beside(line, deduction, wheel)


def _rim_of(wheel: Option) -> Iterator[Finding]:
    rim, tyre = wheel.numbers["hand_rim_radius_mm"], wheel.numbers["radius_mm"]
    if rim >= tyre:
        yield mistake(
            wheel.where,
            f"rear wheel {wheel.code}: the hand rim must be smaller than the tyre",
            f"{2 * rim:g} mm, where bead seat and tyre make {2 * tyre:g} mm",
            "Check hand_rim_diameter_mm, bead_seat_mm and tyre_width_mm.",
        )


def _rims_beside(line: Line, deduction: Deduction, wheel: Option) -> Iterator[Finding]:
    half = wheel.numbers["tyre_width_mm"] / 2
    for rim in line.choices["hand_rim"].options:
        standoff = rim.numbers.get("standoff_mm", 0.0)
        if 0 < standoff <= half and _together(deduction, rear_wheel=wheel, hand_rim=rim):
            yield mistake(
                rim.where,
                f"hand rim {rim.code} must stand out beyond the tyre of rear wheel {wheel.code}",
                f"{standoff:g} mm, where half the tyre is {half:g} mm",
                CHECK_BOTH,
            )


def _seat_beside(line: Line, deduction: Deduction, wheel: Option) -> Iterator[Finding]:
    told: set[str] = set()
    for arm in line.choices["arm_support"].options:
        for camber in line.choices["camber"].options:
            gap = _seat_gap(wheel, arm, camber)
            together = {"rear_wheel": wheel, "arm_support": arm, "camber": camber}
            if gap < 0 and arm.part not in told and _together(deduction, **together):
                told.add(arm.part)
                yield mistake(
                    arm.where,
                    f"with arm support {arm.part}, rear wheel {wheel.code} and camber "
                    f"{camber.code} the tyre must stay clear of the seat's edge",
                    f"{-gap:.0f} mm too little",
                    "Check hub_outset_mm and hub_extra_mm, or keep the parts apart by a rule.",
                )


def _seat_gap(wheel: Option, arm: Option, camber: Option) -> float:
    """Top of the leaning tyre out from the seat's edge [mm]."""
    lean = math.radians(camber.numbers["angle_deg"])
    hub = arm.numbers["hub_outset_mm"] + camber.numbers["hub_extra_mm"]
    half = wheel.numbers["tyre_width_mm"] / 2
    return hub - wheel.numbers["radius_mm"] * math.sin(lean) - half * math.cos(lean)


def _together(deduction: Deduction, **options: Option) -> bool:
    settled = {name: frozenset({option.code}) for name, option in options.items()}
    return deduction.example(settled) is not None
