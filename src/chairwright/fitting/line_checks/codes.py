"""Order codes that are easily taken for one another, and prices that look wrong."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.fitting.line_checks.finding import Finding, remark
from chairwright.line.model import Line, Option
from chairwright.reading import YamlSource
from chairwright.validation import place

ALIKE = str.maketrans("OQI", "001")
"""Letters that are read as digits (common practice, no source)."""


def code_findings(line: Line) -> Iterator[Finding]:
    """Codes of one choice that differ only by letters that look like digits.

    Parameters
    ----------
    line : Line

    Yields
    ------
    Finding
        Remarks.
    """
    for choice in line.choices.values():
        first: dict[str, Option] = {}
        for option in choice.options:
            seen = first.setdefault(option.code.translate(ALIKE), option)
            if seen.code != option.code:
                yield remark(
                    option.where,
                    "codes of one choice should not be easily mistaken for each other",
                    f"{option.code} beside {seen.code} (line {seen.where.rpartition(':')[2]})",
                    "Check the letters O, Q and I against the digits 0 and 1.",
                )


def price_findings(line: Line, source: YamlSource) -> Iterator[Finding]:
    """A chair that costs nothing, parts that cost more than the chair.

    Parameters
    ----------
    line : Line
    source : YamlSource
        The line's file.

    Yields
    ------
    Finding
        Remarks.
    """
    if not line.base_price:
        remedy = "Write the price of the chair as it stands, without the options."
        where = place(source, ("base_price",))
        yield remark(where, "a chair should have a price", "0", remedy)
        return
    for name, choice in line.choices.items():
        told: set[str] = set()
        for option in choice.options:
            price = option.numbers.get("price", 0.0)
            if price > line.base_price and option.where not in told:
                told.add(option.where)
                yield remark(
                    option.where,
                    f"{choice.label.lower()} {option.code} should cost less than the whole chair",
                    f"{price:g} beside a base price of {line.base_price:g} {line.currency}",
                    f"Check the decimal point of {name}'s price and of base_price.",
                )
