"""A re-fit as plain data for JSON."""

from __future__ import annotations

from dataclasses import asdict

from chairwright.cli.report_adjust import adjust_data
from chairwright.cli.report_json import Data, judged_data, line_data, number
from chairwright.order.change import Change, ChangeItem
from chairwright.order.refit import Refit
from chairwright.order.refit_chosen import ChosenRefit
from chairwright.order.refit_trial import trial_checks
from chairwright.papers.refit_words import person_rows


def refit_data(told: ChosenRefit) -> Data:
    """Everything about a re-fit.

    Parameters
    ----------
    told : ChosenRefit

    Returns
    -------
    dict
        Money as text with its digits, in the line's currency.
    """
    found = told.refit
    rows = person_rows(found.present.client, found.person.client)
    return {
        "client": found.person.client.reference,
        "from": found.present.name,
        "line": line_data(found.line),
        "set_ups": found.count,
        "looked_at": found.looked_at,
        "made_to_order_looked_at": found.extent != "standard",
        "person": [asdict(row) for row in rows],
        "present": {
            "choices": None if found.new_chair else found.present.setup.codes,
            "kept": found.present.kept,
            "why_not": found.why_not or None,
            "meets_every_must": found.now is not None and not found.now.broken,
            "verdicts": None
            if found.now is None
            else [judged_data(item) for item in found.now.judged],
        },
        "nothing_to_change": found.nothing_to_change,
        "frame_kept": found.frame_kept,
        "front": [
            {"row": each.number, "missed": each.cost, **change_data(each.change)}
            for each in found.points
        ],
        "reasons": _reasons(found),
        "chosen": _chosen(told),
    }


def change_data(change: Change) -> Data:
    """What one change takes."""
    return {
        "choices": {name: option.code for name, option in change.last.options.items()},
        "money": f"{change.money:f}",
        "currency": change.currency,
        "minutes": change.minutes,
        "parts_bought": len(change.bought),
        "moved": len(change.moved),
        "new_frame": change.new_frame,
        "new_chair": change.new_chair,
        "items": [_item(each) for each in change.items],
        "shared": [{**asdict(each), "money": f"{each.money:f}"} for each in change.shared],
        "kept": list(change.kept),
        "money_source": change.money_source,
        "minutes_source": change.minutes_source,
    }


def _item(item: ChangeItem) -> Data:
    return {**asdict(item), "money": f"{item.money:f}"}


def _reasons(found: Refit) -> Data | None:
    if found.reasons is None:
        return None
    pairs = zip(found.reasons.corrections, found.nearest, strict=True)
    return {
        "about": "the present frame kept" if found.points else "the whole line",
        "complete": found.reasons.complete,
        "corrections": [
            {
                "give_up": [
                    {**asdict(g.target), "nearest": number(g.value), "by": number(g.by)}
                    for g in each.gives
                ],
                "change": change_data(change),
            }
            for each, change in pairs
        ],
        "conflicts": [[asdict(target) for target in group] for group in found.reasons.conflicts],
    }


def _chosen(told: ChosenRefit) -> Data | None:
    if told.point is None or told.setup is None:
        return None
    setup = told.setup
    return {
        "row": told.point.number,
        "figures": {name: number(value) for name, value in setup.figures.items()},
        "verdicts": [judged_data(item) for item in setup.judged],
        "adjust": None if told.steps is None else adjust_data(told.steps),
        "trial": list(trial_checks(told.point.change, setup)),
    }
