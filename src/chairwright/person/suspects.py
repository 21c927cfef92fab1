"""Which measured value does not go with the others, judged by the population.

References
----------
Gordon 2014 (ANSUR II, soldiers); chi-square limits: NIST/SEMATECH handbook; a value more
than 4 residual spreads out is doubtful (derived). Beyond the size of the survey's people the
bounds are wider: working values, common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from chairwright.person.client import Client, Measure
from chairwright.person.expectation import shoe_share_mm, sole_mm
from chairwright.person.measures import BODY_MASS, CATALOGUE
from chairwright.person.population import SIZE_COLUMNS, outside_survey, population
from chairwright.person.remark import Remark, measure_of
from chairwright.person.slips import likely_slip
from chairwright.tables.load import find_row

STANDS_OUT = 3.29
ALONE_DOUBTFUL = 4.0
BEYOND_DOUBTFUL = 6.0
UNSUPPORTED = 0.6
MOST_SUSPECTS = 3


def distance_limit(count: int) -> float:
    """Mahalanobis distance that one person in a thousand exceeds.

    Parameters
    ----------
    count : int
        Measures compared, 0 to 24.

    Returns
    -------
    float
        Root of the chi-square value for that many degrees of freedom; 0 for none.
    """
    if count == 0:
        return 0.0
    row = find_row("statistics", "nist_chi_square_upper_0_001", degrees_of_freedom=str(count))
    return float(np.sqrt(float(row["quantile"])))


def deviation(client: Client, known: Mapping[str, float], column: str) -> float:
    """How far one value lies from what the others suggest.

    Parameters
    ----------
    client : Client
    known : mapping of str to float [mm or kg]
        Measured values by ANSUR II name, the doubtful one among them.
    column : str
        ANSUR II name of the value.

    Returns
    -------
    float
        In residual standard deviations, above positive.
    """
    expected, spread = population(client.sex).expected(column, known)
    return (known[column] - expected) / spread


def suspect_remarks(client: Client, known: Mapping[str, float]) -> list[Remark]:
    """Name the values that do not go with the others, worst first.

    Parameters
    ----------
    client : Client
    known : mapping of str to float [mm or kg]
        Measured values by ANSUR II name, shoes off, whole-body mass.

    Returns
    -------
    list of Remark
        At most three; one without a name when only the whole set is rare.
    """
    unsupported = [c for c in outside_survey(client.sex, known) if _unsupported(client, known, c)]
    remarks = [_suspect_remark(client, known, column) for column in unsupported]
    left = {column: value for column, value in known.items() if column not in unsupported}
    if outside_survey(client.sex, left):
        return remarks + _beyond_survey(client, left)
    return remarks + _within_survey(client, left)


def _unsupported(client: Client, known: Mapping[str, float], column: str) -> bool:
    # Do the other measures share less than two fifths of the departure from the mean?
    expected, spread = population(client.sex).expected(column, known)
    mean, _ = population(client.sex).expected(column, {})
    gap = abs(known[column] - expected)
    return gap > ALONE_DOUBTFUL * spread and gap > UNSUPPORTED * abs(known[column] - mean)


def _beyond_survey(client: Client, known: Mapping[str, float]) -> list[Remark]:
    size = {column: known[column] for column in SIZE_COLUMNS if column in known}
    doubts = {
        column: abs(deviation(client, {**size, column: known[column]}, column))
        for column in known
        if column not in size
    }
    worst = sorted((c for c in doubts if doubts[c] > BEYOND_DOUBTFUL), key=lambda c: -doubts[c])
    return [
        _suspect_remark(client, {**size, column: known[column]}, column)
        for column in worst[:MOST_SUSPECTS]
    ]


def _within_survey(client: Client, known: Mapping[str, float]) -> list[Remark]:
    left, remarks = dict(known), list[Remark]()
    while len(left) > 1 and len(remarks) < MOST_SUSPECTS:
        rare = population(client.sex).squared_distance(left) > distance_limit(len(left)) ** 2
        doubts = {column: abs(deviation(client, left, column)) for column in left}
        worst = max(doubts, key=lambda column: doubts[column])
        if doubts[worst] < (STANDS_OUT if rare else ALONE_DOUBTFUL):
            return remarks or ([_rare_remark()] if rare else [])
        remarks.append(_suspect_remark(client, left, worst))
        del left[worst]
    return remarks


def _rare_remark() -> Remark:
    text = (
        "The measures together are rarer than one person in a thousand of the survey "
        "(soldiers), though none stands out. Check that they belong to one person, and the sex."
    )
    return Remark("population", "", "middle", text)


def _suspect_remark(client: Client, known: Mapping[str, float], column: str) -> Remark:
    measure = measure_of(client, column)
    expected, spread = population(client.sex).expected(column, known)
    expected += _shown_shift(client, known, measure, column)
    slip = likely_slip(measure, expected, spread)
    hint = f" Perhaps {slip.words}." if slip else ""
    text = (
        f"{CATALOGUE[measure.name].label} is given as {measure.quantity.typed}; the other "
        f"measures suggest {expected:.0f} +- {2.0 * spread:.0f} {measure.quantity.unit} "
        f"(soldiers).{hint} Measure it again; if it is right, keep it."
    )
    return Remark("population", measure.name, measure.side, text, measure.where)


def _shown_shift(
    client: Client, known: Mapping[str, float], measure: Measure, column: str
) -> float:
    # From the survey's value back to the measured one: the shoe, or the lost limbs' mass.
    if measure.name == BODY_MASS:
        return measure.value - known[column]
    return shoe_share_mm(measure.name, sole_mm(client))
