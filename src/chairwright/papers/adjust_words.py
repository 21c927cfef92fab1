"""Words about an adjustment that its text on screen and its paper share."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.order.adjust import LAST_CHECK, Adjustment, Step
from chairwright.order.adjust_readings import Reading
from chairwright.order.steps_words import Move
from chairwright.papers.words import Units
from chairwright.units import inches_text

NOBODY_SITS = "Nobody sits in the chair before the last check is done."
NOTHING_DIFFERS = "Nothing differs: the chair is as it shall be."
KINDS = {"change": "", "set again": "set again", "check": "check"}
ON_WHEELS = "Then: chair on its wheels."


def before_words(found: Adjustment) -> Iterator[str]:
    """What is said before the first step: how many, when it must stay off its wheels, rebuilding.

    Parameters
    ----------
    found : Adjustment
    """
    yield f"{len(found.steps)} steps, in this order. {NOBODY_SITS}"
    for start, end in found.off_wheels:
        when = f"step {start}" if start == end else f"steps {start} to {end}"
        words = f"After {when} the chair must stay off its wheels, on blocks"
        yield f"{words}, until step {end + 1} is done."
    rebuilt = [str(step.number) for step in found.steps if step.rebuild]
    if rebuilt:
        what = f"{'Step' if len(rebuilt) == 1 else 'Steps'} {' and '.join(rebuilt)}"
        yield f"{what}: work on the frame itself, for the workshop."


def title_words(step: Step) -> str:
    """What a step is about: ``Rear wheel: axle hole``, ``Wheel locks: set again``.

    Parameters
    ----------
    step : Step
    """
    labels = [each.label.lower() for each in step.moves]
    words = ", ".join(dict.fromkeys(labels)) if labels else KINDS[step.kind]
    if step.group == LAST_CHECK.group or words == step.group.lower():
        return step.group
    return f"{step.group}: {words}"


def far_words(each: Move) -> str:
    """How far a hole or a setting goes, in brackets; may be empty."""
    return f" ({each.far})" if each.far else ""


def reading_words(each: Reading, units: Units) -> str:
    """A reading after a step, and what it was before.

    Parameters
    ----------
    each : Reading
    units : {"mm", "in"}
        ``"in"`` adds inches to lengths.
    """
    value = f"{_number(each.after, each.digits)} {each.unit}".rstrip()
    if units == "in" and each.unit == "mm":
        value += f" = {inches_text(each.after)}"
    was = "" if each.before is None else f" (was {_number(each.before, each.digits)})"
    return f"{each.label} {value}{was if each.moved else ', as before'}"


def _number(value: float, digits: int) -> str:
    text = f"{value:.{digits}f}"
    return text.lstrip("-") if float(text) == 0.0 else text


def state_words(step: Step, before: tuple[str, ...]) -> str:
    """Whether the chair may be put down after a step; new reasons follow the colon.

    Parameters
    ----------
    step : Step
    before : tuple of str
        Reasons why it had to stay off its wheels after the step before.
    """
    if step.state.stands:
        return ON_WHEELS
    still = " as before" if step.state.reasons == before else ":"
    return f"Then: CHAIR OFF ITS WHEELS, on blocks, until step {step.down_after} is done{still}"
