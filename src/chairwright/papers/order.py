"""The order of adjustment, and which choice belongs to which step.

The order itself stands in `chairwright.order.steps`.
"""

from __future__ import annotations

from collections.abc import Mapping

from chairwright.line.choices import NONE
from chairwright.order.steps import CASTERS, LAST, WORKS
from chairwright.papers.payload import Choice, ChoiceGroup

NOT_ADJUSTED = frozenset({"hand_rim", "push_handle"})
"""Fitted with the rest of their step, but nothing is adjusted to them: they stand under "Other"."""


def step_words(group: str) -> str:
    """What a step is called where a whole set-up is listed."""
    return f"{group}, square to the floor" if group == CASTERS else group


def _choices_of(group: str) -> tuple[str, ...]:
    names = (name for work in WORKS if work.group == group for name in work.choices)
    return tuple(name for name in names if name not in NOT_ADJUSTED)


STEPS: dict[str, tuple[str, ...]] = {
    step_words(group): _choices_of(group)
    for group in dict.fromkeys(work.group for work in WORKS)
    if group != LAST
}
"""Steps of `chairwright.order.steps` with the choices that are adjusted in each."""


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
