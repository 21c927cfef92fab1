"""Three-valued logic: truth tables typed by hand, and which facts a step still waits for."""

from __future__ import annotations

from decimal import Decimal
from itertools import product

import pytest

from chairwright.order.payer_logic import (
    Context,
    Standing,
    Step,
    answer,
    every,
    missing,
    opposite,
    some,
    wanted_words,
    within,
)
from chairwright.order.payer_model import (
    Backing,
    ClassTest,
    Disputed,
    Fact,
    FactTest,
    Joined,
    Reading,
    Source,
    Test,
    Truth,
)
from chairwright.order.payer_values import Known

BACKED = Backing(Source("s", "Some rules", "read"), "read")
FACTS = {name: Fact(name, "yes or no", f"label of {name}", "?") for name in "abc"}
WIDTH = Fact("width", "length", "width", "?", unit="in", digits=2)
T, F, N = True, False, None


def yes(name: str) -> FactTest:
    return FactTest(name, None, None, None, None, ("yes",), BACKED)


def limits(
    above: str | None = None,
    at_least: str | None = None,
    below: str | None = None,
    at_most: str | None = None,
) -> FactTest:
    ends = (None if end is None else Decimal(end) for end in (above, at_least, below, at_most))
    low, low_in, high, high_in = ends
    return FactTest("width", low, low_in, high, high_in, (), BACKED)


def said(test: Test, **facts: Truth) -> Step:
    known = {name: Known(value, "declared") for name, value in facts.items() if value is not None}
    return answer(test, Context(FACTS, known))


AND = {
    (T, T): T, (T, F): F, (T, N): N,
    (F, T): F, (F, F): F, (F, N): F,
    (N, T): N, (N, F): F, (N, N): N,
}  # fmt: skip
OR = {
    (T, T): T, (T, F): T, (T, N): T,
    (F, T): T, (F, F): F, (F, N): N,
    (N, T): T, (N, F): N, (N, N): N,
}  # fmt: skip
"""Kleene's strong logic (a textbook matter)."""


@pytest.mark.parametrize("pair", list(product((T, F, N), repeat=2)))
def test_all_and_any_of_two(pair: tuple[Truth, Truth]) -> None:
    one, other = pair
    assert every(pair) is AND[pair]
    assert some(pair) is OR[pair]
    tests = (yes("a"), yes("b"))
    assert said(Joined("all", tests), a=one, b=other).truth is AND[pair]
    assert said(Joined("any", tests), a=one, b=other).truth is OR[pair]


@pytest.mark.parametrize(("truth", "turned"), [(T, F), (F, T), (N, N)])
def test_not(truth: Truth, turned: Truth) -> None:
    assert opposite(truth) is turned
    assert said(Joined("not", (yes("a"),)), a=truth).truth is turned


@pytest.mark.parametrize(
    ("facts", "names"),
    [
        ({}, ("a", "b", "c")),
        ({"a": F}, ()),
        ({"a": T}, ("b", "c")),
        ({"a": T, "b": T}, ()),
        ({"a": T, "b": F}, ("c",)),
        ({"b": T}, ("a",)),
        ({"c": F}, ("a", "b")),
    ],
)
def test_only_facts_that_can_still_settle_it_are_missing(
    facts: dict[str, Truth], names: tuple[str, ...]
) -> None:
    """The rule: a and (b or c)."""
    rule = Joined("all", (yes("a"), Joined("any", (yes("b"), yes("c")))))
    assert missing(said(rule, **facts)) == names


def dispute() -> Disputed:
    either, both = (Joined(kind, (yes("a"), yes("b"))) for kind in ("any", "all"))
    readings = (Reading("either", either, BACKED), Reading("both", both, BACKED))
    return Disputed(readings, "one or two")


