"""Targets that a client's own measures set, by the published sizing rules."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chairwright.person.client import Client
from chairwright.person.estimates import MeasureSet
from chairwright.targets.envelope import (
    Range,
    add_words,
    disagree,
    envelope,
    hull,
    list_words,
    measure_words,
    preferred,
    set_words,
    setters,
)
from chairwright.targets.heights import drop_angle_deg
from chairwright.targets.rules import RuleResult, rules_for
from chairwright.targets.scope import gauge_note
from chairwright.targets.target import Target

ENVELOPED = ("seat_width_mm", "seat_depth_mm", "back_height_mm", "elbow_angle_deg")
CONFLICT = "These sources conflict: no value satisfies all of them; record who accepted the value"


def rule_targets(client: Client, measures: MeasureSet) -> Iterator[Target]:
    """Must = envelope of the rules, prefer = range of the preferred rule, dimension by dimension.

    Parameters
    ----------
    client : Client
    measures : MeasureSet

    Yields
    ------
    Target
        For the dimensions of `ENVELOPED` and the seat-to-back and seat angles.
    """
    for figure in ENVELOPED:
        results = rules_for(figure, client, measures)
        yield from enveloped(figure, results, client, measures)
    angle = rules_for("seat_to_back_angle_deg", client, measures)
    yield from preference("seat_to_back_angle_deg", angle, client.rule_set)
    yield from _seat_angle(client, measures)


def enveloped(
    figure: str, results: Sequence[RuleResult], client: Client, measures: MeasureSet
) -> Iterator[Target]:
    """Yield the must and the preference of one dimension.

    Parameters
    ----------
    figure : str
    results : sequence of RuleResult
        Every rule on that dimension, evaluated.
    client : Client
    measures : MeasureSet

    Yields
    ------
    Target
        None when no rule speaks.
    """
    if not any(result.counts or result.rule.use == "bound" for result in results):
        return
    ends = envelope(results)
    note = _scope(figure, ends, measures)
    yield Target(
        figure=figure,
        low=ends.low,
        high=ends.high,
        must=True,
        weight=1.0,
        source=cited([r for r in results if r.counts or r.rule.use == "bound"]),
        reason=". ".join(part for part in (_must_reason(ends, results), note) if part),
        tolerance=spread(setters(ends, results)),
    )
    yield from preference(figure, results, client.rule_set)


def preference(figure: str, results: Sequence[RuleResult], rule_set: str) -> Iterator[Target]:
    """Yield the preferred rule's range as a preference.

    Parameters
    ----------
    figure : str
    results : sequence of RuleResult
    rule_set : str
        Key of `targets.rules.RULE_SETS`.

    Yields
    ------
    Target
        None when no rule counts.
    """
    chosen = preferred(results, rule_set)
    if not chosen:
        return
    ends = hull(chosen)
    yield Target(
        figure=figure,
        low=ends.low,
        high=ends.high,
        must=False,
        weight=1.0,
        source=cited(chosen),
        reason=f"{_span_words(ends, chosen)}; {set_words(chosen, rule_set)}",
        tolerance=spread(chosen),
    )


def cited(results: Sequence[RuleResult]) -> str:
    """Join the citations of rules, each once, in the table's order."""
    return "; ".join(dict.fromkeys(result.source for result in results))


def spread(results: Sequence[RuleResult]) -> float:
    """Largest tape tolerance behind some rules [the dimension's unit]."""
    return max((result.tolerance for result in results), default=0.0)


def _must_reason(ends: Range, results: Sequence[RuleResult]) -> str:
    parts = [f"{_span_words(ends, results)}: {list_words(results)}"]
    if disagree(results):
        parts.append(CONFLICT)
    return ". ".join(parts)


def _span_words(ends: Range, results: Sequence[RuleResult]) -> str:
    # The client's numbers behind both ends, and what is added when it is one number.
    low, high = ends
    bases = {r.measure.name: r.measure for r in setters(ends, results) if r.measure}
    words = " and ".join(measure_words(measure) for measure in bases.values())
    if len(bases) == 1 and low is not None and high is not None:
        start = next(iter(bases.values())).value
        return f"{words} {add_words(low - start, high - start)}"
    return words or "for every adult"


def _scope(figure: str, ends: Range, measures: MeasureSet) -> str:
    if figure != "seat_width_mm" or ends.low is None:
        return ""
    return gauge_note(measures.get("body_mass").value, ends.low)


def _seat_angle(client: Client, measures: MeasureSet) -> Iterator[Target]:
    depths = preferred(rules_for("seat_depth_mm", client, measures), client.rule_set)
    drops = [r for r in rules_for("seat_drop_mm", client, measures) if r.counts]
    seat, drop = hull(depths), hull(drops)
    if seat.low is None or seat.high is None or drop.low is None or drop.high is None:
        return
    depth = (seat.low + seat.high) / 2
    yield Target(
        figure="seat_angle_deg",
        low=round(drop_angle_deg(drop.low, depth), 2),
        high=round(drop_angle_deg(drop.high, depth), 2),
        must=False,
        weight=1.0,
        source=f"{cited(drops)}, angle derived: asin(drop / depth)",
        reason=f"rear edge {drop.low:g} to {drop.high:g} mm lower than the front edge over a "
        f"seat {depth:.0f} mm deep",
    )
