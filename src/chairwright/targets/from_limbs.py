"""Targets of legs and arms: foot supports, foot propulsion, arm supports."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.person.client import Client, Measure
from chairwright.person.estimates import MeasureSet
from chairwright.targets.audience import audience, base_measure, has_elbow
from chairwright.targets.envelope import hull, measure_words, number, preferred
from chairwright.targets.from_rules import cited, enveloped, preference
from chairwright.targets.heights import seat_height_for_clearance
from chairwright.targets.rules import RuleResult, all_rules, apply_rule, rules_for
from chairwright.targets.target import Target

COMMON = "common practice, no source"
LEG_SPREAD_MM = 15.0
"""How far the footplate may stand off the lower leg length (common practice, no source)."""

FLATTEST_HANGER_DEG = 60.0
"""Flattest usual hanger to the horizontal (common practice, no source)."""

SEAT = "cushion_to_floor_front_mm"
LEG = "leg_support_length_mm"


def limb_targets(client: Client, measures: MeasureSet) -> Iterator[Target]:
    """Targets of foot supports, seat height and arm supports for the limbs that are there.

    Parameters
    ----------
    client : Client
    measures : MeasureSet

    Yields
    ------
    Target
        No foot-support target when no foot rests on a support; no arm-support target when
        no elbow is left.
    """
    who = audience(client, measures)
    if has_elbow(client):
        arms = rules_for("arm_height_mm", client, measures)
        yield from enveloped("arm_height_mm", arms, client, measures)
    if "foot_supports" in who:
        yield from _foot_support(client, measures, pushes="foot_propelling" in who)
    if "foot_propelling" in who:
        yield from enveloped(SEAT, rules_for(SEAT, client, measures), client, measures)
    elif "feet_on_supports" in who:
        yield from _seat_over_supports(client, measures)
    yield _seat_alarm()


def _foot_support(client: Client, measures: MeasureSet, *, pushes: bool) -> Iterator[Target]:
    clearance = rules_for("footplate_clearance_mm", client, measures)
    yield from enveloped("footplate_clearance_mm", clearance, client, measures)
    results = rules_for(LEG, client, measures)
    low, high = hull(preferred(results, client.rule_set))
    if low is None or high is None:
        return
    lowered = _most_lowered(client, measures) if pushes else 0.0
    yield Target(
        figure=LEG,
        low=low - LEG_SPREAD_MM - lowered,
        high=high + LEG_SPREAD_MM,
        must=True,
        weight=1.0,
        source=f"{cited(preferred(results, client.rule_set))}; the width: {COMMON}",
        reason=_leg_reason(results[0], lowered),
        tolerance=results[0].tolerance,
    )
    yield from preference(LEG, results, client.rule_set)


def _most_lowered(client: Client, measures: MeasureSet) -> float:
    # How far foot propulsion may bring the seat below the pushing lower leg.
    rules = [r for r in rules_for(SEAT, client, measures) if r.counts]
    return max((-(r.rule.add_low or 0.0) for r in rules), default=0.0)


def _leg_reason(result: RuleResult, lowered: float) -> str:
    words = measure_words(result.measure) if result.measure else ""
    reason = f"{words} + 0 mm, {LEG_SPREAD_MM:g} mm either way; the shorter side where they differ"
    if not lowered:
        return reason
    return (
        f"{reason}. Up to {number(lowered)} mm shorter still: the seat is lowered for the pushing "
        "foot and the other foot's plate must clear the floor"
    )


def _seat_over_supports(client: Client, measures: MeasureSet) -> Iterator[Target]:
    leg = base_measure("lower_leg_length", "foot_supports", client, measures)
    if leg is None:
        return
    results = rules_for(SEAT, client, measures)
    clearance = rules_for("footplate_clearance_mm", client, measures)
    yield _seat_must(leg, max(result.low or 0.0 for result in clearance))
    yield from preference(SEAT, results, client.rule_set)


def _seat_must(leg: Measure, clearance_mm: float) -> Target:
    least = seat_height_for_clearance(leg.value, clearance_mm, FLATTEST_HANGER_DEG)
    alarm = all_rules()["dsouza_height"]
    _, most = apply_rule(alarm)
    high = most if most is not None and most > leg.value + clearance_mm else None
    above = "" if high is None else f"; above {number(high)} mm no occupied seat was measured"
    return Target(
        figure=SEAT,
        low=round(least, 1),
        high=high,
        must=True,
        weight=1.0,
        source=f"derived: clearance = seat height - lower leg x sin(leg angle); the flattest "
        f"hanger of {FLATTEST_HANGER_DEG:g} deg: {COMMON}; {alarm.citation}",
        reason=f"{measure_words(leg)} on a {FLATTEST_HANGER_DEG:g} deg hanger and "
        f"{number(clearance_mm)} mm under the footplate{above}",
        tolerance=leg.tolerance,
    )


def _seat_alarm() -> Target:
    alarm = all_rules()["dsouza_height"]
    low, high = apply_rule(alarm)
    return Target(
        figure=SEAT,
        low=low,
        high=high,
        must=False,
        weight=1.0,
        source=alarm.citation,
        reason=f"occupied seats of manual chairs were measured from {number(low or 0.0)} to "
        f"{number(high or 0.0)} mm; outside, check the numbers",
    )
