"""HCPCS manual wheelchair criteria: both sides of every printed boundary, source and certainty.

Values and codes are typed as printed in the sources. Certainty: ``read`` in the source,
``restated`` by a secondary source, from ``memory`` (unverified), ``derived``.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from chairwright.order.payer_values import in_unit
from chairwright.units import KG_PER_POUND

from .payer_judged import (
    ADULT,
    ARTICLE,
    AT_HOME,
    BACKS,
    CUSHIONS,
    DESCRIPTORS,
    DIMENSION,
    OPTIONS,
    POLICY,
    SCHEME,
    STANDARD,
    backing_of,
    base_codes,
    codes,
    covered,
    facts_asked,
    judged,
    of,
)


@dataclass(frozen=True)
class Size:
    """One boundary of an accessory code: what is coded just inside and just outside it."""

    check: str
    fact: str
    limit: str
    low: str
    low_codes: list[str]
    high: str
    high_codes: list[str]
    line: str
    backed: str
    certainty: str = "read"
    source: str = DESCRIPTORS


SIZES = (
    Size("PA-01", "seat_width", "20", "19.99", [], "20", ["E2201"], "seat_width", "E2201"),
    Size("PA-01", "seat_width", "24", "23.99", ["E2201"], "24", ["E2202"], "seat_width", "E2202"),
    Size("PA-01", "seat_width", "24", "23.99", ["E2201"], "24", ["E2202"], "seat_width", "E2201"),
    Size("PA-01", "seat_width", "27", "27", ["E2202"], "27.01", ["K0108"], "seat_width", "E2202"),
    Size(
        "PA-01", "seat_width", "27", "27", ["E2202"], "27.01", ["K0108"], "seat_width", "K0108",
        "memory",
    ),
    Size("PA-02", "seat_depth", "20", "19.99", [], "20", ["E2203"], "seat_depth", "E2203"),
    Size("PA-02", "seat_depth", "22", "21.99", ["E2203"], "22", ["E2204"], "seat_depth", "E2204"),
    Size("PA-02", "seat_depth", "22", "21.99", ["E2203"], "22", ["E2204"], "seat_depth", "E2203"),
    Size("PA-02", "seat_depth", "25", "25", ["E2204"], "25.01", ["K0108"], "seat_depth", "E2204"),
    Size(
        "PA-02", "seat_depth", "25", "25", ["E2204"], "25.01", ["K0108"], "seat_depth", "K0108",
        "memory",
    ),
    Size("PA-03", "seat_height", "17", "16.99", ["K0056"], "17", [], "chair", "K0056"),
    Size("PA-03", "seat_height", "21", "20.99", [], "21", ["K0056"], "chair", "K0056"),
    Size("PA-04", "recline", "15", "15", [], "15.1", ["E1225"], "chair", "E1225"),
    Size("PA-04", "recline", "80", "79.9", ["E1225"], "80", [], "chair", "E1225"),
    Size("PA-04", "recline", "80", "80", [], "80.1", ["E1226"], "chair", "E1226"),
    Size("PA-05", "cushion_width", "22", "21.99", ["E2601"], "22", ["E2602"], "cushion", "E2601"),
    Size("PA-05", "cushion_width", "22", "21.99", ["E2601"], "22", ["E2602"], "cushion", "E2602"),
)  # fmt: skip


@pytest.mark.parametrize(
    "row", SIZES, ids=lambda row: f"{row.check}-{row.fact}-{row.limit}-{row.backed}"
)
def test_pa_01_to_05_both_sides_of_a_size(row: Size) -> None:
    rest = {**ADULT, "seat_height": "19", "base": "K0004", "cushion": "general",
            "cushion_width": "18", "back": "sling", "back_width": "18"}  # fmt: skip
    assert codes(judged(**{**rest, row.fact: row.low}), row.line) == row.low_codes
    assert codes(judged(**{**rest, row.fact: row.high}), row.line) == row.high_codes
    assert backing_of(row.backed, row.fact, row.limit, row.line) == {(row.source, row.certainty)}


@pytest.mark.parametrize("kind", CUSHIONS)
def test_pa_05_every_cushion_is_split_at_22_in(kind: str) -> None:
    """HCPCS descriptors (read in the source)."""
    narrow, wide = CUSHIONS[kind]
    assert codes(judged(cushion=kind, cushion_width="21.99"), "cushion") == [narrow]
    assert codes(judged(cushion=kind, cushion_width="22"), "cushion") == [wide]


@pytest.mark.parametrize("kind", BACKS)
def test_every_back_is_split_at_22_in(kind: str) -> None:
    """HCPCS descriptors (read in the source)."""
    narrow, wide = BACKS[kind]
    assert codes(judged(back=kind, back_width="21.99"), "back_support") == [narrow]
    assert codes(judged(back=kind, back_width="22"), "back_support") == [wide]


@dataclass(frozen=True)
class Base:
    """One boundary between base codes, from the criteria of article A52497 as restated."""

    check: str
    fact: str
    limit: str
    low: str
    low_code: str
    high: str
    high_code: str
    backed: tuple[tuple[str, str], ...]
    rest: tuple[tuple[str, str], ...] = ()


WARRANTED = (("lifetime_warranty", "yes"), ("axle_adjustable", "no"))
LIGHT = (("lifetime_warranty", "yes"), ("axle_adjustable", "yes"))
BASES = (
    Base("PA-06", "chair_weight", "36", "36", "K0003", "36.1", "K0001",
         (("K0001", "restated"), ("K0003", "restated"))),
    Base("PA-07", "chair_weight", "34", "33.9", "K0004", "34", "K0003",
         (("K0004", "restated"), ("K0003", "restated")), WARRANTED),
    Base("PA-08", "chair_weight", "30", "29.9", "K0005", "30", "K0004",
         (("K0005", "restated"),), LIGHT),
    Base("PA-07", "seat_height", "19", "18.99", "K0002", "19", "K0001",
         (("K0002", "memory"), ("K0001", "restated"))),
    Base("PA-09", "capacity", "250", "250", "K0001", "250.1", "K0006",
         (("K0001", "restated"), ("K0002", "memory"), ("K0003", "memory"), ("K0006", "restated"))),
    Base("PA-09", "capacity", "300", "300", "K0006", "300.1", "K0007", (("K0007", "restated"),)),
)  # fmt: skip


@pytest.mark.parametrize("row", BASES, ids=lambda row: f"{row.check}-{row.fact}-{row.limit}")
def test_pa_06_to_09_both_sides_of_a_base_code(row: Base) -> None:
    rest = {**STANDARD, **dict(row.rest)}
    assert base_codes(judged(**{**rest, row.fact: row.low})) == [row.low_code]
    assert base_codes(judged(**{**rest, row.fact: row.high})) == [row.high_code]
    for code, certainty in row.backed:
        assert backing_of(code, row.fact, row.limit) == {(ARTICLE, certainty)}


@pytest.mark.parametrize(
    ("check", "told", "expected"),
    [
        ("PA-06", {}, ["K0001"]),
        ("PA-07", {"seat_height": "18"}, ["K0002"]),
        ("PA-07", {"chair_weight": "35"}, ["K0003"]),
        ("PA-07", {"chair_weight": "33.9", "lifetime_warranty": "yes", "axle_adjustable": "no"},
         ["K0004"]),
        ("PA-08", {"chair_weight": "29.9", "lifetime_warranty": "yes", "axle_adjustable": "yes"},
         ["K0005"]),
        ("PA-08", {"chair_weight": "29.9", "lifetime_warranty": "yes", "axle_adjustable": "no"},
         ["K0004"]),
        ("PA-08", {"chair_weight": "29.9", "lifetime_warranty": "no", "axle_adjustable": "yes"},
         ["K0009"]),
        ("PA-09", {"capacity": "251"}, ["K0006"]),
        ("PA-09", {"capacity": "301"}, ["K0007"]),
    ],
)  # fmt: skip
def test_pa_06_to_09_as_printed(check: str, told: dict[str, str], expected: list[str]) -> None:
    """Article A52497 (restated; K0002 below 19 in and the warranty of K0004 from memory)."""
    assert base_codes(judged(**{**STANDARD, **told})) == expected, check


@pytest.mark.parametrize("letter", ["A", "B", "C", "D", "E", "F"])
def test_pa_10_any_of_a_to_e_false_fails_and_f_falls_back_on_g(letter: str) -> None:
    """Coverage determination L33788: A and B and C and D and E and (F or G)."""
    facts = dict(zip("ABCDEF", AT_HOME, strict=False))
    turned = {facts[letter]: "no" if AT_HOME[facts[letter]] == "yes" else "yes"}
    general = judged(**{**AT_HOME, **turned}).general
    assert general is not None
    assert general.truth is False
    with_carer = judged(**{**AT_HOME, **turned, "carer_available": "yes"}).general
    assert with_carer is not None
    assert with_carer.truth is (letter == "F")


def test_pa_10_the_general_rule_says_how_certain_it_is() -> None:
    backed = [test.backing for test in facts_asked(SCHEME.covered)]
    assert [test.because for test in facts_asked(SCHEME.covered)] == list("ABCDEFG")
    assert {each.source.key for each in backed} == {POLICY}
    assert [each.certainty for each in backed] == ["read", *["restated"] * 6]


@dataclass(frozen=True)
class Need:
    """One boundary in a payer's test of the client; ``high`` passes."""

    check: str
    code: str
    fact: str
    limit: str
    low: str
    high: str
    source: str
    certainty: str
    rest: tuple[tuple[str, str], ...] = ()


