"""Results as plain data for JSON; a figure that a set-up does not have is null."""

from __future__ import annotations

import math
from dataclasses import asdict

from chairwright.cli.report_places import places_data
from chairwright.fitting.described import Described, Judged
from chairwright.fitting.fit import Fit
from chairwright.fitting.person import Person
from chairwright.fitting.sureness import Sureness
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.search.front import Front, Objective
from chairwright.search.reasons import Correction, Reasons
from chairwright.targets.target import Target

Data = dict[str, object]


def figures_data(setup: Described) -> Data:
    """Figures, mass points and tyre contacts of one set-up, in floor axes.

    Parameters
    ----------
    setup : Described

    Returns
    -------
    dict
        Keys ``figures``, ``mass_points`` and ``contacts``.
    """
    return {
        "figures": {name: number(value) for name, value in setup.figures.items()},
        "mass_points": [asdict(mass) for mass in setup.masses],
        "contacts": [asdict(contact) for contact in setup.shape.contacts],
    }


def fit_data(fit: Fit) -> Data:
    """The whole result of one fitting.

    Parameters
    ----------
    fit : Fit

    Returns
    -------
    dict
    """
    return {"client": client_data(fit.person), **line_fit_data(fit)}


def client_data(person: Person) -> Data:
    """Who the client is, and what is to be said of the measures.

    Parameters
    ----------
    person : Person

    Returns
    -------
    dict
    """
    client, measures = person.client, list(person.measures)
    return {
        "reference": client.reference,
        "sex": client.sex,
        "propulsion": client.propulsion,
        "measures_taken": sum(not measure.estimated for measure in measures),
        "measures_estimated": sum(measure.estimated for measure in measures),
        "remarks": [asdict(remark) for remark in person.review.remarks],
        "centre_of_mass": _centre_data(person),
    }


def _centre_data(person: Person) -> Data:
    """Whether the occupant's centre of mass is an estimate, or what scales said of it."""
    if person.weighed is None:
        return {"known_by": "estimate"}
    centre = person.weighed.shift.centre
    names = ("mass_kg", "ahead_mm", "left_mm", "up_mm")
    return {
        "known_by": "scales",
        "dated": person.weighed.dated,
        "mass_kg": centre.mass_kg,
        "shift_mm": dict(zip(names[1:], centre.shift_mm, strict=True)),
        "half_widths": dict(zip(names, centre.half_widths, strict=True)),
    }


def line_data(line: Line) -> Data:
    """Which line it is.

    Parameters
    ----------
    line : Line

    Returns
    -------
    dict
    """
    return {
        "name": line.name,
        "title": line.title,
        "maker": line.maker,
        "version": line.version,
        "currency": line.currency,
    }


def _sure_data(sure: Sureness) -> Data:
    """How sure the musts of the set-up shown are, when that was asked for."""
    never = [{"figure": each.figure, "low": each.low, "high": each.high} for each in sure.never]
    return {
        "every_must_sure": sure.all_sure,
        "others_sure": sure.rest_sure,
        "never_sure": never,
        "cost_on_nominal_values": sure.nominal_cost,
    }


def line_fit_data(fit: Fit) -> Data:
    """What came out on one line.

    Parameters
    ----------
    fit : Fit

    Returns
    -------
    dict
    """
    return {
        "line": line_data(fit.line),
        "set_ups": fit.count,
        "made_to_order_looked_at": fit.extent != "standard",
        "meets_every_must": fit.best is not None,
        "sure": None if fit.sure is None else _sure_data(fit.sure),
        "best": None
        if fit.best is None
        else {"cost": fit.best.cost, "looked_at": fit.best.looked_at},
        "set_up": None if fit.setup is None else _setup_data(fit.setup),
        "front": None if fit.front is None else _front_data(fit.front, fit.objectives, fit.line),
        "reasons": None if fit.reasons is None else _reason_data(fit.reasons, fit.line),
        "places": places_data(fit),
    }


def _setup_data(setup: Described) -> Data:
    return {
        "choices": setup.codes,
        "extras": [extra.code for extra in setup.extras],
        "made_to_order": made_to_order_data(setup),
        "figures": {name: number(value) for name, value in setup.figures.items()},
        "spreads": setup.spreads,
        "verdicts": [judged_data(item) for item in setup.judged],
    }


def made_to_order_data(setup: Described) -> Data:
    """What is made to order: choice to code, surcharge and days beyond the usual delivery.

    Parameters
    ----------
    setup : Described

    Returns
    -------
    dict
    """
    return {
        name: {
            "code": option.code,
            "surcharge": option.numbers["surcharge"],
            "extra_days": option.numbers["extra_days"],
        }
        for name, option in setup.made_to_order.items()
    }


def judged_data(item: Judged) -> Data:
    """One target with value and verdict."""
    return {
        **_target_data(item.target),
        "value": number(item.value),
        "spread": item.spread,
        "margin_half_widths": None if item.halves is None else list(item.halves),
        "verdict": item.verdict.word,
        "margin": number(item.verdict.margin),
    }


def _target_data(target: Target) -> Data:
    return asdict(target)


def _front_data(front: Front, objectives: tuple[Objective, ...], line: Line) -> Data:
    return {
        "objectives": [asdict(aim) for aim in objectives],
        "looked_at": front.looked_at,
        "points": [
            {"choices": _codes(line, point.index), "values": point.values} for point in front.points
        ],
    }


def _reason_data(reasons: Reasons, line: Line) -> Data:
    return {
        "corrections": [_correction_data(each, line) for each in reasons.corrections],
        "complete": reasons.complete,
        "conflicts": [[_target_data(target) for target in clash] for clash in reasons.conflicts],
    }


def _correction_data(correction: Correction, line: Line) -> Data:
    return {
        "gives": [
            {**_target_data(give.target), "value": number(give.value), "by": number(give.by)}
            for give in correction.gives
        ],
        "choices": _codes(line, correction.index),
    }


def _codes(line: Line, index: dict[str, int]) -> dict[str, str]:
    return {name: line.choices[name].options[index[name]].code for name in CHOICES}


def number(value: float) -> float | None:
    """A number for JSON; None where there is none."""
    return value if math.isfinite(value) else None
