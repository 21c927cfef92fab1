"""Why a set-up is the best, or why another one is not, as text for a terminal."""

from __future__ import annotations

import math
from collections.abc import Sequence

from chairwright.cli.report_choices import choice_sections
from chairwright.cli.report_fit import best_words, head_text
from chairwright.cli.report_front import code_words
from chairwright.cli.report_setup import order_text
from chairwright.cli.report_why_words import break_words, cost_words, distance, side_words
from chairwright.cli.table import text_table
from chairwright.figures.registry import FIGURES
from chairwright.fitting.allowed import plain
from chairwright.fitting.described import Described, Judged
from chairwright.fitting.fit import Fit
from chairwright.fitting.one_change import Step
from chairwright.fitting.target_reasons import Nearer, Reason
from chairwright.fitting.why import Why
from chairwright.line.model import Line
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.words import (
    measured_words,
    range_words,
    target_words,
    unit_words,
    value_words,
    wrapped,
)
from chairwright.targets.target import Target


def why_text(fit: Fit, why: Why) -> str:
    """The explanation of the best set-up.

    Parameters
    ----------
    fit : Fit
    why : Why

    Returns
    -------
    str
    """
    line = why.setup.line
    codes = f"The set-up: {code_words(line, why.setup.index)}"
    sections = [head_text(fit), best_words(fit), f"{wrapped(codes, '  ')}\n{order_text(why.setup)}"]
    sections.append(asked_text(why.reasons, line))
    missed = sorted((each for each in why.reasons if each.cost > 0), key=lambda each: -each.cost)
    if missed:
        lines = [wrapped(f"- {_missed_words(each, why, line)}", "  ") for each in missed]
        sections.append("\n".join([_missed_head(why), *lines]))
    return "\n\n".join([*sections, *choice_sections(why), wrapped(PURPOSE)])


def _missed_head(why: Why) -> str:
    return f"What the missed preferences cost, {why.cost:.2f} in all, and what is against less:"


def asked_text(reasons: Sequence[Reason], line: Line) -> str:
    """Every must, then every preference: asked, got, margin, cost, what decides it.

    Parameters
    ----------
    reasons : sequence of Reason
    line : Line

    Returns
    -------
    str
    """
    headers = ["figure", "asked", "got", "unit", "margin", "cost", "decided most by"]
    rows: list[list[str]] = []
    for title, must in (("Must", True), ("Prefer", False)):
        inside = [each for each in reasons if each.judged.target.must is must]
        if inside:
            rows.append([title, *[""] * (len(headers) - 1)])
            rows += [_asked_row(each, line) for each in inside]
    table = text_table(headers, rows, "llrlrr")
    return f"{table}\n{wrapped(ASKED_FOOT)}"


ASKED_FOOT = (
    "Margin: how far inside the range, or how far short of it or over it. Decided most by: the "
    "choice that moves the figure furthest when it alone is changed, and the option chosen."
)


def _asked_row(each: Reason, line: Line) -> list[str]:
    target, figure = each.judged.target, FIGURES[each.judged.target.figure]
    return [
        f"  {figure.label}",
        range_words(target, each.judged.value),
        value_words(figure, each.judged.value, target),
        unit_words(figure, line),
        _margin(each.judged),
        cost_words(each.cost),
        "" if each.decided_by is None else _step_words(each.decided_by),
    ]


def _margin(judged: Judged) -> str:
    """How far inside or outside: ``12 inside``, ``3.1 short``, ``20 over``."""
    target, figure = judged.target, FIGURES[judged.target.figure]
    if math.isnan(judged.value):
        return "no such figure"
    by = distance(target, judged.value)
    words = value_words(figure, by)
    if judged.verdict.word != "fails":
        return f"{words} inside"
    if by == 0.0:
        words = f"under {value_words(figure, figure.resolution)}"
    return f"{words} {side_words(target, judged.value)}"


def _step_words(step: Step) -> str:
    return f"{plain(step.choice)} {step.option.code}"


def _missed_words(each: Reason, why: Why, line: Line) -> str:
    target, figure = each.judged.target, FIGURES[each.judged.target.figure]
    weight = "" if target.weight == 1.0 else f" (weight {target.weight:g})"
    value = each.judged.value
    got = measured_words(figure, value, line, target)
    words = f"{target_words(target, line, value)}: {got}, costs {cost_words(each.cost)}{weight}."
    if each.nearer is None:
        return f"{words} No change of one choice alone brings it nearer."
    return f"{words} {_nearer_words(each.nearer, target, why.setup, line)}"


def _nearer_words(nearer: Nearer, target: Target, setup: Described, line: Line) -> str:
    step, figure = nearer.step, FIGURES[target.figure]
    present = setup.options[step.choice].code
    value = measured_words(figure, nearer.value, line, target)
    words = f"Nearest by one change: {_step_words(step)} for {present} gives {value}"
    if nearer.breaks:
        return (
            f"{words}, but breaks {'; '.join(break_words(each, line) for each in nearer.breaks)}."
        )
    return f"{words}, but all preferences together then cost {nearer.costs_more:.2f} more."
