"""The order of adjustment: every choice of a set-up, and what is not fitted in one row."""

from __future__ import annotations

from chairwright.line.choices import CHOICES
from chairwright.papers.order import STEPS, fitted_in_order, in_order
from chairwright.papers.payload import Choice

UNDER_OTHER = ["hand_rim", "push_handle", "belt", "finish"]


def every(*absent: str) -> dict[str, Choice]:
    """Every choice of a line, some of them with nothing fitted."""
    return {
        name: Choice(kind.label, "none" if name in absent else "X1", "")
        for name, kind in CHOICES.items()
    }


def test_every_choice_stands_once_and_only_what_is_not_adjusted_under_other() -> None:
    groups = in_order(every())
    assert sum(len(group.choices) for group in groups) == len(CHOICES)
    assert [group.step for group in groups] == [*STEPS, "Other"]
    assert [each.label for each in groups[-1].choices] == [
        CHOICES[name].label for name in UNDER_OTHER
    ]


def test_what_is_not_fitted_is_one_row_at_the_end() -> None:
    groups = fitted_in_order(every("stem_spacer", "belt"))
    (row,) = groups[-1].choices
    assert groups[-1].step == "Not fitted"
    assert row.description == "Stem spacer, Belt"
    left = [each.label for group in groups[:-1] for each in group.choices]
    assert len(left) == len(CHOICES) - 2
    assert not {"Stem spacer", "Belt"} & set(left)


def test_no_foot_support_stays_a_row_of_its_own() -> None:
    groups = fitted_in_order(every("foot_supports", "hanger", "foot_plate", "leg_length"))
    assert groups[0].step == "Foot support"
    assert [each.label for each in groups[0].choices] == ["Foot supports"]
    assert groups[-1].choices[0].description == "Hanger, Footplate, Hanger length"


def test_when_everything_is_fitted_nothing_is_left_off() -> None:
    assert fitted_in_order(every()) == in_order(every())