NEEDS = (
    Need("PA-11", "K0004", "hours_a_day", "2", "1.99", "2", DIMENSION, "read",
         (("activities_need_it", "no"), ("dimension_needed", "yes"))),
    Need("PA-11", "K0004", "hours_a_day", "2", "1.9", "2.0", DIMENSION, "read",
         (("activities_need_it", "no"), ("dimension_needed", "yes"))),
    Need("E0973", "E0973", "hours_a_day", "2", "1.99", "2", OPTIONS, "read",
         (("arm_height_needed", "yes"),)),
    Need("PA-12", "K0006", "client_weight", "250", "250.0", "250.1", POLICY, "restated",
         (("severe_spasticity", "no"),)),
    Need("PA-13", "K0007", "client_weight", "300", "300.0", "300.1", POLICY, "restated"),
    Need("K0008", "K0008", "months_needed", "3", "2.9", "3", POLICY, "restated",
         (("no_other_base", "yes"),)),
)  # fmt: skip


@pytest.mark.parametrize("row", NEEDS, ids=lambda row: f"{row.check}-{row.limit}-{row.low}")
def test_pa_11_to_13_both_sides_of_a_need(row: Need) -> None:
    assert covered(row.code, **{**dict(row.rest), row.fact: row.low}) is False
    assert covered(row.code, **{**dict(row.rest), row.fact: row.high}) is True
    assert backing_of(row.code, row.fact, row.limit) == {(row.source, row.certainty)}


