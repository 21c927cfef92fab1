"""Classes, lines, what is not covered and what is missing, on a small scheme and on examples."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.order.payer import assess
from chairwright.order.payer_facts import told_facts
from chairwright.order.payer_load import load_scheme
from chairwright.order.payer_model import Scheme
from chairwright.order.payer_result import NO_PROMISE, Assessment
from chairwright.order.payer_words import answers, class_words, client_words, reason

SMALL = """\
format: chairwright payer scheme 1
name: small
title: A small scheme
payer: Nobody
country: nowhere
edition: first
dated: "2026"
note: for tests
sources:
  rules: {citation: Rules, certainty: invented}
facts:
  mass: {kind: mass, unit: kg, digits: 1, label: mass, ask: How heavy?}
  warranty: {kind: yes or no, label: warranty, ask: Is it warranted?}
  hours: {kind: number, unit: h, digits: 0, label: hours, ask: How long?}
  unwell: {kind: yes or no, label: unwell, ask: Is the client unwell?}
covered: {fact: unwell, is: "yes", source: rules}
documents:
  form: {title: Form, source: rules}
  letter: {title: Letter, source: rules}
always: [form]
groups:
  - name: kind
    title: Kind
    ask: Which kind is it listed as?
    classes:
      - {code: HEAVY, title: heavy, source: rules, when: {fact: mass, above: 20}}
      - {code: LIGHT, title: light, source: rules, when: {fact: mass, at_most: 20}}
      - code: STRONG
        title: light and warranted
        source: rules
        goes_before: [LIGHT]
        documents: [letter]
        when: {all: [{fact: mass, at_most: 20}, {fact: warranty, is: "yes"}]}
        covered: {fact: hours, at_least: 2, source: rules}
      - {code: REST, title: the rest, source: rules, otherwise: true}
accessories:
  - {code: TOP, title: for the strong, line: chair, source: rules, when: {class: [STRONG]}}
  - {code: ANY, title: for the light, line: chair, source: rules, when: {class: [STRONG, LIGHT]}}
