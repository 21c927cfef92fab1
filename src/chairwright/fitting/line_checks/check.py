"""All checks of a line, in the order of its file."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.fitting.line_checks.anti_tip import anti_tip_findings
from chairwright.fitting.line_checks.codes import code_findings
from chairwright.fitting.line_checks.finding import Finding
from chairwright.fitting.line_checks.gears import usable_gears
from chairwright.fitting.line_checks.heights import height_findings
from chairwright.fitting.line_checks.loads import load_findings
from chairwright.fitting.line_checks.offers import (
    custom_findings,
    offer_findings,
    price_findings,
)
from chairwright.fitting.line_checks.order import order_findings
from chairwright.fitting.line_checks.rubbing import rubbing_findings
from chairwright.fitting.line_checks.rules import rule_findings
from chairwright.fitting.line_checks.standing import standing_findings
from chairwright.fitting.line_checks.strikes import strike_findings
from chairwright.fitting.line_checks.values import value_findings
from chairwright.line.model import Line
from chairwright.reading import FileText, read_yaml


def check_line(line: Line, text: FileText | None = None) -> tuple[Finding, ...]:
    """Everything that is wrong with a line that can be read, or that its writer should look at.

    Parameters
    ----------
    line : Line
    text : FileText or None
        What the line was read from, when that is no file.

    Returns
    -------
    tuple of Finding
        By line of the file.

    Raises
    ------
    InputError
        When the file can no longer be read.
    """
    return tuple(sorted(_all(line, text), key=lambda finding: finding.line_number))


def _all(line: Line, text: FileText | None) -> Iterator[Finding]:
    source = read_yaml(text or line.path)
    yield from value_findings(source)
    yield from order_findings(source)
    yield from code_findings(line)
    yield from price_findings(line, source)
    yield from offer_findings(line)
    yield from custom_findings(line)
    yield from rule_findings(line)
    yield from load_findings(line)
    yield from rubbing_findings(line)
    usable = usable_gears(line)
    yield from standing_findings(line, usable)
    if len(usable):
        yield from height_findings(line, usable)
        yield from strike_findings(line, usable)
        yield from anti_tip_findings(line, usable)
