"""Where rules disagree: the envelope of all, the range of the preferred, and both in words."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from chairwright.person.client import Measure
from chairwright.person.measures import CATALOGUE
from chairwright.targets.rules import ENVELOPE, RULE_SETS, RuleResult

DEFAULT_ORDER = (
    "propulsion",
    "who",
    "training_guide",
    "exam_japan",
    "prosthetics_school",
    "us_lists",
    "pmr",
    "nsw",
    "werner",
    "sci_page",
)
"""Whose range is preferred when nobody chose: the first of these that speaks. The propulsion
studies speak only of foot propulsion and the elbow, where they measured the pushing itself;
WHO comes next; the rest is a working order (common practice, no source)."""


class Range(NamedTuple):
    """Low and high end; None leaves that end open."""

    low: float | None
    high: float | None


def envelope(results: Sequence[RuleResult]) -> Range:
    """Range from the smallest low to the largest high of the rules that count.

    Parameters
    ----------
    results : sequence of RuleResult

    Returns
    -------
    Range
        Rules with one open end (bounds) never widen it: both ends are moved inside the
        strictest bounds. Without any rule that counts, the bounds alone make the range.
    """
    spans = [result for result in results if result.counts]
    bounds = [result for result in results if result.rule.use == "bound"]
    least = max((r.low for r in bounds if r.low is not None), default=None)
    most = min((r.high for r in bounds if r.high is not None), default=None)
    if not spans:
        return Range(least, most)
    return clip(hull(spans), least, most)


def hull(results: Sequence[RuleResult]) -> Range:
    """Range from the smallest low to the largest high, whatever the rules are."""
    low = min((r.low for r in results if r.low is not None), default=None)
    high = max((r.high for r in results if r.high is not None), default=None)
    return Range(low, high)


def clip(ends: Range, least: float | None, most: float | None) -> Range:
    """Move both ends of a range inside limits.

    Parameters
    ----------
    ends : Range
    least, most : float or None
        None is no limit.

    Returns
    -------
    Range
        An open end stays open.
    """

    def inside(end: float | None) -> float | None:
        if end is None:
            return None
        end = end if least is None else max(end, least)
        return end if most is None else min(end, most)

    return Range(inside(ends.low), inside(ends.high))


def preferred(results: Sequence[RuleResult], rule_set: str) -> tuple[RuleResult, ...]:
    """Rules of the set whose range is preferred.

    Parameters
    ----------
    results : sequence of RuleResult
    rule_set : str
        Key of `RULE_SETS`.

    Returns
    -------
    tuple of RuleResult
        Those of the chosen set; where it is silent, or for ``envelope``, those of the first
        set of `DEFAULT_ORDER` that speaks. Empty when none does.
    """
    counting = [result for result in results if result.counts]
    chosen = () if rule_set == ENVELOPE else (rule_set,)
    for key in (*chosen, *DEFAULT_ORDER):
        own = tuple(result for result in counting if result.rule.rule_set == key)
        if own:
            return own
    return ()


def setters(ends: Range, results: Sequence[RuleResult]) -> tuple[RuleResult, ...]:
    """Rules that count or bound and that set an end of the range."""

    def sets(result: RuleResult) -> bool:
        low_set = result.low is not None and result.low == ends.low
        return low_set or (result.high is not None and result.high == ends.high)

    return tuple(r for r in results if (r.counts or r.rule.use == "bound") and sets(r))


def disagree(results: Sequence[RuleResult]) -> bool:
    """Whether no single value satisfies every rule that counts."""
    spans = [result for result in results if result.counts]
    low = max((r.low for r in spans if r.low is not None), default=float("-inf"))
    high = min((r.high for r in spans if r.high is not None), default=float("inf"))
    return low > high


def number(value: float) -> str:
    """Write a number with at most one digit after the point."""
    return f"{value:.1f}".removesuffix(".0")


def range_words(low: float | None, high: float | None) -> str:
    """Write a range: ``420 to 440``, ``380``, ``at least 50`` or ``at most 370``."""
    if high is None:
        return f"at least {number(low or 0.0)}"
    if low is None:
        return f"at most {number(high)}"
    return number(low) if low == high else f"{number(low)} to {number(high)}"


def measure_words(measure: Measure) -> str:
    """Write a measure with its value: ``hip width 380 mm``, ``estimated`` when nobody took it."""
    label = CATALOGUE[measure.name].label.lower()
    side = "" if measure.side == "middle" else f"{measure.side} "
    guess = " (estimated, not measured)" if measure.estimated else ""
    return f"{side}{label} {number(measure.value)} {measure.quantity.unit}{guess}"


def add_words(low: float, high: float) -> str:
    """Write what a rule adds: ``+ 0 to 50.8 mm``, ``- 50 to - 30 mm``, ``+ 0 mm``."""
    first, last = (f"{'-' if end < 0 else '+'} {number(abs(end))}" for end in (low, high))
    if low == high:
        return f"{first} mm"
    return f"{first} to {last if low < 0 else number(high)} mm"


def list_words(results: Sequence[RuleResult]) -> str:
    """List what each rule asks, refused ones last with the reason."""
    heard = [r for r in results if r.counts or r.rule.use == "bound"]
    refused = [r for r in results if r.refused]
    parts = [f"{r.rule.source} {range_words(r.low, r.high)}" for r in heard]
    parts += [
        f"{r.rule.source} {range_words(r.low, r.high)} not counted ({r.refused})" for r in refused
    ]
    return "; ".join(parts)


def set_words(results: Sequence[RuleResult], rule_set: str) -> str:
    """Say whose rule is preferred and why it is that one."""
    label = RULE_SETS[results[0].rule.rule_set].label
    if rule_set in (ENVELOPE, results[0].rule.rule_set):
        return f"preferred: {label}"
    return f"{RULE_SETS[rule_set].label} is silent here; preferred: {label}"
