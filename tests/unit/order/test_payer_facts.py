"""Facts of a set-up and its client, read where the scheme says, and what a declaration does."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from chairwright.cli.opened import Opened, open_setup
from chairwright.errors import InputError
from chairwright.figures.terms import TERMS
from chairwright.fitting.extras import with_extras
from chairwright.line.load import SHIPPED, load_line
from chairwright.line.model import Line
from chairwright.order.payer import assess
from chairwright.order.payer_facts import (
    bare_chair_mass_kg,
    facts_of,
    rated_load_kg,
    told_facts,
    word_of,
)
from chairwright.order.payer_lines import feet_fitted, order_lines
from chairwright.order.payer_load import load_scheme
from chairwright.order.payer_model import Scheme
from chairwright.order.payer_result import Assessment
from chairwright.order.payer_values import Known
from tests.laws.example_sweeps import EXAMPLES, SETUPS

US, DEMO = load_scheme("us-hcpcs"), load_scheme("demo")


def opened(name: str, *extras: str) -> Opened:
    found = open_setup(SETUPS / f"{name}.yaml")
    if not extras:
        return found
    line = with_extras(found.line, extras, {})
    return replace(found, line=line, setup=replace(found.setup, line=line))


def facts(scheme: Scheme, each: Opened, **told: str) -> dict[str, Known]:
    return facts_of(scheme, each.setup, each.person.client, each.person.measures, told)


def judged(scheme: Scheme, each: Opened, **told: str) -> Assessment:
    lines = order_lines(scheme, each.setup)
    return assess(scheme, facts(scheme, each, **told), lines, feet_fitted(each.setup))


def test_facts_of_the_average_set_up() -> None:
    """Seat S400 and D420, axle plate XN, client of 78 kg: converted by hand."""
    found = facts(US, opened("avg-001"))
    expected = {
        "seat_width": Decimal("15.75"),
        "seat_depth": Decimal("16.54"),
        "capacity": Decimal("286.6"),
        "client_weight": Decimal("172.0"),
        "axle_adjustable": True,
        "folds": True,
        "able_to_push": True,
        "feet_on_ground": False,
        "cushion": "general",
        "back": "sling",
        "arms": "adjustable",
        "anti_tip": "device",
        "belt": "none",
        "tilt": Decimal("0.0"),
        "transport_chair": False,
        "extras": (),
    }
    assert {name: found[name].value for name in expected} == expected
    assert found["client_weight"].words == "client file: 78 kg"
    assert found["tilt"].how == "unless told"
    assert "carer_available" not in found
    assert "lifetime_warranty" not in found


def test_who_moves_the_chair() -> None:
    carer, feet = facts(US, opened("car-009")), facts(US, opened("foo-003"))
    assert (carer["able_to_push"].value, carer["carer_available"].value) == (False, True)
    assert (feet["able_to_push"].value, feet["feet_on_ground"].value) == (True, True)


@pytest.mark.parametrize(("name", "sides"), [("avg-001", 1.0), ("hem-004", 0.5), ("foo-003", 0.0)])
def test_the_chair_is_weighed_without_front_rigging_and_cushion(name: str, sides: float) -> None:
    """Everyday line: hangers H60, H70 and footplate FP weigh 1.3, 1.2 and 0.6 kg a pair."""
    each = opened(name)
    options = each.setup.options
    pairs = {"H70": 1.2, "H60": 1.3, "none": 0.0}[options["hanger"].code] + 0.6 * (sides > 0)
    cushion = {"Q30": 0.4, "Q50": 0.7}[options["cushion"].code]
    whole = each.setup.figures["chair_mass_kg"]
    assert bare_chair_mass_kg(each.setup) == pytest.approx(
        whole - sides * pairs - cushion, abs=1e-9
    )


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_rated_load_is_the_margin_and_the_load(name: str) -> None:
    each = opened(name)
    margin, load = each.setup.figures["load_margin_kg"], each.person.occupant.load_kg
    assert rated_load_kg(each.setup) == pytest.approx(margin + load, abs=1e-9)
    assert "load_margin_kg" in TERMS


def test_an_estimated_weight_is_not_a_fact() -> None:
    each = opened("avg-001")
    measures = each.person.measures
    guessed = tuple(
        replace(one, estimated=one.name == "body_mass" or one.estimated) for one in measures
    )
    found = facts_of(US, each.setup, each.person.client, replace(measures, measures=guessed))
    assert "client_weight" not in found


def test_a_declaration_goes_before_the_file_and_says_so() -> None:
    found = facts(US, opened("avg-001"), client_weight="260", seat_width="400 mm")
    assert found["client_weight"].value == Decimal("260.0")
    assert found["client_weight"].words == "declared; the client says 172.0 lb"
    assert found["seat_width"].words == "declared"


def test_every_wrong_declaration_is_told() -> None:
    with pytest.raises(InputError) as caught:
        told_facts(
            US, {"hour_a_day": "2", "client_weight": "heavy", "base": "K0044", "belt": "belt"}
        )
    told = [str(problem) for problem in caught.value.problems]
    assert len(told) == 3
    assert "Did you mean hours_a_day?" in told[0]
    assert told[1].startswith("--fact client_weight: ")
    assert "Did you mean K0004?" in told[2]


def test_extras_are_known_by_the_schemes_words() -> None:
    each = opened("avg-001", "ET", "EC")
    found = facts(US, each)["extras"]
    assert found.value == ("tray", "other")
    assert found.whole
    rows = {one.line.part: one for one in judged(US, each).lines}
    assert [code.entry.code for code in rows["ET"].codes] == ["E0950"]
    assert rows["EC"].standing == "not listed"


def test_declared_extras_are_added_to_those_of_the_line() -> None:
    result = judged(US, opened("avg-001", "ET"), extras="heel loop")
    extras = [one for one in result.lines if one.line.line == "extras"]
    assert [code.entry.code for one in extras for code in one.codes] == ["E0950", "E0951"]


def test_an_extra_that_the_scheme_does_not_know_is_asked_for() -> None:
    bare = replace(US, parts={})
    each = opened("avg-001", "ET")
    rows = [one for one in judged(bare, each).lines if one.line.line == "extras"]
    assert [one.standing for one in rows] == ["depends"]
    assert "extras" in [one.name for one in judged(bare, each).missing]
    told = judged(bare, each, extras="other")
    rows = [one for one in told.lines if one.line.line == "extras"]
    assert [one.standing for one in rows] == ["not listed"]
    told = judged(bare, each, extras="tray,heel loop")
    rows = [one for one in told.lines if one.line.line == "extras"]
    assert [(one.line.part, one.codes[0].entry.code) for one in rows] == [
        ("ET", "E0950"),
        ("", "E0951"),
    ]


def test_a_part_that_the_scheme_does_not_know_is_asked_for() -> None:
    bare = replace(US, parts={})
    result = judged(bare, opened("avg-001"))
    rows = {one.line.line: one for one in result.lines}
    assert rows["cushion"].standing == "depends"
    names = [one.name for one in result.missing]
    assert {"cushion", "arms", "anti_tip"} <= set(names)
    answered = judged(bare, opened("avg-001"), cushion="skin", arms="fixed", anti_tip="device")
    rows = {one.line.line: one for one in answered.lines}
    assert [code.entry.code for code in rows["cushion"].codes] == ["E2603"]
    assert rows["arm_support"].standing == "in the class"
    assert rows["anti_tip"].quantity["E0971"] == 2


@pytest.mark.parametrize(
    ("line", "part", "word"),
    [("one", "A", "a"), ("one", "B", "rest"), ("two", "A", "any"), ("two", "B", None)],
)
def test_a_star_stands_for_every_line_or_part(line: str, part: str, word: str | None) -> None:
    parts = {"one": {"belt": {"A": "a", "*": "rest"}}, "*": {"belt": {"A": "any"}}}
    assert word_of(replace(US, parts=parts), line, "belt", part) == word


@pytest.mark.parametrize(("name", "pieces"), [("avg-001", 2), ("hem-004", 1), ("foo-003", 0)])
def test_foot_supports_are_counted(name: str, pieces: int) -> None:
    assert feet_fitted(opened(name).setup) == pieces


def test_one_elevating_leg_rest_is_one_piece() -> None:
    told = {"leg_rests": "elevating", "rental": "no"}
    (row,) = [
        one for one in judged(US, opened("hem-004"), **told).lines if one.line.line == "hanger"
    ]
    assert row.quantity["E0990"] == 1


@pytest.mark.parametrize("scheme", [US, DEMO], ids=lambda each: each.name)
@pytest.mark.parametrize("name", SHIPPED)
def test_every_part_of_the_shipped_lines_has_a_word(scheme: Scheme, name: str) -> None:
    line = load_line(name)
    for fact in scheme.facts.values():
        if fact.origin is not None and fact.origin.kind == "part":
            for part in parts_of(line, fact.origin.name):
                assert word_of(scheme, name, fact.origin.name, part), (fact.name, part)
    for extra in line.extras:
        assert word_of(scheme, name, "extras", extra.code), extra.code


@pytest.mark.parametrize("scheme", [US, DEMO], ids=lambda each: each.name)
@pytest.mark.parametrize("name", SHIPPED)
def test_every_word_is_of_a_part_that_there_is(scheme: Scheme, name: str) -> None:
    line = load_line(name)
    for choice, codes in scheme.parts.get(name, {}).items():
        known = (
            {each.code for each in line.extras} if choice == "extras" else parts_of(line, choice)
        )
        assert set(codes) <= known


def parts_of(line: Line, choice: str) -> set[str]:
    options = line.choices[choice].options
    return {option.part for option in options if option.part}
