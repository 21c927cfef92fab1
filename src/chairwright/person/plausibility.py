"""Is the set of measures believable? Each alone, in pairs, left against right, all together.

The population is soldiers (ANSUR II), not wheelchair users: a remark is a reason to measure
once more, never a refusal.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from chairwright.person.amputation import client_intact_mass_kg
from chairwright.person.client import Client, Measure
from chairwright.person.estimates import lost_measures
from chairwright.person.expectation import population_values, shoe_share_mm, sole_mm
from chairwright.person.measures import BODY_MASS, CATALOGUE, check_limits
from chairwright.person.population import outside_survey, population, survey_range
from chairwright.person.remark import Remark, measure_of
from chairwright.person.suspects import (
    deviation,
    distance_limit,
    suspect_remarks,
)
from chairwright.tables.load import load_table

SIDES_APART_MM = 40.0
_PEOPLE = {"male": "soldiers, men", "female": "soldiers, women"}


@dataclass(frozen=True)
class Review:
    """Every remark on one client's measures.

    Parameters
    ----------
    remarks : tuple of Remark
    distance : float
        Mahalanobis distance of all measured values from the population's centre.
    limit : float
        Distance that one person in a thousand of the population exceeds.
    degrees_of_freedom : int
        Measured values that were compared.
    extrapolated : bool
        True when the survey has nobody of this size.
    """

    remarks: tuple[Remark, ...]
    distance: float
    limit: float
    degrees_of_freedom: int
    extrapolated: bool


def review(client: Client) -> Review:
    """Look for slips of the tape in one client's measured values.

    Parameters
    ----------
    client : Client

    Returns
    -------
    Review
        Amputees are compared with their whole-body mass; shoes are taken off.

    References
    ----------
    Gordon 2014 (ANSUR II); chi-square limits: NIST/SEMATECH handbook; left and right
    more than 40 mm apart: common practice, no source; a value more than 4 residual
    spreads out: derived.
    """
    refused = _limit_remarks(client)
    plain, sides = _settle_sides(_without(client, refused))
    known = _known(plain)
    distance = float(np.sqrt(population(client.sex).squared_distance(known)))
    suspects = suspect_remarks(plain, known)
    named = {remark.name for remark in suspects}
    pairs = [remark for remark in _pair_remarks(plain, known) if remark.name not in named]
    size = _size_remarks(plain, known)
    remarks = (*refused, *_lost_remarks(client), *sides, *size, *pairs, *suspects)
    return Review(remarks, distance, distance_limit(len(known)), len(known), bool(size))


def _without(client: Client, refused: list[Remark]) -> Client:
    names = {(remark.name, remark.side) for remark in refused}
    left = tuple(m for m in client.measures if (m.name, m.side) not in names)
    return replace(client, measures=left)


def _known(client: Client) -> dict[str, float]:
    mass = next((m.value for m in client.measures if m.name == BODY_MASS), 0.0)
    whole = client_intact_mass_kg(mass, client.amputations)
    return population_values(client, whole, lost_measures(client.amputations))


def _limit_remarks(client: Client) -> list[Remark]:
    problems = [(m, check_limits(m)) for m in client.measures]
    return [Remark("limits", m.name, m.side, str(p), m.where) for m, p in problems if p]


def _lost_remarks(client: Client) -> list[Remark]:
    lost = lost_measures(client.amputations)
    return [
        Remark("lost", m.name, m.side, _lost_text(m), m.where)
        for m in client.measures
        if (m.name, m.side) in lost
    ]


def _lost_text(measure: Measure) -> str:
    label = CATALOGUE[measure.name].label
    return (
        f"{label} ({measure.side}) is given as {measure.quantity.typed}, but that part of the "
        "limb is lost. Check the side and the level of the amputation; a stump or a "
        "prosthesis is not compared with the population."
    )


def _settle_sides(client: Client) -> tuple[Client, list[Remark]]:
    # Drop the less likely side of a pair that lies far apart, and say so.
    remarks = []
    for name in (name for name, kind in CATALOGUE.items() if kind.sided):
        pair = _pair(client, name)
        if pair is None or abs(pair[0].value - pair[1].value) <= SIDES_APART_MM:
            continue
        doubtful, other = _less_likely(client, name, pair)
        remarks.append(_sides_remark(doubtful, other))
        client = replace(client, measures=tuple(m for m in client.measures if m is not doubtful))
    return client, remarks


def _pair(client: Client, name: str) -> tuple[Measure, Measure] | None:
    lost = lost_measures(client.amputations)
    by_side = {m.side: m for m in client.measures if m.name == name and (name, m.side) not in lost}
    if "left" not in by_side or "right" not in by_side:
        return None
    return by_side["left"], by_side["right"]


def _less_likely(
    client: Client, name: str, pair: tuple[Measure, Measure]
) -> tuple[Measure, Measure]:
    known = _known(client)
    column = CATALOGUE[name].ansur
    if column not in population(client.sex).columns:
        return pair
    expected, _ = population(client.sex).expected(str(column), known)
    expected += shoe_share_mm(name, sole_mm(client))
    first, second = sorted(pair, key=lambda m: -abs(m.value - expected))
    return first, second


def _sides_remark(doubtful: Measure, other: Measure) -> Remark:
    label = CATALOGUE[doubtful.name].label
    text = (
        f"{label} is {doubtful.quantity.typed} on the {doubtful.side} and "
        f"{other.quantity.typed} on the {other.side}, more than {SIDES_APART_MM:.0f} mm apart; "
        f"the {other.side} agrees better with the other measures. Measure both sides again; "
        "if the difference is real, keep it."
    )
    return Remark("sides", doubtful.name, doubtful.side, text, doubtful.where)


def _size_remarks(client: Client, known: Mapping[str, float]) -> list[Remark]:
    return [_size_remark(client, column) for column in outside_survey(client.sex, known)]


def _size_remark(client: Client, column: str) -> Remark:
    measure = measure_of(client, column)
    least, greatest = survey_range(client.sex, column)
    text = (
        f"{CATALOGUE[measure.name].label} is {measure.quantity.typed}; the survey behind the "
        f"estimates met {least:.0f} to {greatest:.0f} {measure.quantity.unit} only "
        f"({_PEOPLE[client.sex]}). Estimates and comparisons reach beyond it: measure more "
        "and trust them less."
    )
    return Remark("size", measure.name, "middle", text, measure.where)


def _pair_remarks(client: Client, known: Mapping[str, float]) -> list[Remark]:
    remarks = []
    for row in load_table("population", "gordon2014_pair_limits"):
        first, *rest = row["difference"].split(" - ")
        if row["sex"] != client.sex.upper() or not {first, *rest} <= set(known):
            continue
        difference = known[first] - sum(known[column] for column in rest)
        stretch = _stretch(client, known)
        low, high = float(row["min"]) * stretch, float(row["max"]) * stretch
        if not low <= difference <= high:
            remarks.append(_pair_remark(client, known, (first, *rest), difference, (low, high)))
    return remarks


def _stretch(client: Client, known: Mapping[str, float]) -> float:
    # Limits grow or shrink with a stature that the survey has nobody of.
    if "stature" not in known:
        return 1.0
    least, greatest = survey_range(client.sex, "stature")
    return known["stature"] / min(max(known["stature"], least), greatest)


def _pair_remark(
    client: Client,
    known: Mapping[str, float],
    columns: tuple[str, ...],
    difference: float,
    limits: tuple[float, float],
) -> Remark:
    worst = max(columns, key=lambda column: abs(deviation(client, known, column)))
    labels = [CATALOGUE[measure_of(client, column).name].label.lower() for column in columns]
    measure = measure_of(client, worst)
    text = (
        f"{' less '.join(labels).capitalize()} is {difference:.0f} mm; the survey (soldiers) met "
        f"{limits[0]:.0f} to {limits[1]:.0f} mm. {CATALOGUE[measure.name].label} "
        f"({measure.quantity.typed}) fits the rest least: measure it again first."
    )
    return Remark("pair", measure.name, measure.side, text, measure.where)
