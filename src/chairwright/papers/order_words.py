"""Words about an order that its text on screen and its papers share."""

from __future__ import annotations

import math

from chairwright.fitting.described import Judged
from chairwright.line.model import Line
from chairwright.order.accepted import Unmet
from chairwright.order.order_dimensions import TOLERANCE_SOURCE, Dimension
from chairwright.order.order_load import LoadRating
from chairwright.order.parts import SettingRow
from chairwright.papers.words import amount_words, measured_words, target_words

ROUNDING = (
    "Each line, discount, surcharge and tax is rounded by itself, half a unit up; a tax is worked "
    "out once, on the sum of its lines."
)
SEAT_CORNER = (
    "Seat corner: front of the back post at the top of the seat rail. Both sides alike, foot "
    "supports apart."
)
TOLERANCE = f"+/- is what the delivered chair may be off ({TOLERANCE_SOURCE})."


def side_words(side: str) -> str:
    """On which side a part goes; empty when there is only one of it."""
    return "" if side == "one" else side


def place_words(each: SettingRow) -> str:
    """Where a hole is: ``55 mm ahead, 196 mm below``; empty when it has no place of its own."""
    words = []
    if each.x_mm is not None:
        words.append(f"{abs(each.x_mm):g} mm {'ahead' if each.x_mm >= 0 else 'behind'}")
    if each.z_mm is not None:
        words.append(f"{abs(each.z_mm):g} mm {'above' if each.z_mm >= 0 else 'below'}")
    return ", ".join(words)


def dimension_value(each: Dimension) -> str:
    """The number of a dimension with the digits that it is printed with."""
    value = f"{each.value:.{each.digits}f}"
    return value.lstrip("-") if float(value) == 0.0 else value


def unmet_words(each: Unmet, line: Line) -> str:
    """A must that is missed: what is asked, what is reached, by how much, and why it is asked.

    Parameters
    ----------
    each : Unmet
    line : Line
    """
    item = each.judged
    return f"{missed_words(each, line)} {item.target.reason} ({item.target.source})"


def missed_words(each: Unmet, line: Line) -> str:
    """A must that is missed: what is asked, what is reached and by how much.

    Parameters
    ----------
    each : Unmet
    line : Line
    """
    item, figure = each.judged, each.figure
    if math.isnan(item.value):
        reached = "this set-up has none"
    else:
        reached = measured_words(figure, item.value, line, item.target)
        reached += f", {amount_words(figure, abs(item.verdict.margin), line)} off"
    return f"{target_words(item.target, line, item.value)}: {reached}."


def narrow_words(item: Judged, line: Line) -> str:
    """A must that holds on nominal values only.

    Parameters
    ----------
    item : Judged
    line : Line
    """
    asked = target_words(item.target, line)
    return (
        f"{asked}: holds on nominal values only; a part a little off can miss it. "
        "Measure at delivery."
    )


def load_words(load: LoadRating) -> str:
    """The rating against occupant and everything carried."""
    carried = ", ".join(f"{each.name} {each.mass_kg:.1f} kg" for each in load.loads)
    if not load.limits:
        return f"{carried}; {load.load_kg:.1f} kg in all. No part states a limit."
    least = ", ".join(f"{each.label.lower()} {each.code}" for each in load.least)
    verdict = (
        f"{load.margin_kg:.1f} kg to spare"
        if load.bears
        else f"OVERLOADED by {-load.margin_kg:.1f} kg: the maker's limit is a limit, whatever else "
        "is accepted"
    )
    return (
        f"{carried}; {load.load_kg:.1f} kg in all. Rated load {load.rated_kg:g} kg ({least}): "
        f"{verdict}."
    )
