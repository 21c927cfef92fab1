"""An adjustment as text that a technician can follow, and as plain data."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import asdict

from chairwright.cli.report_json import line_data
from chairwright.cli.table import text_table
from chairwright.order.adjust import Adjustment, Fetch, Step
from chairwright.papers.adjust_words import (
    NOTHING_DIFFERS,
    before_words,
    far_words,
    reading_words,
    state_words,
    title_words,
)
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.words import Units, wrapped

Data = dict[str, object]


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
        return f"{head}\n\n{NOTHING_DIFFERS}"
    sections = [head, "\n".join(_before_words(found))]
    before = found.start.reasons
    for step in found.steps:
        sections.append("\n".join(_step_words(step, before, units)))
        before = step.state.reasons
    return "\n\n".join([*sections, wrapped(PURPOSE)])


def _before_words(found: Adjustment) -> Iterator[str]:
    yield from (wrapped(words) for words in before_words(found))
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


def _step_words(step: Step, before: tuple[str, ...], units: Units) -> Iterator[str]:
    yield f"{step.number}. {title_words(step)}"
    if step.lift:
        yield f"   {step.lift}"
    yield from (wrapped(f"   {words}", "   ") for words in step.undo)
    for each in step.moves:
        yield f"   {each.label}: {each.before} -> {each.after}{far_words(each)}"
        yield wrapped(f"      {each.words_before} -> {each.words_after}", "      ")
    for note in step.notes:
        yield wrapped(f"   {note}", "   ")
    if step.readings:
        yield "   Reads now:"
        yield from (f"      {reading_words(each, units)}" for each in step.readings)
    yield from _state_words(step, before)


def _state_words(step: Step, before: tuple[str, ...]) -> Iterator[str]:
    yield f"   {state_words(step, before)}"
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
