"""Order codes that are easily taken for one another."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.fitting.line_checks.finding import Finding, remark
from chairwright.line.model import Line, Option

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
