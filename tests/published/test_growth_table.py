"""Growth table as printed: CDC 2000 data files statage and wtage (carried by public data)."""

from __future__ import annotations

import pytest

from chairwright.person.client import Sex
from chairwright.person.growth_table import Lms, lms_at, score, value_at
from chairwright.tables.load import find_row, load_table

# Typed from the data files: sex, months, L, M, S, P5, P50, P95; cm.
STATURE = [
    ("male", "24", "0.941523967", "86.45220101", "0.040321528", "80.72977321", "86.45220101",
     "92.19687928"),
    ("male", "48.5", "0.827636736", "102.5104735", "0.041344257", "95.58070273", "102.5104735",
     "109.5219891"),
    ("male", "120.5", "0.505564115", "138.8234114", "0.047610108", "128.1624542", "138.8234114",
     "149.9053151"),
    ("female", "120.5", "0.284748919", "138.2111552", "0.048704503", "127.4524005", "138.2111552",
     "149.6043767"),
    ("female", "240", "1.108046193", "163.338251", "0.039636316", "152.6507234", "163.338251",
     "173.9506901"),
]  # fmt: skip
# The same, kg.
MASS = [
    ("male", "24", "-0.20615245", "12.6707633", "0.108125811", "10.64009004", "12.6707633",
     "15.18777349"),
    ("male", "120.5", "-1.206688407", "32.08799062", "0.17892874", "24.94392079", "32.08799062",
     "46.15753154"),
    ("female", "120.5", "-0.846872805", "33.06392318", "0.195947008", "24.86516468", "33.06392318",
     "48.17500585"),
    ("female", "240", "-1.51336185", "58.21897289", "0.166644749", "46.28963394", "58.21897289",
     "82.95375457"),
]  # fmt: skip
FIFTH = 1.6448536269514722
"""Standard deviations of the 5th and the 95th percentile."""
COLUMNS = ("sex", "age_months", "l", "m", "s", "p5", "p50", "p95")


@pytest.mark.parametrize(
    ("measure", "printed"),
    [("stature", row) for row in STATURE] + [("body_mass", row) for row in MASS],
)
def test_rows_are_as_printed(measure: str, printed: tuple[str, ...]) -> None:
    row = find_row(
        "population", "cdc2000_growth", measure=measure, sex=printed[0], age_months=printed[1]
    )
    assert tuple(row[name] for name in COLUMNS) == printed


def test_every_row_closes() -> None:
    """The printed percentiles follow from the printed L, M and S, to about eight digits."""
    rows = load_table("population", "cdc2000_growth")
    assert len(rows) == 2 * 2 * 37
    for row in rows:
        at = Lms(float(row["l"]), float(row["m"]), float(row["s"]))
        for deviations, name in ((-FIFTH, "p5"), (0.0, "p50"), (FIFTH, "p95")):
            assert value_at(deviations, at) == pytest.approx(float(row[name]), rel=2e-7), row
            assert score(float(row[name]), at) == pytest.approx(deviations, abs=1e-5)


# Medians of rows that are left out of the table, typed from the data files: months, cm or kg.
BETWEEN: list[tuple[str, Sex, float, float]] = [
    ("stature", "male", 45.5, 100.7783198),
    ("stature", "male", 93.5, 126.6387804),
    ("stature", "male", 128.5, 142.072452),
    ("body_mass", "male", 75.5, 21.36383013),
    ("body_mass", "male", 117.5, 31.18532984),
]


@pytest.mark.parametrize(("measure", "sex", "months", "printed"), BETWEEN)
def test_between_the_rows_it_is_near_the_rows_left_out(
    measure: str, sex: Sex, months: float, printed: float
) -> None:
    # 1.7 mm and 0.05 kg: what a straight line over six months may miss.
    unit, allowed = (10.0, 1.7) if measure == "stature" else (1.0, 0.05)
    found = lms_at(measure, sex, months / 12.0).median
    assert found == pytest.approx(printed * unit, abs=allowed)


def test_it_holds_still_after_twenty_and_refuses_a_baby() -> None:
    assert lms_at("stature", "female", 40.0) == lms_at("stature", "female", 20.0)
    with pytest.raises(ValueError, match="starts at 2 years"):
        lms_at("stature", "female", 1.9)


def test_a_power_of_nothing_is_the_logarithm() -> None:
    at = Lms(0.0, 100.0, 0.1)
    near = Lms(1e-6, 100.0, 0.1)
    assert value_at(1.5, at) == pytest.approx(value_at(1.5, near), rel=1e-6)
    assert score(120.0, at) == pytest.approx(score(120.0, near), rel=1e-5)
