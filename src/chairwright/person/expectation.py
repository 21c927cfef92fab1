"""What the population leads one to expect of a measure that nobody took."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from chairwright.person.client import Client, Sex
from chairwright.person.measures import BODY_MASS, CATALOGUE
from chairwright.person.population import (
    SIZE_COLUMNS,
    correlated_measures,
    outside_survey,
    population,
    summary_row,
)
from chairwright.tables.load import find_row
from chairwright.units import MM_PER_INCH

SPREADS = 2.0
WITH_SOLE = frozenset({"lower_leg_length", "knee_height"})
BREADTHS = frozenset(
    {
        "hipbreadthsitting",
        "thighclearance",
        "biacromialbreadth",
        "chestdepth",
        "abdominalextensiondepthsitting",
    }
)
AXILLA_TO_SCAPULA_MM = 2.0 * MM_PER_INCH


@dataclass(frozen=True)
class Expectation:
    """An estimate of one measure.

    Parameters
    ----------
    value : float [mm or kg]
    tolerance : float [mm or kg]
        About two residual standard deviations.
    basis : str
        Where it comes from, in words.
    """

    value: float
    tolerance: float
    basis: str


def offset_mm(quantity: str) -> float:
    """Return one of the small working offsets between joints and landmarks.

    Parameters
    ----------
    quantity : str
        Row of ``tables/body/derived_hip_offsets``.

    Returns
    -------
    float [mm]
    """
    return float(find_row("body", "derived_hip_offsets", quantity=quantity)["value"])


def sole_mm(client: Client) -> float:
    """Thickness of the shoe sole under the heel.

    Parameters
    ----------
    client : Client

    Returns
    -------
    float [mm]
        Measured, or 25 mm (common practice, no source).
    """
    typed = [measure.value for measure in client.measures if measure.name == "shoe_sole"]
    return typed[0] if typed else offset_mm("standard_shoe_sole")


def shoe_share_mm(name: str, sole: float) -> float:
    """What the shoe adds to a measure.

    Parameters
    ----------
    name : str
        Catalogue name.
    sole : float [mm]
        Thickness under the heel.

    Returns
    -------
    float [mm]
        The sole for lower leg and knee height, 25 mm for the length of the foot
        (common practice, no source), else 0.
    """
    if name in WITH_SOLE:
        return sole
    return offset_mm("standard_shoe_length") if name == "foot_length" else 0.0


def population_values(
    client: Client, whole_mass_kg: float, lost: frozenset[tuple[str, str]]
) -> dict[str, float]:
    """Return the client's measured values as the survey would have taken them.

    Parameters
    ----------
    client : Client
    whole_mass_kg : float [kg]
        Body mass with every limb whole.
    lost : frozenset of (name, side)
        Measures of lost parts, left out.

    Returns
    -------
    dict of str to float [mm or kg]
        By ANSUR II name; mean of the two sides, shoes taken off.
    """
    values: dict[str, float] = {}
    sole = sole_mm(client)
    for name in correlated_measures():
        there = [m.value for m in client.measures if m.name == name and (name, m.side) not in lost]
        if there:
            column = str(CATALOGUE[name].ansur)
            values[column] = sum(there) / len(there) - shoe_share_mm(name, sole)
    if CATALOGUE[BODY_MASS].ansur in values:
        values["weight_kg"] = whole_mass_kg
    return values


def expect(name: str, sex: Sex, known: Mapping[str, float], sole: float) -> Expectation:
    """Estimate one measure of a person from the others.

    Parameters
    ----------
    name : str
        Catalogue name.
    sex : {"female", "male"}
    known : mapping of str to float [mm or kg]
        From `population_values`.
    sole : float [mm]
        Shoe sole under the heel.

    Returns
    -------
    Expectation
        Held inside the widest limits of its kind.
    """
    if name in correlated_measures():
        column = str(CATALOGUE[name].ansur)
        value, spread = _expected(sex, column, known)
        basis = "expected from the measured values (ANSUR II soldiers, Gordon 2014)"
        guess = Expectation(value + shoe_share_mm(name, sole), SPREADS * spread, basis)
    else:
        guess = _BY_RATIO[name](sex, known)
    return _inside_limits(name, guess)


def evidence(sex: Sex, column: str, known: Mapping[str, float]) -> Mapping[str, float]:
    """Return the measured values that an estimate may rest on.

    Parameters
    ----------
    sex : {"female", "male"}
    column : str
        ANSUR II name of the measure to estimate.
    known : mapping of str to float [mm or kg]

    Returns
    -------
    mapping of str to float
        All of them; beyond the survey's people only the size and measures of the same
        sort (lengths or breadths and depths), since the correlations of lengths with
        breadths do not hold far outside (derived).
    """
    if not outside_survey(sex, known):
        return known
    broad = column in BREADTHS
    return {
        other: value
        for other, value in known.items()
        if other in SIZE_COLUMNS or (other in BREADTHS) == broad
    }


def _expected(sex: Sex, column: str, known: Mapping[str, float]) -> tuple[float, float]:
    return population(sex).expected(column, evidence(sex, column, known))


def _inside_limits(name: str, guess: Expectation) -> Expectation:
    kind = CATALOGUE[name]
    held = min(max(guess.value, kind.low), kind.high)
    if held == guess.value:
        return guess
    return Expectation(held, guess.tolerance, f"{guess.basis}; held at the limit of its kind")


def _ratio(column: str, to: str, what: str) -> Callable[[Sex, Mapping[str, float]], Expectation]:
    def guess(sex: Sex, known: Mapping[str, float]) -> Expectation:
        mean, spread = summary_row(sex, column)
        base = known[to] if to in known else _expected(sex, to, known)[0]
        basis = f"share of {what}, from the survey's means (ANSUR II soldiers, Gordon 2014)"
        return Expectation(base * mean / summary_row(sex, to)[0], SPREADS * spread, basis)

    return guess


def _axilla_height(sex: Sex, known: Mapping[str, float]) -> Expectation:
    return _ratio("d_axillaheight_sitting", "d_acromialheight_sitting", "shoulder height")(
        sex, known
    )


def _scapula_height(sex: Sex, known: Mapping[str, float]) -> Expectation:
    axilla = _axilla_height(sex, known)
    basis = (
        "axilla height less 2 in, the difference of two published back height rules "
        "(PM&R; US lists) (derived)"
    )
    return Expectation(axilla.value - AXILLA_TO_SCAPULA_MM, axilla.tolerance, basis)


def _chest_width(sex: Sex, known: Mapping[str, float]) -> Expectation:
    row = find_row("population", "gordon2014_regressions", sex=sex.upper(), measure="chestbreadth")
    stature = known.get("stature") or _expected(sex, "stature", known)[0]
    by_mass = float(row["b_weight_mm_per_kg"]) * known["weight_kg"]
    value = float(row["b0_mm"]) + float(row["b_stature"]) * stature + by_mass
    basis = "regression on stature and body mass (ANSUR II soldiers, Gordon 2014)"
    return Expectation(value, SPREADS * float(row["SEE_mm"]), basis)


def _external_knee_width(sex: Sex, known: Mapping[str, float]) -> Expectation:
    hips = known.get("hipbreadthsitting")
    value, spread = _expected(sex, "hipbreadthsitting", known)
    basis = "taken as hip width (common practice, no source)"
    return Expectation(hips or value, SPREADS * max(spread, 20.0), basis)


def _shoe_sole(sex: Sex, known: Mapping[str, float]) -> Expectation:
    return Expectation(
        offset_mm("standard_shoe_sole"), 10.0, "a usual shoe (common practice, no source)"
    )


_BY_RATIO: dict[str, Callable[[Sex, Mapping[str, float]], Expectation]] = {
    "axilla_height": _axilla_height,
    "scapula_height": _scapula_height,
    "shoulder_width": _ratio("bideltoidbreadth", "biacromialbreadth", "biacromial width"),
    "chest_width": _chest_width,
    "external_knee_width": _external_knee_width,
    "trochanter_width": _ratio("hipbreadth", "hipbreadthsitting", "hip width"),
    "foot_width": _ratio("footbreadthhorizontal", "footlength", "foot length"),
    "forearm_length": _ratio(
        "forearmcenterofgriplength", "forearmhandlength", "forearm and hand length"
    ),
    "shoe_sole": _shoe_sole,
}
