"""The ledger: the same values and words as the set-up has, in the client's units."""

from __future__ import annotations

import math

import pytest

from chairwright.figures.figure import GROUPS
from chairwright.fitting.ledger import ledger
from chairwright.papers.cautions import beside
from chairwright_desk.bench.bridge import change, follows_of, places_shown, sketch_of, state_of
from chairwright_desk.bench.bridge.follows import FigureShown, Follows
from tests.desk.bench.examples import opened


def _every(follows: Follows | None) -> dict[str, FigureShown]:
    if follows is None:
        raise AssertionError
    return {each.name: each for q in follows.questions for each in (*q.told, *q.more)}


@pytest.mark.parametrize("name", ["avg-001", "foo-003"])
def test_every_figure_stands_once_under_its_question(name: str) -> None:
    state = opened(name, places=True)
    follows = follows_of(state, "mm")
    if follows is None or state.setup is None:
        raise AssertionError
    shown, rows = _every(follows), {row.figure.name: row for row in ledger(state.setup)}
    assert shown.keys() == rows.keys()
    assert tuple(each.question for each in follows.questions) == GROUPS
    for key, row in rows.items():
        assert shown[key].word == (row.word or "")
        if not math.isnan(row.value):
            assert float(shown[key].value) == pytest.approx(
                row.value, abs=0.5 * 10.0**-row.figure.digits
            )


def test_cautions_stand_with_their_question() -> None:
    follows = follows_of(opened("avg-001"), "mm")
    if follows is None:
        raise AssertionError
    assert {q.question: q.cautions for q in follows.questions} == {
        q: beside(q, None) for q in GROUPS
    }


def test_lengths_in_inches_to_the_eighth() -> None:
    state = opened("avg-001")
    shown = _every(follows_of(state, "in"))["seat_width_mm"]
    assert (shown.value, shown.unit) == ("15 3/4", "in")  # 400 mm / 25.4 = 15.748


def test_the_summary_names_what_fails_and_what_moved_is_marked() -> None:
    state = opened("avg-001")
    after = state_of(state.bench, change(state, "fork", "FL-2").codes)
    follows = follows_of(after, "mm", state)
    if follows is None or after.setup is None or state.setup is None:
        raise AssertionError
    broken = {item.target.figure for item in after.setup.broken}
    assert f"{len(broken)} musts fail" in follows.summary
    assert {each.name for each in follows.fails} == broken
    moved = _every(follows)["seat_to_floor_front_mm"].changed
    front = "seat_to_floor_front_mm"
    by = round(after.setup.figures[front]) - round(state.setup.figures[front])
    assert moved == f"−{-by}"  # a hole higher in the fork: the front comes down
    assert by < 0


def test_a_sketch_has_the_same_figures_and_says_that_it_is_one() -> None:
    state = opened("avg-001", places=True)
    codes = change(state, "cushion", "Q50").codes
    sketch = sketch_of(state.bench, codes, state)
    assert not sketch.sure
    sure = state_of(state.bench, codes)
    if sketch.setup is None or sure.setup is None:
        raise AssertionError
    assert sketch.setup.figures == pytest.approx(sure.setup.figures, nan_ok=True)
    assert [i.verdict.breaks for i in sketch.setup.judged] == [
        i.verdict.breaks for i in sure.setup.judged
    ]
    assert sketch_of(state.bench, codes, state) is sure


def test_places_with_their_verdicts() -> None:
    shown = places_shown(opened("avg-001", places=True), "mm")
    assert {each.name: each.word for each in shown}["bathroom door"] == "fails"
    assert places_shown(opened("avg-001"), "mm") == ()
