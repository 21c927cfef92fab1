"""Best, front, why not, sweep, compare: what the bench shows is what the fitting found."""

from __future__ import annotations

from dataclasses import asdict

import pytest

from chairwright.figures.registry import FIGURES
from chairwright.fitting.fit import fit_person
from chairwright_desk.bench.bridge import (
    axes_of,
    beside,
    change,
    find,
    first_codes,
    front_picture,
    state_of,
    swept,
    why_not,
)
from chairwright_desk.bench.bridge.scatter import Dot, axis_steps, scatter_of
from tests.desk.bench.examples import bench_of, opened


def test_the_best_is_the_best_of_the_fit_and_the_front_has_a_dot_for_each_point() -> None:
    bench = bench_of("tal-002")
    fit = fit_person(bench.person, bench.line)
    found = find(bench, "mm", front=True)
    plain = asdict(found)
    picture = front_picture(plain, {}, axes_of(plain["aims"], "", ""))
    if fit.setup is None or fit.front is None or picture is None:
        raise AssertionError
    assert found.codes == fit.setup.codes == first_codes(bench)
    assert len(found.trades) == len(picture.dots) == len(fit.front.points)
    assert [trade.number for trade in found.trades] == [dot.number for dot in picture.dots]
    assert all(trade.values[0] in dot.label for trade, dot in
               zip(found.trades, picture.dots, strict=True))  # fmt: skip


AIMS = [
    {"name": name, "label": name.upper(), "unit": "mm", "way": "less is better", "digits": 0}
    for name in ("one", "two", "three")
]
POINTS = [
    {"number": 1, "numbers": (10.0, 40.0, 7.0), "values": ("10", "40", "7")},
    {"number": 2, "numbers": (20.0, 30.0, None), "values": ("20", "30", "–")},
]


@pytest.mark.parametrize(
    ("across", "up", "axes"),
    [
        ("", "", ("one", "two")),
        ("three", "one", ("three", "one")),
        ("two", "", ("two", "one")),
        ("", "one", ("two", "one")),
        ("one", "one", ("one", "two")),
        ("other", "<b>", ("one", "two")),
    ],
)
def test_any_two_figures_span_the_picture(across: str, up: str, axes: tuple[str, str]) -> None:
    assert axes_of(AIMS, across, up) == axes


def test_the_picture_has_the_figures_that_were_chosen() -> None:
    found, now = {"aims": AIMS, "trades": POINTS}, {"one": 12.0, "two": 33.0, "three": None}
    picture = front_picture(found, now, ("two", "one"))
    if picture is None or picture.now is None:
        raise AssertionError
    assert picture.x_words == "TWO, mm (less is better)"
    assert picture.y_words == "ONE, mm (less is better)"
    first, second = picture.dots
    assert second.x < picture.now.x < first.x
    assert second.y < picture.now.y < first.y  # down the paper
    assert first.label == "Point 1: ONE 10 mm, TWO 40 mm, THREE 7 mm"
    other = front_picture(found, now, ("one", "three"))
    if other is None:
        raise AssertionError
    assert [dot.number for dot in other.dots] == [1]  # point 2 has no such figure
    assert other.now is None
    assert front_picture({"aims": AIMS, "trades": POINTS[1:]}, now, ("one", "three")) is None


def test_why_not_names_the_musts_and_remedies_that_hold() -> None:
    state = opened("avg-001")
    after = state_of(state.bench, change(state, "fork", "FL-3").codes)
    told = why_not(after, "mm")
    if after.setup is None:
        raise AssertionError
    assert len(told.musts) == len(after.setup.broken) > 0
    for miss in told.musts:
        for remedy in miss.remedies:
            mended = state_of(after.bench, change(after, remedy.choice, remedy.code).codes)
            if mended.setup is None:
                raise AssertionError
            broken = {item.target.reason for item in mended.setup.broken}
            assert miss.reason not in broken
    differs = {label: (here[:5], there[:5]) for label, here, there in told.differs}
    assert differs["Fork and hole"] == ("FL-3,", "FL-4,")
    assert why_not(state, "mm").best == "This is the best set-up of the line for what is asked."


def test_a_sweep_stands_where_the_option_is_free() -> None:
    state = opened("avg-001")
    found = swept(state, "cushion", "mm")
    (run,) = found.runs
    assert [column.code for column in run.columns if column.now] == [state.codes["cushion"]]
    for row in run.rows:
        assert len(row.cells) == len(run.columns)
        assert all((cell is None) == bool(column.refused)
                   for cell, column in zip(row.cells, run.columns, strict=True))  # fmt: skip


def test_a_sweep_says_what_fails_whichever_option_is_taken() -> None:
    state = opened("avg-001", places=True)  # too wide for the bathroom door
    if state.setup is None:
        raise AssertionError
    missed = {FIGURES[item.target.figure].label for item in state.setup.broken}
    (run,) = swept(state, "cushion", "mm").runs
    assert missed
    assert set(run.always) == missed - {row.label for row in run.rows}
    assert swept(opened("avg-001"), "cushion", "mm").runs[0].always == ()


def test_numbers_stand_where_they_meet_nothing() -> None:
    near = (Dot(1, 10.0, 5.0, "one"), Dot(2, 11.0, 5.0, "two"), Dot(3, 60.0, 8.0, "three"))
    named = [dot.number for dot in scatter_of(near, "x", "y", None, (0, 0)).dots if dot.named]
    assert named == [2, 3]  # the number of the first would lie on the second


def test_set_ups_beside_each_other() -> None:
    state = opened("avg-001")
    other = state_of(state.bench, change(state, "cushion", "Q50").codes)
    found = beside([("now", state), ("thicker", other)], "mm")
    assert [label for label, _, alike in found.choices if not alike] == ["Cushion"]
    rows = {row.label: row for group in found.groups for row in group.rows}
    assert rows["Cushion top to floor, front"].differs
    assert not rows["Seat width"].differs
    assert len(found.laid) == 1
    with pytest.raises(ValueError, match="2 to 4"):
        beside([("now", state)], "mm")


@pytest.mark.parametrize(
    ("values", "digits", "steps"),
    [
        ([0.0, 6.0], 0, (0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0)),
        ([430.0, 430.0], 0, (430.0, 431.0)),
        ([-3.2, 3.1], 1, (-4.0, -2.0, 0.0, 2.0, 4.0)),
    ],
)
def test_axes_have_round_steps(values: list[float], digits: int, steps: tuple[float, ...]) -> None:
    assert axis_steps(values, digits) == steps


def test_dots_lie_between_the_ticks_as_their_values_do() -> None:
    dots = (Dot(1, 10.0, 5.0, "low"), Dot(2, 60.0, 8.0, "high"))
    picture = scatter_of(dots, "x", "y", (35.0, 6.5), (0, 0))
    ticks = {tick.words: tick.at for tick in picture.x_ticks}
    assert picture.dots[0].x == ticks["10"] and picture.dots[1].x == ticks["60"]
    if picture.now is None:
        raise AssertionError
    assert picture.now.x == pytest.approx((ticks["30"] + ticks["40"]) / 2, abs=0.02)
    assert picture.dots[1].y < picture.now.y < picture.dots[0].y
    assert scatter_of(dots, "x", "y", (float("nan"), 1.0), (0, 0)).now is None
