"""From a client with complete measures to the list of targets."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from chairwright.errors import InputError, Problem
from chairwright.figures.registry import FIGURES
from chairwright.person.client import Client
from chairwright.person.estimates import MeasureSet
from chairwright.targets.audience import audience
from chairwright.targets.envelope import Range, clip
from chairwright.targets.from_limbs import limb_targets
from chairwright.targets.from_rules import rule_targets
from chairwright.targets.limits import limit_targets
from chairwright.targets.own import Key, check_own, overlay_all
from chairwright.targets.rules import RULE_SETS
from chairwright.targets.target import Target
from chairwright.validation import suggest


def targets_for(client: Client, measures: MeasureSet) -> list[Target]:
    """Every target of one client.

    Parameters
    ----------
    client : Client
        ``rule_set`` is a key of `chairwright.targets.rules.RULE_SETS`.
    measures : MeasureSet
        From `chairwright.person.estimates.complete`.

    Returns
    -------
    list of Target
        In the order of the figures' registry, figures of a place last, the must before the
        preference; at most one
        of each for a figure. A rule about the client's own measures goes before a general
        limit, the clinician's own target before both. A preference from a rule or a limit
        is moved inside the must of its figure.

    Raises
    ------
    InputError
        For an unknown rule set, an own target that cannot be meant, or a weight on a figure
        of which nothing is preferred.
    """
    _check_rule_set(client)
    check_own(client.own_targets)
    laid = overlay_all(_without_own(client, measures), client.own_targets)
    own = {(target.figure, target.must) for target in client.own_targets}
    inside = [target if key in own else _inside(target, laid) for key, target in laid.items()]
    inside = _weighed(inside, client)
    order = {name: place for place, name in enumerate(FIGURES)}
    of_places = len(order)
    return sorted(inside, key=lambda t: (order.get(t.figure, of_places), t.figure, not t.must))


def _without_own(client: Client, measures: MeasureSet) -> dict[Key, Target]:
    limits = limit_targets(audience(client, measures))
    flat = [t for t in limits if t.figure == "seat_angle_deg" and not t.must]
    drafts = [
        *flat,
        *rule_targets(client, measures),
        *limb_targets(client, measures),
        *limits,
    ]
    return _first_of_each(drafts)


def _first_of_each(drafts: Iterable[Target]) -> dict[Key, Target]:
    found: dict[Key, Target] = {}
    for target in drafts:
        found.setdefault((target.figure, target.must), target)
    return found


def _inside(target: Target, laid: dict[Key, Target]) -> Target:
    must = laid.get((target.figure, True))
    if target.must or must is None:
        return target
    ends = Range(target.low, target.high)
    moved = clip(ends, must.low, must.high)
    if moved == ends:
        return target
    reason = f"{target.reason}; moved inside what must hold"
    return replace(target, low=moved.low, high=moved.high, reason=reason)


def _weighed(targets: Sequence[Target], client: Client) -> list[Target]:
    """Give the rules' preferences the clinician's weights."""
    preferred = [target.figure for target in targets if not target.must]
    idle = [figure for figure in client.weights if figure not in preferred]
    if idle:
        raise InputError(*(_idle_weight(client, figure, preferred) for figure in idle))
    return [_with_weight(target, client.weights) for target in targets]


def _with_weight(target: Target, weights: Mapping[str, float]) -> Target:
    if target.must or target.figure not in weights:
        return target
    weight = weights[target.figure]
    reason = f"{target.reason}; weight {weight:g} instead of {target.weight:g}: "
    return replace(target, weight=weight, reason=f"{reason}clinician's decision")


def _idle_weight(client: Client, figure: str, preferred: Sequence[str]) -> Problem:
    return Problem(
        where=client.where.get(f"weights.{figure}", f"client {client.reference}"),
        must="a weight must be for a figure of which something is preferred for this client",
        got=figure,
        remedy=suggest(figure, preferred),
    )


def _check_rule_set(client: Client) -> None:
    if client.rule_set in RULE_SETS:
        return
    raise InputError(
        Problem(
            where=client.where.get("rule_set", f"client {client.reference}"),
            must=f"the rule set must be one of {', '.join(RULE_SETS)}",
            got=repr(client.rule_set),
            remedy="Write one of these, or leave it out for 'envelope'.",
        )
    )
