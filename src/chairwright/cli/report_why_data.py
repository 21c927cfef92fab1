"""The explanation of a set-up as plain data for JSON."""

from __future__ import annotations

from chairwright.cli.report_json import Data, judged_data, number
from chairwright.fitting.next_best import NextBest, Shift
from chairwright.fitting.one_change import Step
from chairwright.fitting.rejected import Rejected
from chairwright.fitting.target_reasons import Break, Nearer, Reason, cost_of
from chairwright.fitting.why import Why


def why_data(why: Why) -> Data:
    """The explanation of the best set-up.

    Parameters
    ----------
    why : Why

    Returns
    -------
    dict
        Keys ``cost``, ``targets``, ``choices`` and ``only_option``.
    """
    return {
        "cost": why.cost,
        "targets": [_reason_data(each) for each in why.reasons],
        "choices": [_choice_data(each, why) for each in why.choices],
        "only_option": {name: why.setup.codes[name] for name in why.only},
    }


def _reason_data(each: Reason) -> Data:
    return {
        **judged_data(each.judged),
        "cost": each.cost,
        "decided_by": None if each.decided_by is None else _step_data(each.decided_by),
        "nearer": None if each.nearer is None else _nearer_data(each.nearer),
    }


def _step_data(step: Step) -> Data:
    return {"choice": step.choice, "code": step.option.code}


def _nearer_data(nearer: Nearer) -> Data:
    return {
        **_step_data(nearer.step),
        "value": number(nearer.value),
        "breaks": [_break_data(each) for each in nearer.breaks],
        "costs_more": nearer.costs_more,
    }


def _break_data(each: Break) -> Data:
    target = each.target
    return {
        "figure": target.figure,
        "low": target.low,
        "high": target.high,
        "value": number(each.value),
    }


def _choice_data(each: NextBest, why: Why) -> Data:
    return {
        "choice": each.choice,
        "chosen": why.setup.codes[each.choice],
        "next_best": None if each.setup is None else each.setup.codes[each.choice],
        "costs_more": number(each.costs_more),
        "surcharge_more": each.surcharge_more,
        "choices": None if each.setup is None else each.setup.codes,
        "shifts": [_shift_data(shift) for shift in each.shifts],
        "alone": None if each.alone is None else each.alone.option.code,
        "breaks": [_break_data(one) for one in each.breaks],
    }


def _shift_data(shift: Shift) -> Data:
    return {
        "figure": shift.target.figure,
        "before": number(shift.before),
        "after": number(shift.after),
        "costs_more": shift.costs_more,
    }


def rejected_data(rejected: Rejected) -> Data:
    """What stands against a set-up.

    Parameters
    ----------
    rejected : Rejected

    Returns
    -------
    dict
        ``set_up``, ``forbidden``, ``not_open``, ``musts_missed``, ``cost``, ``costs_more``,
        ``shifts`` and ``choices_that_differ`` (best and this set-up).
    """
    options = {name: rejected.line.choices[name].options[at] for name, at in rejected.index.items()}
    best = rejected.best
    return {
        "set_up": {name: option.code for name, option in options.items()},
        "forbidden": list(rejected.forbidden),
        "not_open": list(rejected.not_open),
        "musts_missed": [judged_data(item) for item in rejected.broken],
        "targets": None
        if rejected.setup is None
        else [{**judged_data(item), "cost": cost_of(item)} for item in rejected.setup.judged],
        "cost": rejected.cost,
        "costs_more": rejected.costs_more,
        "shifts": [_shift_data(shift) for shift in rejected.shifts],
        "choices_that_differ": {}
        if best is None
        else {name: [best.codes[name], options[name].code] for name in rejected.differs},
    }
