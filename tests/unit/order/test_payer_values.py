"""Values of facts: exact, in the scheme's unit, compared as printed."""

from __future__ import annotations

from decimal import Decimal

import pytest

from chairwright.errors import InputError
from chairwright.order.payer_model import Fact, FactKind
from chairwright.order.payer_values import as_printed, declared, in_unit, value_words


@pytest.mark.parametrize(
    ("base", "kind", "unit", "digits", "printed"),
    [
        (508.0, "length", "in", 2, "20.00"),
        (507.8, "length", "in", 2, "19.99"),
        (431.79999999999995, "length", "in", 2, "17.00"),
        (380.0, "length", "mm", 0, "380"),
        (113.398, "mass", "lb", 1, "250.0"),
        (113.4, "mass", "lb", 1, "250.0"),
        (113.5, "mass", "lb", 1, "250.2"),
        (12.05, "mass", "kg", 1, "12.1"),
        (11.95, "mass", "kg", 1, "12.0"),
        (54, "number", "positions", 0, "54"),
    ],
)
def test_a_figure_in_the_schemes_unit(
    base: float, kind: FactKind, unit: str, digits: int, printed: str
) -> None:
    """1 in = 25.4 mm, 1 lb = 0.45359237 kg: divided and rounded half up by hand."""
    assert str(in_unit(base, kind, unit, digits)) == printed


@pytest.mark.parametrize(
    ("value", "digits", "printed"),
    [("0.5", 0, "1"), ("1.5", 0, "2"), ("2.5", 0, "3"), ("1.245", 2, "1.25"), ("1.244", 2, "1.24")],
)
def test_half_goes_up(value: str, digits: int, printed: str) -> None:
    assert str(as_printed(Decimal(value), digits)) == printed


@pytest.mark.parametrize(
    ("typed", "kind", "unit", "digits", "value"),
    [
        ("20", "length", "in", 2, Decimal("20.00")),
        ("20 in", "length", "in", 2, Decimal("20.00")),
        ("508 mm", "length", "in", 2, Decimal("20.00")),
        ("16 1/2 in", "length", "in", 2, Decimal("16.50")),
        ("20 in", "length", "mm", 0, Decimal(508)),
        ("113.4 kg", "mass", "lb", 1, Decimal("250.0")),
        ("250 lb", "mass", "kg", 2, Decimal("113.40")),
        (" 1.9 ", "number", "h a day", 2, Decimal("1.90")),
        ("yes", "yes or no", "", 0, True),
        ("NO", "yes or no", "", 0, False),
        ("air", "word", "", 0, "air"),
        ("air, gel,air", "words", "", 0, ("air", "gel")),
        ("", "words", "", 0, ()),
    ],
)
def test_what_somebody_declares(
    typed: str, kind: FactKind, unit: str, digits: int, value: object
) -> None:
    assert declared(typed, kind, unit, digits, ("air", "gel"), "--fact x") == value


@pytest.mark.parametrize(
    ("typed", "kind", "unit"),
    [
        ("maybe", "yes or no", ""),
        ("true", "yes or no", ""),
        ("foam", "word", ""),
        ("air, foam", "words", ""),
        ("air,,gel", "words", ""),
        ("20 lb", "length", "in"),
        ("20 furlongs", "length", "in"),
        ("-1", "number", "h a day"),
        ("two", "number", "h a day"),
        ("2 h", "number", "h a day"),
        ("nan", "number", "h a day"),
        ("inf", "mass", "lb"),
        ("sNaN", "mass", "lb"),
        ("1e400", "mass", "lb"),
        ("1_000", "mass", "lb"),
        ("-5 lb", "mass", "lb"),
        ("9" * 500, "mass", "lb"),
        ("", "mass", "lb"),
    ],
)
def test_what_cannot_be_meant_is_refused(typed: str, kind: FactKind, unit: str) -> None:
    with pytest.raises(InputError) as caught:
        declared(typed, kind, unit, 1, ("air", "gel"), "--fact x")
    (problem,) = caught.value.problems
    assert problem.where == "--fact x"
    assert problem.remedy
    assert len(str(problem)) < 400


def test_values_in_words() -> None:
    width = Fact("w", "length", "w", "?", unit="in", digits=2)
    kind = Fact("k", "word", "k", "?", words={"air": "air cells"})
    assert value_words(width, Decimal("19.99")) == "19.99 in"
    assert value_words(kind, "air") == "air cells"
    assert value_words(kind, True) == "yes"
    assert value_words(kind, ()) == "none"
    assert value_words(kind, ("a", "b")) == "a, b"
