"""Reasons and published signs of a lesson: for every figure, only where they fit."""

from __future__ import annotations

import math

import pytest

from chairwright.figures.registry import FIGURES
from chairwright.fitting.runs import ALONG, GRIDS
from chairwright.line.choices import CHOICES
from chairwright.papers.lesson_kinds import KINDS
from chairwright.papers.lesson_reasons_figures import FIGURE_REASONS
from chairwright.papers.lesson_why import REASONS, Sign, published_signs, reason, sources
from chairwright.tables.load import load_sources

REAR = FIGURES["tip_rear_locked_deg"]
FORWARD = FIGURES["tip_forward_deg"]
ELBOW = FIGURES["elbow_angle_deg"]
AXLE = ("axle_hole", "x_mm")
SENTENCES = [
    (key, figure, text) for key, each in REASONS.items() for figure, (_, text) in each.items()
]


def numbers(choice: str) -> set[str]:
    """The numbers that a run of a choice can rise along."""
    return {"", ALONG.get(choice, ""), *GRIDS.get(choice, ())}


def test_every_figure_has_a_reason_that_always_holds() -> None:
    assert set(FIGURES) <= set(FIGURE_REASONS)


@pytest.mark.parametrize(("key", "figure", "text"), SENTENCES)
def test_a_reason_is_about_a_figure_and_a_run_that_there_is(
    key: tuple[str, str], figure: str, text: str
) -> None:
    assert figure in FIGURES
    assert key[0] in CHOICES
    assert key[1] in numbers(key[0])
    assert text[0].isupper() and text.endswith(".")
    assert len(text) < 200


@pytest.mark.parametrize("key", KINDS)
def test_a_lesson_is_about_figures_and_a_run_that_there_are(key: tuple[str, str]) -> None:
    assert key[0] in CHOICES
    assert key[1] in numbers(key[0])
    assert set(KINDS[key].figures) <= set(FIGURES)
    assert len(set(KINDS[key].figures)) == len(KINDS[key].figures)


def test_a_reason_is_given_only_where_the_figure_goes_its_way() -> None:
    assert "rear tyre contact" in reason(*AXLE, REAR, [17.0, 12.0, 8.0])
    assert reason(*AXLE, REAR, [8.0, 12.0]) == ""
    assert reason(*AXLE, REAR, [12.0, 8.0, 9.0]) == ""


def test_hardly_anything_is_said_only_of_a_figure_that_hardly_moves() -> None:
    assert reason(*AXLE, FORWARD, [19.4, 19.6]).startswith("Forward hardly anything changes")
    assert reason(*AXLE, FORWARD, [19.4, 22.0]) == ""


def test_a_reason_without_a_sign_fits_either_way() -> None:
    up, down = reason(*AXLE, ELBOW, [104.0, 105.0]), reason(*AXLE, ELBOW, [105.0, 104.0, 104.5])
    assert up == down != ""


def test_a_choice_without_reasons_gives_none() -> None:
    assert reason("wheel_lock", "", REAR, [1.0, 2.0]) == ""


def test_a_published_sign_is_cited_only_where_it_agrees() -> None:
    assert sources(*AXLE, REAR, [17.0, 8.0]) == ("Thomas 2018 (read in the abstract only)",)
    assert sources(*AXLE, REAR, [8.0, 17.0]) == ()
    assert sources(*AXLE, ELBOW, [math.nan]) == ("Boninger 2000 (read in the abstract only)",)


@pytest.mark.parametrize("sign", published_signs(), ids=lambda s: f"{s.choice}-{s.figure}")
def test_a_published_sign_has_a_source_and_a_figure(sign: Sign) -> None:
    assert sign.source in load_sources()
    assert sign.figure in FIGURES
    assert sign.choice in CHOICES
    assert sign.along in numbers(sign.choice)
    assert sign.sign in (-1, 0, 1)
    known = ("read in the source", "read in the abstract only", "restated by a secondary source")
    assert any(words in sign.certainty for words in known)


def test_no_sentence_says_otherwise_than_a_published_sign() -> None:
    for sign in published_signs():
        told, _ = REASONS.get((sign.choice, sign.along), {}).get(sign.figure, (None, ""))
        assert not (told and sign.sign) or told == sign.sign, sign
