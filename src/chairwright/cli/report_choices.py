"""What each choice of a best set-up is worth, as text for a terminal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chairwright.cli.report_why_words import LEAST_TOLD, break_words
from chairwright.cli.table import text_table
from chairwright.figures.registry import FIGURES
from chairwright.fitting.allowed import plain
from chairwright.fitting.described import Described
from chairwright.fitting.moved import moves
from chairwright.fitting.next_best import NextBest, Shift
from chairwright.fitting.why import Why
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.papers.words import measured_words, value_words, wrapped

MOST_SHIFTS = 2
"""Preferences told of each next best set-up; the JSON has all."""
MOST_CHOICES = 6
"""Other choices told of each next best set-up."""


def choice_sections(why: Why) -> Iterator[str]:
    """What each choice of a best set-up is worth.

    Parameters
    ----------
    why : Why

    Yields
    ------
    str
    """
    told = [each for each in why.choices if each.matters]
    if told:
        rows = [_choice_row(each, why.setup) for each in told]
        headers = ["choice", "chosen", "next best", "costs more", "mostly because", "and sets anew"]
        table = text_table(headers, rows, "lllr")
        yield f"{wrapped(CHOICES_HEAD)}\n\n{table}"
    alike = [each for each in why.choices if not each.matters]
    if alike:
        words = ", ".join(_alike_words(each) for each in alike)
        yield wrapped(f"Makes no difference to what is asked: {words}.")
    if why.only:
        names = ", ".join(f"{plain(name)} {why.setup.codes[name]}" for name in why.only)
        yield wrapped(f"Nothing to choose, one option is open: {names}.")


CHOICES_HEAD = (
    "What each choice is worth: the best set-up without the option chosen, everything else set "
    "anew where that helps. Each is proven like the best."
)


def _alike_words(each: NextBest) -> str:
    other = "" if each.setup is None else f" (or {each.setup.codes[each.choice]})"
    return f"{plain(each.choice)}{other}"


def _choice_row(each: NextBest, setup: Described) -> list[str]:
    label, chosen = CHOICES[each.choice].label, setup.codes[each.choice]
    if each.setup is None:
        return [label, chosen, "none", "", _none_words(each, setup.line), ""]
    names = [n for n in CHOICES if each.setup.index[n] != setup.index[n] and n != each.choice]
    codes = [each.setup.codes[name] for name in names[:MOST_CHOICES]]
    rest = len(names) - MOST_CHOICES
    anew = " ".join([*codes, *([f"and {rest} more"] if rest > 0 else [])])
    return [label, chosen, each.setup.codes[each.choice], _more_words(each, setup.line),
            shift_words(each.shifts, setup.line), anew]  # fmt: skip


def _more_words(each: NextBest, line: Line) -> str:
    cost = f"{each.costs_more:.2f}" if abs(each.costs_more) >= LEAST_TOLD else "under 0.01"
    if each.surcharge_more <= 0.0:
        return cost
    money = measured_words(FIGURES["custom_surcharge"], each.surcharge_more, line)
    return f"{money}, {cost}"


def _none_words(each: NextBest, line: Line) -> str:
    if each.alone is None:
        return "no other holds every must; none goes with the rest"
    lost = "; ".join(break_words(one, line) for one in each.breaks)
    return f"no other holds every must; {each.alone.option.code} alone breaks {lost}"


def shift_words(shifts: Sequence[Shift], line: Line) -> str:
    """Say which preferences cost most more: ``Chair 20.0 to 21.2 kg +0.80``.

    Parameters
    ----------
    shifts : sequence of Shift
        The greatest rise first.
    line : Line

    Returns
    -------
    str
    """
    rises = [each for each in shifts if each.costs_more > 0][:MOST_SHIFTS]
    return "; ".join(
        f"{FIGURES[each.target.figure].label} {_from_to(each, line)} {each.costs_more:+.2f}"
        for each in rises
    )


def _from_to(shift: Shift, line: Line) -> str:
    figure = FIGURES[shift.target.figure]
    if not moves(figure, shift.before, shift.after):
        return f"(under {measured_words(figure, figure.resolution, line)})"
    return f"{value_words(figure, shift.before)} to {measured_words(figure, shift.after, line)}"
