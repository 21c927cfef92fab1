"""An adjustment as text that a technician can follow, and as plain data."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import asdict

from chairwright.cli.report_json import line_data
from chairwright.cli.table import text_table
from chairwright.order.adjust import LAST_CHECK, Adjustment, Fetch, Step
from chairwright.order.adjust_readings import Reading
from chairwright.order.steps_words import Move
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.words import Units, wrapped
from chairwright.units import inches_text

Data = dict[str, object]

NOBODY_SITS = "Nobody sits in the chair before the last check is done."
KINDS = {"change": "", "set again": "set again", "check": "check"}


def adjust_report(found: Adjustment, first: str, last: str, units: Units) -> str:
    """The whole adjustment.

    Parameters
    ----------
    found : Adjustment
    first, last : str
        What the set-ups are called.
    units : {"mm", "in"}
        ``"in"`` adds inches to lengths.

    Returns
    -------
    str
    """
    line = found.last.line
    head = f"Adjust {first} to {last}: {line.title}, version {line.version}"
    if not found.steps:
        return f"{head}\n\nNothing differs: the chair is as it shall be."
    sections = [head, "\n".join(_before_words(found))]
    before = found.start.reasons
    for step in found.steps:
        sections.append("\n".join(_step_words(step, before, units)))
        before = step.state.reasons
    return "\n\n".join([*sections, wrapped(PURPOSE)])


def _before_words(found: Adjustment) -> Iterator[str]:
    yield wrapped(f"{len(found.steps)} steps, in this order. {NOBODY_SITS}")
    for start, end in found.off_wheels:
        when = f"step {start}" if start == end else f"steps {start} to {end}"
        words = f"After {when} the chair must stay off its wheels, on blocks"
        yield wrapped(f"{words}, until step {end + 1} is done.")
    rebuilt = [str(step.number) for step in found.steps if step.rebuild]
    if rebuilt:
        what = f"{'Step' if len(rebuilt) == 1 else 'Steps'} {' and '.join(rebuilt)}"
        yield wrapped(f"{what}: work on the frame itself, for the workshop.")
    yield from _fetched("Have at hand", found.parts_on)
    yield from _fetched("Left over", found.parts_off)


def _fetched(head: str, parts: Sequence[Fetch]) -> Iterator[str]:
    if parts:
        rows = [
            [str(each.quantity), each.code, each.label, each.words,
             "" if each.side == "one" else each.side]
            for each in parts
        ]  # fmt: skip
        yield ""
        yield text_table([head, "code", "part", "what", "side"], rows, "r")


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


def _step_words(step: Step, before: tuple[str, ...], units: Units) -> Iterator[str]:
    yield f"{step.number}. {title_words(step)}"
    if step.lift:
        yield f"   {step.lift}"
    yield from (wrapped(f"   {words}", "   ") for words in step.undo)
    for each in step.moves:
        yield f"   {each.label}: {each.before} -> {each.after}{_far(each)}"
        yield wrapped(f"      {each.words_before} -> {each.words_after}", "      ")
    for note in step.notes:
        yield wrapped(f"   {note}", "   ")
    if step.readings:
        yield "   Reads now:"
        yield from (f"      {_reading(each, units)}" for each in step.readings)
    yield from _state_words(step, before)


def _far(each: Move) -> str:
    return f" ({each.far})" if each.far else ""


def _reading(each: Reading, units: Units) -> str:
    value = f"{_number(each.after, each.digits)} {each.unit}".rstrip()
    if units == "in" and each.unit == "mm":
        value += f" = {inches_text(each.after)}"
    was = "" if each.before is None else f" (was {_number(each.before, each.digits)})"
    return f"{each.label} {value}{was if each.moved else ', as before'}"


def _number(value: float, digits: int) -> str:
    text = f"{value:.{digits}f}"
    return text.lstrip("-") if float(text) == 0.0 else text


def _state_words(step: Step, before: tuple[str, ...]) -> Iterator[str]:
    if step.state.stands:
        yield "   Then: chair on its wheels."
        return
    still = " as before" if step.state.reasons == before else ":"
    yield f"   Then: CHAIR OFF ITS WHEELS, on blocks, until step {step.down_after} is done{still}"
    if step.state.reasons != before:
        yield from (wrapped(f"      {reason}", "      ") for reason in step.state.reasons)


def adjust_data(found: Adjustment) -> Data:
    """The whole adjustment as plain data.

    Parameters
    ----------
    found : Adjustment

    Returns
    -------
    dict
    """
    return {
        "line": line_data(found.last.line),
        "from": found.first.codes,
        "to": found.last.codes,
        "rebuild": found.rebuild,
        "parts_on": [asdict(each) for each in found.parts_on],
        "parts_off": [asdict(each) for each in found.parts_off],
        "steps": [_step_data(step) for step in found.steps],
    }


def _step_data(step: Step) -> Data:
    return {
        "number": step.number,
        "group": step.group,
        "kind": step.kind,
        "undo": list(step.undo),
        "moves": [asdict(each) for each in step.moves],
        "notes": list(step.notes),
        "readings": [asdict(each) for each in step.readings],
        "state": step.state.status,
        "reasons": list(step.state.reasons),
        "down_after_step": step.down_after,
        "lift": step.lift,
        "rebuild": step.rebuild,
    }
