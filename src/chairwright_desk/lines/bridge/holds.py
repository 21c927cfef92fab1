"""What a line holds: how many set-ups, and each choice's options."""

from __future__ import annotations

import math
from dataclasses import dataclass

from chairwright.fitting.line_counts import line_counts
from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import Line, Option
from chairwright.units import inches_text

RANGES = {
    "standard": "Standard options",
    "made_to_order": "With sizes made to order",
    "on_request": "With options on request",
    "every": "With both",
}
SETTLED = frozenset({"price", "surcharge", "extra_days", "load_limit_kg"})
"""Numbers that every option has; they stand in columns of their own."""

UNITS = {
    "mm": "mm", "kg": "kg", "deg": "deg", "kgm2": "kg m²", "n": "N", "l": "l",
}  # fmt: skip

LEAST_IN_INCHES_MM = 10.0
"""Shorter lengths would be lost in eighths of an inch."""


@dataclass(frozen=True)
class OptionRow:
    """One option.

    Parameters
    ----------
    code, name, kind : str
        ``kind`` is empty for a standard one.
    numbers : tuple of (str, str)
        What it measures, and the value with its unit.
    price, days, load : str
        Empty for nothing.
    line : int
        Of the file.
    """

    code: str
    name: str
    kind: str
    numbers: tuple[tuple[str, str], ...]
    price: str
    days: str
    load: str
    line: int


@dataclass(frozen=True)
class ChoiceTable:
    """A choice with its options; ``counts`` by standard, made to order, on request."""

    name: str
    label: str
    counts: tuple[int, int, int]
    options: tuple[OptionRow, ...]


@dataclass(frozen=True)
class Holds:
    """A line.

    Parameters
    ----------
    name, title, version, maker, currency, base_price, units : str
    build_days : int
    totals : tuple of (str, str)
        Range and number of set-ups.
    rules : tuple of (str, int)
        Reason and line of the file.
    choices : tuple of ChoiceTable
    """

    name: str
    title: str
    version: str
    maker: str
    currency: str
    base_price: str
    build_days: int
    units: str
    totals: tuple[tuple[str, str], ...]
    rules: tuple[tuple[str, int], ...]
    choices: tuple[ChoiceTable, ...]


def holds_of(line: Line, units: str = "mm") -> Holds:
    """Put a line into words.

    Parameters
    ----------
    line : Line
    units : {"mm", "in"}
        ``"in"`` adds inches to lengths.
    """
    counts = line_counts(line)
    by_choice = {each.choice: each.options for each in counts.choices}
    return Holds(
        name=line.name,
        title=line.title,
        version=line.version,
        maker=line.maker,
        currency=line.currency,
        base_price=f"{line.base_price:,.0f}",
        build_days=line.build_days,
        units="inches" if line.typed_in == "in" else "millimetres",
        totals=tuple((words, f"{getattr(counts, name):,}") for name, words in RANGES.items()),
        rules=tuple((rule.because, _line(rule.where)) for rule in line.rules),
        choices=tuple(
            ChoiceTable(
                name,
                CHOICES[name].label,
                by_choice[name],
                tuple(_row(option, units) for option in choice.options),
            )
            for name, choice in line.choices.items()
        ),
    )


def _row(option: Option, units: str) -> OptionRow:
    numbers = option.numbers
    price = numbers.get("price", 0.0) + numbers.get("surcharge", 0.0)
    days, load = numbers.get("extra_days", 0.0), numbers.get("load_limit_kg", math.inf)
    measured = ((key, value) for key, value in numbers.items() if key not in SETTLED)
    return OptionRow(
        code="" if option.code == NONE else option.code,
        name=option.name,
        kind="" if option.kind == "standard" else option.kind,
        numbers=tuple(_number(key, value, units) for key, value in measured if _told(key, value)),
        price=f"{price:,.0f}" if price else "",
        days=f"{days:.0f}" if days else "",
        load=f"{load:.0f}" if math.isfinite(load) else "",
        line=_line(option.where),
    )


def _told(key: str, value: float) -> bool:
    """Whether a number is a measure; marks of the reader's own have no unit."""
    return math.isfinite(value) and key.rpartition("_")[2] in UNITS


def _number(key: str, value: float, units: str) -> tuple[str, str]:
    """What a number measures, and its value: ``("bead seat", "540 mm")``."""
    words, _, unit = key.rpartition("_")
    label = words.replace("_", " ")
    told = f"{round(value, 3):g} {UNITS[unit]}"
    if unit == "mm" and units == "in" and abs(value) >= LEAST_IN_INCHES_MM:
        return label, f"{told}, {inches_text(value)}"
    return label, told


def _line(where: str) -> int:
    after = where.rpartition(":")[2]
    return int(after) if after.isdigit() else 0
