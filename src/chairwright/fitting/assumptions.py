"""Values behind the figures that no neutral source gives: what was taken, and on whose word."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.figures.rolling import START_MPS2
from chairwright.figures.stroke import HELD_ELBOW_DEG
from chairwright.fitting.described import Described
from chairwright.targets.place_asks import WALL_MM

PRACTICE = "common practice, no source"
MEMORY = "from memory, unverified"
ROLLS = ("push_force", "push_start", "rim_force", "pivot_push")
STARTS = ("push_start",)
TURNS = ("overall_width", "corner_", "door_", "half_turn", "turning_diameter")


def assumptions(setup: Described) -> tuple[str, ...]:
    """The values that the judged figures of a set-up rest on and that have no neutral source.

    Parameters
    ----------
    setup : Described

    Returns
    -------
    tuple of str
        Each with its mark; only those that some judged figure uses.
    """
    return tuple(_told(setup))


def _told(setup: Described) -> Iterator[str]:
    asked = [item.target.figure for item in setup.judged]
    if _any(asked, ROLLS):
        for choice, words in (("rear_wheel", "rear wheels"), ("caster", "casters")):
            numbers = setup.options[choice].numbers
            mark = MEMORY if numbers["rolling_assumed"] > 0 else "the line file"
            yield (
                f"Rolling length of the {words} on a hard floor {numbers['rolling_mm']:.2f} mm "
                f"({mark})."
            )
    if _any(asked, STARTS):
        yield f"A calm start is {START_MPS2:g} m/s2 ({PRACTICE})."
    if "push_arc_deg" in asked:
        low, high = HELD_ELBOW_DEG
        yield f"The hand holds the rim at elbow angles of {low:g} to {high:g} deg ({PRACTICE})."
    if any(item.target.place and _any([item.target.figure], TURNS) for item in setup.judged):
        yield f"{WALL_MM:g} mm are kept from every wall and jamb ({PRACTICE})."


def _any(figures: list[str], starts: tuple[str, ...]) -> bool:
    return any(figure.startswith(starts) for figure in figures)