def test_pa_12_severe_spasticity_takes_the_place_of_weight() -> None:
    """Policy L33788 (restated by a secondary source): over 250 lb or severe spasticity."""
    assert covered("K0006", client_weight="180", severe_spasticity="yes") is True
    assert covered("K0006", client_weight="180", severe_spasticity="no") is False
    assert covered("K0006", client_weight="180") is None
    assert covered("K0006", severe_spasticity="yes") is True


@pytest.mark.parametrize(
    ("pounds", "printed"),
    [("250", "113.40"), ("300", "136.08"), ("36", "16.33"), ("34", "15.42"), ("30", "13.61")],
)
def test_pa_14_pounds_in_kilograms(pounds: str, printed: str) -> None:
    """1 lb = 0.45359237 kg exactly; there and back, each to its printed digits."""
    assert str(in_unit(float(pounds) * KG_PER_POUND, "mass", "kg", 2)) == printed
    assert str(in_unit(float(printed), "mass", "lb", 1)) == f"{pounds}.0"


def test_seat_height_on_k0003_is_read_in_two_ways() -> None:
    """HCPCS K0056: a comma in the text (read in the source); both readings are shown."""
    found = of(judged(**ADULT, seat_height="16.99", base="K0003"), "K0056")
    assert found.truth is None
    assert found.fits is not None
    dispute = found.fits.inside[1]
    assert [(each.label, each.truth) for each in dispute.inside] == [
        ("for K0004 and K0005 only", False),
        ("for K0003 too: the comma in 'high strength, lightweight, or ultralightweight'", True),
    ]


@pytest.mark.parametrize("base", ["K0001", "K0002", "K0006", "K0007", "E1161"])
def test_seat_height_has_no_code_on_other_bases(base: str) -> None:
    assert of(judged(**ADULT, seat_height="16.99", base=base), "K0056").truth is False


SPECIALISTS = {"specialty_evaluation": "yes", "atp_involved": "yes"}


@pytest.mark.parametrize(
    ("full_time", "fitting", "expected"),
    [
        ("yes", "yes", True),
        ("yes", "no", None),
        ("no", "yes", None),
        ("no", "no", False),
    ],
)
def test_k0005_where_the_sources_disagree_both_paths_are_shown(
    full_time: str, fitting: str, expected: bool | None
) -> None:
    """L33788: either is enough (from memory, unverified), or both are needed (restated)."""
    told = {**SPECIALISTS, "full_time_user": full_time, "individual_fitting": fitting}
    assert covered("K0005", **told) is expected
    step = of(judged(**{**AT_HOME, **told}), "K0005").covered
    assert step is not None
    dispute = step.inside[1].inside[0]
    assert dispute.kind == "disputed"
    either, both = dispute.inside
    assert (either.label, both.label) == ("either is enough", "both are needed")
    assert either.truth is ("yes" in (full_time, fitting))
    assert both.truth is ((full_time, fitting) == ("yes", "yes"))
    assert [each.backing and each.backing.certainty for each in (either, both)] == [
        "memory",
        "restated",
    ]


def test_k0005_asks_for_both_facts_and_for_evaluation_and_atp() -> None:
    assert covered("K0005", **{**SPECIALISTS, "full_time_user": "yes"}) is None
    both = {"full_time_user": "yes", "individual_fitting": "yes"}
    for name in SPECIALISTS:
        assert covered("K0005", **{**both, **SPECIALISTS, name: "no"}) is False
    light = {**STANDARD, "chair_weight": "29.9", "axle_adjustable": "yes",
             "lifetime_warranty": "yes"}  # fmt: skip
    names = [each.name for each in judged(**light, **AT_HOME).missing]
    assert {"full_time_user", "individual_fitting", *SPECIALISTS} <= set(names)
