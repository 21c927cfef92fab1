"""The order of adjustment, and which choice belongs to which step.

Foot support, seat, back, rear wheel, then the caster housings squared to the floor again, then
wheel locks to the tyre, then anti-tip height: common practice of the trade, no source.
"""

from __future__ import annotations

from collections.abc import Mapping

from chairwright.line.choices import NONE
from chairwright.papers.payload import Choice, ChoiceGroup

STEPS: dict[str, tuple[str, ...]] = {
    "Foot support": ("foot_supports", "hanger", "foot_plate", "leg_length"),
    "Seat": ("side_frame", "seat_width", "seat_depth", "cushion", "arm_support"),
    "Back": ("back_angle", "back_height", "back_support"),
    "Rear wheel": ("rear_wheel", "axle_hole", "camber"),
    "Caster housings, square to the floor": (
        "caster", "fork", "stem_spacer", "caster_housing", "stem_setting",
    ),
    "Wheel locks": ("wheel_lock",),
    "Anti-tip": ("anti_tip",),
}  # fmt: skip


def in_order(choices: Mapping[str, Choice]) -> tuple[ChoiceGroup, ...]:
    """Group settled choices by step of adjustment.

    Parameters
    ----------
    choices : mapping
        Choice name, such as ``axle_hole``, to what is printed for it.

    Returns
    -------
    tuple of ChoiceGroup
        Steps in order; a step without choices is left out. A name that no step knows
        comes last under "Other".
    """
    known = {name for names in STEPS.values() for name in names}
    steps = {**STEPS, "Other": tuple(name for name in choices if name not in known)}
    groups = (
        ChoiceGroup(step, tuple(choices[name] for name in names if name in choices))
        for step, names in steps.items()
    )
    return tuple(group for group in groups if group.choices)


def fitted_in_order(choices: Mapping[str, Choice]) -> tuple[ChoiceGroup, ...]:
    """Group as `in_order` does, with everything that is not fitted in one row at the end.

    Parameters
    ----------
    choices : mapping

    Returns
    -------
    tuple of ChoiceGroup
        That there is no foot support stays a row of its own: it is set like any other.
    """
    absent = {
        name for name, each in choices.items() if each.code == NONE and name != "foot_supports"
    }
    groups = in_order({name: each for name, each in choices.items() if name not in absent})
    if not absent:
        return groups
    labels = ", ".join(choices[name].label for name in choices if name in absent)
    return (*groups, ChoiceGroup("Not fitted", (Choice("To be left off", NONE, labels),)))
