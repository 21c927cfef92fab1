"""How many set-ups a line holds, by what has to be asked for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection
from dataclasses import dataclass

from chairwright.line.counting import count_allowed
from chairwright.line.model import Line, OptionKind

STANDARD: OptionKind = "standard"
MADE_TO_ORDER: OptionKind = "made to order"
ON_REQUEST: OptionKind = "on request"
KINDS = (STANDARD, MADE_TO_ORDER, ON_REQUEST)


@dataclass(frozen=True)
class OptionCount:
    """How many options one choice has of each kind, in the order of `KINDS`."""

    choice: str
    label: str
    options: tuple[int, int, int]


@dataclass(frozen=True)
class LineCounts:
    """What a line holds, for nobody in particular.

    Parameters
    ----------
    standard : int
        Set-ups of standard options alone.
    made_to_order : int
        With sizes made to order beside them.
    on_request : int
        With options on request beside the standard ones.
    every : int
        With both.
    choices : tuple of OptionCount
    """

    standard: int
    made_to_order: int
    on_request: int
    every: int
    choices: tuple[OptionCount, ...]


def line_counts(line: Line) -> LineCounts:
    """Count the set-ups that a line's rules allow; every foot support and none counts.

    Parameters
    ----------
    line : Line

    Returns
    -------
    LineCounts
        Exact.
    """
    return LineCounts(
        standard=_count(line, {STANDARD}),
        made_to_order=_count(line, {STANDARD, MADE_TO_ORDER}),
        on_request=_count(line, {STANDARD, ON_REQUEST}),
        every=count_allowed(line),
        choices=tuple(_options(line, name) for name in line.choices),
    )


def _count(line: Line, kinds: Collection[OptionKind]) -> int:
    allowed = {
        name: [at for at, option in enumerate(choice.options) if option.kind in kinds]
        for name, choice in line.choices.items()
    }
    return count_allowed(line, allowed)


def _options(line: Line, name: str) -> OptionCount:
    choice = line.choices[name]
    found = Counter(option.kind for option in choice.options)
    return OptionCount(
        name, choice.label, (found[STANDARD], found[MADE_TO_ORDER], found[ON_REQUEST])
    )
