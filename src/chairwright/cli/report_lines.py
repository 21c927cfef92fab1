"""One client on several lines side by side, as text and as plain data."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.cli.report_fit import client_line, measure_text, reason_sections
from chairwright.cli.report_front import order_words
from chairwright.cli.report_json import Data, client_data, line_data, line_fit_data
from chairwright.cli.table import text_table
from chairwright.figures.registry import FIGURES, Figure
from chairwright.fitting.described import Described
from chairwright.fitting.ledger import ledger
from chairwright.fitting.lines import OnLine, SideBySide
from chairwright.line.choices import CHOICES
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.words import (
    NO_VALUE,
    Units,
    inches_words,
    measured_words,
    value_words,
    wrapped,
)

MAIN = (
    "seat_width_mm", "seat_depth_mm", "cushion_to_floor_front_mm", "seat_angle_deg",
    "back_height_mm", "elbow_angle_deg", "leg_support_length_mm", "foot_reach_mm",
    "tip_rear_locked_deg", "tip_forward_deg", "tip_left_deg", "tip_right_deg", "caster_share",
    "overall_width_mm", "overall_length_mm", "folded_width_mm", "turning_diameter_mm",
    "chair_mass_kg", "heaviest_part_kg",
)  # fmt: skip
SHOWN_CHOICES = (
    "rear_wheel", "axle_hole", "camber", "caster", "fork", "caster_housing", "seat_width",
    "seat_depth", "back_support", "arm_support", "hanger", "anti_tip",
)  # fmt: skip
NOT_PREFERRED = " *"


def lines_text(found: SideBySide, units: Units) -> str:
    """Lines side by side, then why a line has no set-up or was not tried.

    Parameters
    ----------
    found : SideBySide
    units : {"mm", "in"}

    Returns
    -------
    str
    """
    sections = [client_line(found.person), measure_text(found.person), _table(found, units)]
    if any(each.fit is not None and each.fit.best is not None for each in found.results):
        sections.append(wrapped(FOOT))
    if len(found.currencies) > 1:
        sections.append(f"The prices are in different currencies: {', '.join(found.currencies)}.")
    for each in found.results:
        sections += _remarks(each)
    return "\n\n".join([*sections, wrapped(PURPOSE)])


FOOT = (
    "* holds every must, and is not as preferred. The cost counts how far all preferences are "
    "missed, each in steps that matter to a fitter, times its weight; less is better."
)


def _table(found: SideBySide, units: Units) -> str:
    rows = [[label, *cells] for label, cells in _rows(found, units) if any(cells)]
    return text_table(["", *(each.line.name for each in found.results)], rows)


def _rows(found: SideBySide, units: Units) -> Iterator[tuple[str, list[str]]]:
    results = found.results
    yield "Product line", [f"{each.line.title}, {each.line.version}" for each in results]
    yield "Every must", [outcome(each) for each in results]
    yield "Set-ups looked through", [_count(each) for each in results]
    yield "Cost of the preferences", [_cost(each) for each in results]
    yield "List price", [_figure(each, "price") for each in results]
    yield "Delivery", [_figure(each, "lead_days") for each in results]
    yield "Made to order", [_sizes(each) for each in results]
    yield "Extras", [_extras(each) for each in results]
    for name in MAIN:
        figure = FIGURES[name]
        yield f"{figure.label} {figure.unit}".rstrip(), [_value(each, figure) for each in results]
        if units == "in" and figure.unit == "mm":
            yield "  in", [_inches(each, figure) for each in results]
    for name in SHOWN_CHOICES:
        yield CHOICES[name].label, [_code(each, name) for each in results]


def outcome(result: OnLine) -> str:
    """Whether a line has a set-up for the client, in a few words."""
    if result.fit is None:
        return "not tried"
    if result.fit.best is None:
        return "cannot be met"
    setup = result.fit.setup
    ordered = setup is not None and setup.made_to_order
    return "holds, with sizes made to order" if ordered else "holds"


def _best(result: OnLine) -> Described | None:
    """The best set-up; None where there is none, and the nearest does not count."""
    fit = result.fit
    return None if fit is None or fit.best is None else fit.setup


def _count(result: OnLine) -> str:
    return "" if result.fit is None else f"{result.fit.count:,}"


def _cost(result: OnLine) -> str:
    fit = result.fit
    return "" if fit is None or fit.best is None else f"{fit.best.cost:.2f}"


def _figure(result: OnLine, name: str) -> str:
    best = _best(result)
    return "" if best is None else measured_words(FIGURES[name], best.figures[name], best.line)


def _sizes(result: OnLine) -> str:
    best = _best(result)
    return "" if best is None else order_words(best.line, best.index)


def _extras(result: OnLine) -> str:
    best = _best(result)
    if best is None:
        return ""
    parts = [extra.code for extra in best.extras]
    return ", ".join([*parts, *(f"without {code}" for code in result.without)])


def _value(result: OnLine, figure: Figure) -> str:
    best = _best(result)
    if best is None:
        return ""
    (row,) = [row for row in ledger(best) if row.figure is figure]
    mark = NOT_PREFERRED if row.word and "not as preferred" in row.word else ""
    words = value_words(figure, row.value)
    return "" if words == NO_VALUE else f"{words}{mark}"


def _inches(result: OnLine, figure: Figure) -> str:
    best = _best(result)
    return "" if best is None else inches_words(figure, best.figures[figure.name])


def _code(result: OnLine, name: str) -> str:
    best = _best(result)
    return "" if best is None else best.codes[name]


def _remarks(result: OnLine) -> Iterator[str]:
    """Why a line has no set-up or was not tried, and what it does not offer."""
    name = result.line.name
    if result.lacks:
        yield "\n".join([f"{name} was not tried:", *(_bullet(words) for words in result.lacks)])
    if result.fit is not None and result.fit.best is None:
        yield f"{name}:"
        yield from reason_sections(result.fit)
    if result.without and result.fit is not None:
        codes = ", ".join(result.without)
        yield wrapped(f"{name} has no {codes}: mass, price and balance there are without it.")


def _bullet(words: str) -> str:
    return wrapped(f"- {words}", "  ")


def lines_data(found: SideBySide) -> Data:
    """The results on every line.

    Parameters
    ----------
    found : SideBySide

    Returns
    -------
    dict
        Keys ``client`` and ``lines``; each of ``lines`` has what one fitting has, ``tried``,
        ``lacks`` and ``without``.
    """
    return {
        "client": client_data(found.person),
        "lines": [
            {
                "tried": each.fit is not None,
                "lacks": list(each.lacks),
                "without": list(each.without),
                **({"line": line_data(each.line)} if each.fit is None else line_fit_data(each.fit)),
            }
            for each in found.results
        ],
    }
