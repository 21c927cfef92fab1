"""How sure a set-up is, as text: every figure's spread, unsure musts, what counts most."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.cli.opened import Opened
from chairwright.cli.table import text_table
from chairwright.drawing.tornado import Tornado
from chairwright.figures.registry import FIGURES
from chairwright.fitting.unsure import Unsure, unsure_musts
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.words import (
    measured_words,
    spread_words,
    target_words,
    unit_words,
    value_words,
    wrapped,
)
from chairwright.tolerance.bars import Bar, bars_of, worth_again

HOW = (
    "+/- is two standard uncertainties, about 95 percent: tape and scales, estimates, body model, "
    "the chair as built, the places. 'first order' adds what each does by itself; 'Monte Carlo' "
    "where that is more than 5 percent off 10,000 draws."
)
SURE = "Every must holds with its spread."
HELD = "Musts that hold on nominal values only"
MOST_BARS = 12


def tolerance_sections(opened: Opened, figure: str | None) -> Iterator[str]:
    """The report, one section at a time.

    Parameters
    ----------
    opened : Opened
    figure : str or None
        What counts for this one alone; None for the table of all.

    Yields
    ------
    str
    """
    line, person = opened.line, opened.person
    yield f"{person.client.reference}: {line.title}, version {line.version}"
    if figure is None:
        yield _table(opened)
    else:
        yield "\n".join(_figure_lines(opened, figure))
    yield "\n".join(_must_lines(opened))
    yield wrapped(HOW)
    yield wrapped(PURPOSE)


def _table(opened: Opened) -> str:
    tolerance, rows = opened.setup.tolerance, []
    for name, spread in tolerance.figures.items():
        shown = FIGURES[name]
        bars = bars_of(spread, tolerance.inputs)
        rows.append(
            (
                shown.label,
                value_words(shown, opened.setup.figures[name]),
                spread_words(shown, spread.half).removeprefix("± "),
                unit_words(shown, opened.line),
                "first order" if spread.linear else "Monte Carlo",
                bars[0].what.label if bars else "",
            )
        )
    headers = ("figure", "value", "+/-", "", "how", "counts most")
    return text_table(headers, rows, "lrr")


def _figure_lines(opened: Opened, figure: str) -> Iterator[str]:
    tolerance, shown = opened.setup.tolerance, FIGURES[figure]
    spread = tolerance.figures[figure]
    how = "first order" if spread.linear else "Monte Carlo"
    yield f"{figure_title(opened, figure)} ({how})"
    bars, digits = bars_of(spread, tolerance.inputs), shown.digits + 1
    rows = [_bar_row(bar, digits) for bar in bars[:MOST_BARS]]
    yield text_table(("input", "its +/-", "less", "more", "share"), rows, "lrrrr")
    if len(bars) > MOST_BARS:
        rest = sum(bar.share for bar in bars[MOST_BARS:])
        yield f"{len(bars) - MOST_BARS} others together: {rest:.0%} of the variance."
    again = worth_again(bars)
    if again is not None:
        yield wrapped(again.what.again)


def _bar_row(bar: Bar, digits: int) -> tuple[str, ...]:
    half = f"{bar.what.half:g} {bar.what.unit}" if bar.what.unit else f"{bar.what.half:.0%}"
    if bar.what.key.startswith("scales."):
        half = ""
    ends = (f"{bar.less:+.{digits}f}", f"{bar.more:+.{digits}f}")
    return bar.what.label, half, *ends, f"{bar.share:.0%}"


def figure_title(opened: Opened, figure: str) -> str:
    """A figure with its value and spread: ``Seat width: 400 mm ± 3``."""
    shown, setup = FIGURES[figure], opened.setup
    value = measured_words(shown, setup.figures[figure], opened.line)
    return f"{shown.label}: {value} {spread_words(shown, setup.spreads[figure])}".rstrip()


def _must_lines(opened: Opened) -> Iterator[str]:
    unsure = unsure_musts(opened.setup)
    if not unsure:
        failed = any(item.target.must for item in opened.setup.broken)
        yield "No must that is met holds on nominal values only." if failed else SURE
        return
    yield HELD
    for item in unsure:
        yield wrapped(f"- {must_words(item, opened)} {item.again}")


def must_words(item: Unsure, opened: Opened) -> str:
    """One unsure must: what is asked, what there is, and how far the margin can be off."""
    shown, judged = FIGURES[item.judged.target.figure], item.judged
    value = measured_words(shown, judged.value, opened.line, judged.target)
    asked = target_words(judged.target, opened.line, judged.value)
    half = f"{item.spread.half:.{shown.digits}f}"
    return f"{asked}: {value}, margin {judged.verdict.margin:.{shown.digits}f} +/- {half}."


def figure_chart(opened: Opened, figure: str) -> Tornado:
    """The chart of one figure."""
    tolerance = opened.setup.tolerance
    bars = bars_of(tolerance.figures[figure], tolerance.inputs)
    again = worth_again(bars)
    words = "" if again is None else again.what.again
    return Tornado(FIGURES[figure], figure_title(opened, figure), bars, words)


def must_charts(opened: Opened) -> dict[str, Tornado]:
    """The charts of the margins of every must that is not sure, by figure."""
    return {
        item.judged.target.figure: must_chart(item, opened) for item in unsure_musts(opened.setup)
    }


def must_chart(item: Unsure, opened: Opened) -> Tornado:
    """The chart of the margin of one must that is not sure."""
    shown, unit = FIGURES[item.judged.target.figure], FIGURES[item.judged.target.figure].unit
    margin, half = item.judged.verdict.margin, item.spread.half
    digits = shown.digits
    title = f"{shown.label}: margin {margin:.{digits}f} {unit} ± {half:.{digits}f}"
    return Tornado(shown, title, item.bars, item.again)
