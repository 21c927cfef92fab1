"""What to check at the supervised trial after a re-fit, by what was changed."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.fitting.described import Described
from chairwright.order.change import Change
from chairwright.order.steps import GEAR, TYRE

SOURCE = "common practice, no source"

ALWAYS_FIRST = "Nobody sits in the chair before the last check of the adjust sheet is done."
SKIN = (
    "Sit for 30 minutes, then look at the skin over seat bones, sacrum, hips and heels: redness "
    "must fade."
)
TIPS = (
    "Tip check in all directions with a spotter: back, forward and to both sides, wheels locked "
    "and free."
)
_BODY = (
    ({"seat_width"}, "Hips: a flat hand goes in between hip and side on both sides."),
    ({"seat_depth", "back_support"}, "Behind each knee two to three fingers are free."),
    ({"cushion", "seat_depth", "leg_length", "hanger", "foot_plate", "foot_supports"},
     "Thighs rest along the cushion; feet rest flat, nothing presses behind the knee."),
    ({"back_height", "back_angle", "back_support"},
     "The back holds the trunk, and the shoulder blades move freely when pushing."),
    ({"arm_support", "cushion"}, "Elbows rest on the pads with the shoulders down."),
    ({"push_handle", "back_angle", "back_height"}, "The carer's hands reach the push handles."),
    ({"belt"}, "The belt sits on the pelvis, and the client opens it."),
)  # fmt: skip
_PUSH = frozenset({*GEAR, "hand_rim", "cushion", "back_angle", "back_support", "seat_depth"})


def trial_checks(change: Change, setup: Described) -> tuple[str, ...]:
    """Every check that a change asks for, in the order in which they are made.

    Parameters
    ----------
    change : Change
    setup : Described
        The chair as it shall be.

    Returns
    -------
    tuple of str
        Empty when nothing changes.
    """
    return tuple(_checks(change, setup)) if change.items else ()


def _checks(change: Change, setup: Described) -> Iterator[str]:
    changed = {item.choice for item in change.items}
    yield ALWAYS_FIRST
    for choices, words in _BODY:
        if changed & choices:
            yield words
    hands = "hand_rim" if setup.options["hand_rim"].numbers["fitted"] > 0 else ""
    if changed & _PUSH and hands:
        yield "Push and stop on the level: elbow at the top of the rim between 100 and 120 degrees."
    if changed & TYRE:
        yield "Both wheel locks hold on the client's own ramp, and the client works them."
    if changed & GEAR:
        yield "Casters swing clear of feet and footplates, and do not flutter at a fast walk."
    yield TIPS
    yield SKIN
