"""What a broken rule wants, in words that stay short whatever the number of codes."""

from __future__ import annotations

import pytest

from chairwright.fitting.allowed import either
from chairwright.line.load import load_line

LINE = load_line("everyday")
PLATE = frozenset(code for code in LINE.choices["axle_hole"].codes if code[0] in "ABCDEF")
DEPTHS = frozenset(option.code for option in LINE.choices["seat_depth"].options
                   if 360 <= option.numbers["depth_mm"] <= 440)  # fmt: skip


@pytest.mark.parametrize(
    ("choice", "codes", "words"),
    [
        ("caster", frozenset(("C8", "C6")), "C6 or C8"),
        ("axle_hole", PLATE, "XN"),
        # 54 holes less one: the first five and 48 more
        ("axle_hole", PLATE - {"F9"}, "A1 or A2 or A3 or A4 or A5 or one of 48 more"),
        ("fork", frozenset(("FL-1", "FL-2", "FL-3", "FL-4", "FM-1")), "FM-1 or FL"),
        ("seat_depth", DEPTHS, "from 360 mm to 440 mm"),
        ("seat_depth", frozenset(("D300", "D320")), "D300 or D320"),
        ("foot_plate", frozenset(("none",)), "none"),
        ("caster", frozenset(), "that this line does not have"),
    ],
)
def test_codes_in_words(choice: str, codes: frozenset[str], words: str) -> None:
    assert either(LINE, choice, codes) == words


def test_sizes_with_a_gap_are_no_range() -> None:
    words = either(LINE, "seat_depth", DEPTHS - {"D400"})
    assert words.startswith("D360 or D380 or D420 or ")