"""


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> Scheme:
    path: Path = tmp_path_factory.mktemp("scheme") / "small.yaml"
    path.write_text(SMALL, encoding="utf-8")
    return load_scheme(str(path))


def judged(scheme: Scheme, **told: str) -> Assessment:
    return assess(scheme, told_facts(scheme, told))


def possible(found: Assessment) -> dict[str, bool | None]:
    return {each.entry.code: each.truth for each in found.groups[0].possible}


@pytest.mark.parametrize(
    ("told", "expected"),
    [
        ({"mass": "21"}, {"HEAVY": True}),
        ({"mass": "20", "warranty": "no"}, {"LIGHT": True}),
        ({"mass": "20", "warranty": "yes"}, {"STRONG": True}),
        ({"mass": "20"}, {"LIGHT": None, "STRONG": None}),
        ({"warranty": "no"}, {"HEAVY": None, "LIGHT": None, "REST": None}),
        ({}, {"HEAVY": None, "LIGHT": None, "STRONG": None, "REST": None}),
    ],
)
def test_classes(small: Scheme, told: dict[str, str], expected: dict[str, bool | None]) -> None:
    assert possible(judged(small, **told)) == expected


def test_a_class_that_another_goes_before_says_so(small: Scheme) -> None:
    light = judged(small, mass="20").groups[0].classes[1]
    assert light.overtaken_by == ("STRONG",)
    assert light.fits is not None
    assert light.fits.truth is True


@pytest.mark.parametrize(
    ("told", "top", "either"),
    [
        ({"mass": "20"}, None, True),
        ({"mass": "20", "warranty": "yes"}, True, True),
        ({"mass": "20", "warranty": "no"}, False, True),
        ({"mass": "21"}, False, False),
    ],
)
def test_accessories_of_a_class(
    small: Scheme, told: dict[str, str], top: bool | None, either: bool
) -> None:
    found = judged(small, **told)
    assert [each.truth for each in found.accessories] == [top, either]


def test_a_declared_class_is_taken_and_a_doubt_is_said(small: Scheme) -> None:
    found = judged(small, kind="LIGHT", mass="25")
    (light,) = found.groups[0].possible
    assert light.entry.code == "LIGHT"
    assert light.remark.startswith("declared; the tests of the chair")
    assert [each.truth for each in found.accessories] == [False, True]
    assert judged(small, kind="LIGHT", mass="15", warranty="no").groups[0].possible[0].remark == ""


def test_missing_facts_are_named_with_what_they_decide(small: Scheme) -> None:
    def asked(**told: str) -> dict[str, tuple[str, ...]]:
        return {each.name: each.decides for each in judged(small, **told).missing}

    assert asked(mass="20") == {
        "warranty": ("STRONG", "TOP"),
        "hours": ("STRONG",),
        "unwell": ("LIGHT", "STRONG"),
    }
    assert asked(mass="21") == {"unwell": ("HEAVY",)}
    assert asked(mass="21", unwell="no") == {}
    assert asked(mass="20", warranty="yes", unwell="no") == {}


def test_what_is_not_covered_and_why(small: Scheme) -> None:
    found = judged(small, mass="20", warranty="yes", hours="1", unwell="yes")
    (strong,) = found.not_covered
    assert strong.entry.code == "STRONG"
    assert strong.met is False
    assert strong.covered is not None
    assert reason(strong.covered) == "hours 1 h (declared), must be at least 2 h"
    assert client_words(strong) == "fails"
    assert judged(small, mass="20", warranty="yes", hours="2", unwell="yes").not_covered == ()


def test_papers_of_what_holds_or_may_hold(small: Scheme) -> None:
    assert [each.key for each in judged(small, mass="21").documents] == ["form"]
    assert [each.key for each in judged(small, mass="20").documents] == ["form", "letter"]


def test_words(small: Scheme) -> None:
    assert class_words(judged(small, mass="21").groups[0]) == "HEAVY heavy"
    assert class_words(judged(small, mass="20").groups[0]) == "LIGHT or STRONG"
    assert client_words(judged(small, mass="21").groups[0].possible[0]) == (
        "not known: 1 fact missing"
    )
    assert answers(small.facts["warranty"]) == "yes or no"
    assert answers(small.facts["mass"]) == "a number, kg"
    assert answers(small.asked["kind"]) == "HEAVY, LIGHT, STRONG, REST"
    assert answers(small.asked["kind"], ["LIGHT"]) == "LIGHT or another code"
    assert NO_PROMISE == "This is never a promise of payment: the payer decides."


def test_two_classes_at_once_ask_for_the_listing() -> None:
    """K0004 and K0006: no source that is held here says which goes first."""
    scheme = load_scheme("us-hcpcs")
    told = {"seat_width": "18", "seat_depth": "16", "chair_weight": "33", "seat_height": "19",
            "capacity": "275", "lifetime_warranty": "yes", "axle_adjustable": "no"}  # fmt: skip
    found = judged(scheme, **told)
    assert possible(found) == {"K0004": True, "K0006": True}
    assert found.groups[0].settled is None
    assert "which goes first" in class_words(found.groups[0])
    (base,) = [each for each in found.missing if each.name == "base"]
    assert base.decides == ("K0004", "K0006")
    assert possible(judged(scheme, **told, base="K0004")) == {"K0004": True}


def test_two_answers_to_one_question_leave_no_third_class() -> None:
    """With a seating system or without one: nothing is left over for K0009."""
    scheme = load_scheme("us-hcpcs")
    told = {"seat_width": "12", "seat_depth": "12", "chair_weight": "35", "seat_height": "16",
            "capacity": "220", "folds": "yes"}  # fmt: skip
    assert possible(judged(scheme, **told)) == {"E1236": None, "E1238": None}
