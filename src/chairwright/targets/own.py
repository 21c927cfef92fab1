"""The clinician's own targets: checked, then laid over what the rules say."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from chairwright.errors import InputError, Problem
from chairwright.figures.registry import FIGURES
from chairwright.person.client import OwnTarget
from chairwright.targets.target import Target

Key = tuple[str, bool]
"""Figure, and whether it is a must."""


def check_own(own: Sequence[OwnTarget]) -> None:
    """Refuse own targets that cannot be meant.

    Parameters
    ----------
    own : sequence of OwnTarget

    Raises
    ------
    InputError
        For an unknown figure, no end at all, ends the wrong way round, a weight below zero,
        or the same figure twice as a must (or twice as a preference).
    """
    problems: list[Problem] = []
    seen: set[Key] = set()
    for target in own:
        problems += _problems(target, seen)
        seen.add((target.figure, target.must))
    if problems:
        raise InputError(*problems)


def overlay(rule: Target | None, own: OwnTarget) -> Target:
    """Lay one own target over the rule's target of the same figure and kind.

    Parameters
    ----------
    rule : Target or None
        None when no rule speaks of the figure.
    own : OwnTarget

    Returns
    -------
    Target
        An end that the clinician gave replaces the rule's. An end left out stays the
        rule's, unless it would then lie on the wrong side of the given one: then it is open.
        The tape's tolerance stays only while an end of the rule stays.
    """
    low, high = own.low, own.high
    if rule is not None and low is None and (rule.low is None or rule.low <= _high(own)):
        low = rule.low
    if rule is not None and high is None and (rule.high is None or rule.high >= _low(own)):
        high = rule.high
    kept = rule is not None and (
        (own.low is None and low is not None) or (own.high is None and high is not None)
    )
    return Target(
        figure=own.figure,
        low=low,
        high=high,
        must=own.must,
        weight=own.weight,
        source=f"clinician's decision; other end: {rule.source}"
        if rule is not None and kept
        else "clinician's decision",
        reason=own.reason,
        tolerance=rule.tolerance if rule is not None and kept else 0.0,
    )


def overlay_all(rules: Mapping[Key, Target], own: Sequence[OwnTarget]) -> dict[Key, Target]:
    """Lay every own target over the rules' targets.

    Parameters
    ----------
    rules : mapping of (figure, must) to Target
    own : sequence of OwnTarget
        Already checked by `check_own`.

    Returns
    -------
    dict of (figure, must) to Target
    """
    laid = dict(rules)
    for target in own:
        key = (target.figure, target.must)
        laid[key] = overlay(rules.get(key), target)
    return laid


def _low(own: OwnTarget) -> float:
    return float("-inf") if own.low is None else own.low


def _high(own: OwnTarget) -> float:
    return float("inf") if own.high is None else own.high


def _problems(own: OwnTarget, seen: set[Key]) -> list[Problem]:
    where = own.where or f"own target {own.figure}"
    kind = "must" if own.must else "preference"
    checks = (
        (
            own.figure not in FIGURES,
            "an own target must name a figure of this program",
            repr(own.figure),
            "Take a name from the list of figures.",
        ),
        (
            own.low is None and own.high is None,
            "an own target must have a low or a high end",
            "neither",
            "Give low, high or both.",
        ),
        (
            _low(own) > _high(own),
            "the low end must not be above the high end",
            f"{_low(own):g} to {_high(own):g}",
            "Swap or correct the two numbers.",
        ),
        (own.weight < 0, "a weight must not be below zero", f"{own.weight:g}", "Use 1 as usual."),
        (
            (own.figure, own.must) in seen,
            f"a figure must have at most one own {kind}",
            f"a second one for {own.figure}",
            "Keep one of the two.",
        ),
    )
    return [Problem(where, must, got, remedy) for bad, must, got, remedy in checks if bad]
