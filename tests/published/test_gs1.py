"""GS1 check digits against the examples that GS1 and its member organisations have printed."""

from __future__ import annotations

import pytest

from chairwright.papers.pack.machine_code import check_digit

EXAMPLES = {
    "GS1 Hong Kong, check digit calculator, worked example of a GTIN-13": ("629104150021", 3),
    "GS1 India, how to calculate the check digit, worked example of a GTIN-13": (
        "890400021003", 7,
    ),
    "GS1 General Specifications, standard check digit calculations, worked example of 18 digits "
    "(from memory, unverified)": ("37610425002123456", 9),
    "UPC-A of a box of tissues, the example of an encyclopaedia (secondary source)": (
        "03600024145", 7,
    ),
}  # fmt: skip


@pytest.mark.parametrize("source", EXAMPLES)
def test_check_digits_are_those_of_the_printed_examples(source: str) -> None:
    number, digit = EXAMPLES[source]
    assert check_digit(number) == digit