@pytest.mark.parametrize("pair", list(product((T, F, N), repeat=2)))
def test_a_disputed_rule_is_known_where_its_readings_agree(pair: tuple[Truth, Truth]) -> None:
    step = said(dispute(), a=pair[0], b=pair[1])
    assert [each.label for each in step.inside] == ["either", "both"]
    assert [each.truth for each in step.inside] == [OR[pair], AND[pair]]
    assert step.truth is (OR[pair] if OR[pair] is AND[pair] else None)


def test_a_dispute_over_known_facts_has_nothing_missing() -> None:
    assert missing(said(dispute(), a=T, b=F)) == ()
    assert missing(said(dispute(), a=T)) == ("b",)
    assert missing(said(dispute())) == ("a", "b")


@pytest.mark.parametrize(
    ("test", "value", "holds"),
    [
        (limits(above="20"), "20.00", False),
        (limits(above="20"), "20.01", True),
        (limits(at_least="20"), "19.99", False),
        (limits(at_least="20"), "20.00", True),
        (limits(below="24"), "24.00", False),
        (limits(below="24"), "23.99", True),
        (limits(at_most="27"), "27.00", True),
        (limits(at_most="27"), "27.01", False),
        (limits(at_least="20", below="24"), "24.00", False),
        (limits(at_least="20", at_most="20"), "20.00", True),
    ],
)
def test_each_end_is_in_or_out_as_it_says(test: FactTest, value: str, holds: bool) -> None:
    assert within(test, Decimal(value)) is holds


def test_what_is_wanted_in_words() -> None:
    assert wanted_words(limits(at_least="20", below="24"), WIDTH) == "at least 20 and below 24 in"
    assert wanted_words(limits(above="27"), WIDTH) == "above 27 in"
    assert wanted_words(yes("a"), FACTS["a"]) == "yes"
    kind = Fact("kind", "word", "kind", "?", words={"air": "air cells", "gel": "gel"})
    either = FactTest("kind", None, None, None, None, ("air", "gel"), BACKED)
    assert wanted_words(either, kind) == "air cells or gel"


@pytest.mark.parametrize(
    ("words", "whole", "truth"),
    [(("tray",), True, T), (("bag",), True, F), (("bag",), False, N), (("tray",), False, T)],
)
def test_a_list_that_may_lack_some_is_not_known_to_lack_one(
    words: tuple[str, ...], whole: bool, truth: Truth
) -> None:
    fact = Fact("extras", "words", "extras", "?", words={"tray": "tray", "bag": "bag"})
    known = {"extras": Known(words, "set-up", whole=whole)}
    has = FactTest("extras", None, None, None, None, ("tray",), BACKED)
    assert answer(has, Context({"extras": fact}, known)).truth is truth


@pytest.mark.parametrize(
    ("k4", "k5", "k6", "truth", "names"),
    [
        (T, F, F, T, ()),
        (F, T, F, T, ()),
        (F, F, T, F, ()),
        (T, F, T, N, ("base",)),
        (F, N, F, N, ("w5",)),
        (F, N, T, N, ("w5",)),
        (F, F, N, F, ()),
    ],
)
def test_whether_the_chair_is_in_one_of_two_classes(
    k4: Truth, k5: Truth, k6: Truth, truth: Truth, names: tuple[str, ...]
) -> None:
    classes = {
        code: Standing("base", each, each, (f"w{code[1]}",) if each is None else ())
        for code, each in (("K4", k4), ("K5", k5), ("K6", k6))
    }
    step = answer(ClassTest(("K4", "K5"), BACKED), Context({}, {}, classes))
    assert step.truth is truth
    assert missing(step) == names


def test_a_class_of_which_either_part_is_certain_is_certain() -> None:
    """K4 holds by itself; only whether K5 goes before it is open: one of the two it is."""
    classes = {
        "K4": Standing("base", True, None),
        "K5": Standing("base", None, None, ("axle",)),
        "L1": Standing("load", True, True),
    }
    context = Context({}, {}, classes)
    assert answer(ClassTest(("K4", "K5"), BACKED), context).truth is True
    assert answer(ClassTest(("K4",), BACKED), context).truth is None
