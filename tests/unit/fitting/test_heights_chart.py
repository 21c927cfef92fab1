"""A seat-height chart: what stays the same, why a cell is a dash, what is refused."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

import numpy as np
import pytest

from chairwright.errors import InputError
from chairwright.fitting.heights_chart import (
    ANGLE,
    FRONT,
    NOSE_DOWN,
    REAR,
    STANDS,
    TILTS_BACK,
    Ask,
    HeightsChart,
    heights_chart,
)
from chairwright.fitting.heights_fixed import FIXED, SQUARED, VARIED, hole_columns
from chairwright.line.model import Line
from tests.oracles.lines import everyday, everyday_as_written, line_from


def reasons(chart: HeightsChart, **codes: str) -> set[str]:
    """Why the cells with these codes are dashes; "stands" for those that are not."""
    axes = [
        [at for at in range(size) if codes.get(name) in (None, chart.option(name, at).code)]
        for name, size in zip(VARIED, chart.why.shape, strict=True)
    ]
    places = chart.why[np.ix_(*axes)].ravel().tolist()
    return {"stands" if at == STANDS else chart.reasons[at] for at in places}


def with_rules(*rules: dict[str, Any]) -> Line:
    written = everyday_as_written()
    written["rules"] += list(rules)
    return line_from(written)


def refusal(ask: Ask) -> str:
    with pytest.raises(InputError) as refused:
        heights_chart(everyday(), ask)
    return str(refused.value)


def first_codes(line: Line, names: Iterable[str]) -> dict[str, str]:
    return {name: line.choices[name].options[0].code for name in names}


def test_without_a_word_the_line_s_first_options_stay_the_same() -> None:
    line = everyday()
    fixed = {name: option.code for name, option in heights_chart(line, Ask()).fixed.items()}
    assert fixed.pop("caster_housing") == "L3"  # of L1 to L4 the lower of the two middle holes
    assert fixed == first_codes(line, [name for name in FIXED if name != "caster_housing"])


def test_what_is_left_out_goes_with_what_is_asked() -> None:
    line = everyday()
    frame = line.choices["side_frame"].options[2]
    chart = heights_chart(line, Ask(fixed={"side_frame": frame.code.lower()}))
    assert chart.fixed["side_frame"] == frame
    depth = chart.fixed["seat_depth"].numbers["depth_mm"]
    assert depth == frame.numbers["depth_from_mm"]


def test_every_choice_that_moves_a_height_is_varied_squared_or_named() -> None:
    moving = {
        "side_frame", "rear_wheel", "camber", "axle_hole", "caster", "fork", "stem_spacer",
        "caster_housing", SQUARED, "seat_depth",
    }  # fmt: skip
    assert moving <= {*VARIED, *FIXED, SQUARED}


def test_columns_hold_every_axle_hole_once_highest_first() -> None:
    line = everyday()
    columns = hole_columns(line)
    held = [at for column in columns for at in column.rows.values()]
    assert sorted(held) == list(range(len(line.choices["axle_hole"].options)))
    heights = line.column("axle_hole", "z_mm")
    for column in columns:
        own = heights[list(column.rows.values())]
        assert np.all(np.diff(own) < 0)
        assert len(set(line.column("axle_hole", "x_mm")[list(column.rows.values())])) == 1


def test_the_middle_column_is_printed_unless_another_is_named() -> None:
    line = everyday()
    holes = line.choices["axle_hole"].options
    own = {hole.numbers["x_mm"] for hole in holes if hole.part == holes[0].part}
    shown = heights_chart(line, Ask()).column
    behind = sum(x_mm < shown.x_mm for x_mm in own)
    ahead = sum(x_mm > shown.x_mm for x_mm in own)
    assert ahead - behind in (0, 1)
    last = hole_columns(line)[-1].label
    assert heights_chart(line, Ask(column=last.lower())).column.label == last


def test_a_rule_that_the_chart_settles_gives_the_reason() -> None:
    line = everyday()
    wheel = line.choices["rear_wheel"].options[1].code
    caster = line.choices["caster"].options[1].code
    rule = {
        "when": {"rear_wheel": [wheel]}, "need": {"caster": [caster]}, "because": "so we say",
    }  # fmt: skip
    chart = heights_chart(with_rules(rule), Ask())
    for at in range(chart.why.shape[2]):
        code = chart.option("caster", at).code
        told = "so we say" in reasons(chart, rear_wheel=wheel, caster=code)
        assert told == (code != caster)


def test_rules_that_only_together_rule_something_out_are_told_together() -> None:
    """One wheel needs one lock, and that lock one caster: the lock itself is not on the chart."""
    line = everyday()
    wheel = line.choices["rear_wheel"].options[1].code
    caster = line.choices["caster"].options[1].code
    lock = line.choices["wheel_lock"].options[0].code
    chart = heights_chart(
        with_rules(
            {"when": {"rear_wheel": [wheel]}, "need": {"wheel_lock": [lock]}, "because": "first"},
            {"when": {"wheel_lock": [lock]}, "need": {"caster": [caster]}, "because": "second"},
        ),
        Ask(),
    )
    other = line.choices["caster"].options[0].code
    assert "stands" not in reasons(chart, rear_wheel=wheel, caster=other)
    assert any("first; second" in told for told in reasons(chart, rear_wheel=wheel, caster=other))
    assert not any("first" in told for told in reasons(chart, rear_wheel=wheel, caster=caster))
    spared = line.choices["rear_wheel"].options[0].code
    assert not any("first" in told for told in reasons(chart, rear_wheel=spared))


def test_a_frame_that_would_tilt_too_far_is_a_dash_with_its_direction() -> None:
    """The lower the hole, the higher the back: from too far back to too far nose-down."""
    line = everyday()
    chart = heights_chart(line, Ask())
    tilts = {chart.reasons.index(NOSE_DOWN), chart.reasons.index(TILTS_BACK)}
    assert tilts & set(np.unique(chart.why).tolist())
    holes = [chart.options["axle_hole"].index(at) for at in chart.column.rows.values()]
    down = chart.reasons.index(NOSE_DOWN)
    back = chart.reasons.index(TILTS_BACK)
    for cells in np.moveaxis(chart.why[:, holes], 1, 0).reshape(len(holes), -1).T.tolist():
        floor = [at for at in cells if at in (STANDS, down, back)]
        order = {back: 0, STANDS: 1, down: 2}
        assert [order[at] for at in floor] == sorted(order[at] for at in floor)


def test_dashes_have_no_figures_and_heights_have_all() -> None:
    chart = heights_chart(everyday(), Ask())
    for values in chart.figures.values():
        assert np.array_equal(np.isnan(values), chart.why != STANDS)


def test_level_leaves_only_seat_angles_in_the_range() -> None:
    line = everyday()
    every, level = heights_chart(line, Ask()), heights_chart(line, Ask(level_deg=(-1.0, 4.0)))
    angle = every.figures[ANGLE]
    inside = (every.why == STANDS) & (angle >= -1.0) & (angle <= 4.0)
    assert 0 < inside.sum() < (every.why == STANDS).sum()
    assert np.array_equal(level.why == STANDS, inside)
    assert np.array_equal(level.figures[REAR][inside], every.figures[REAR][inside])
    gone = (every.why == STANDS) & ~inside
    assert {level.reasons[at] for at in level.why[gone]} == {"seat angle outside -1 to 4 degrees"}


def test_a_chart_narrowed_to_codes_is_part_of_the_whole() -> None:
    line = everyday()
    whole = heights_chart(line, Ask())
    wheel = line.choices["rear_wheel"].options[2].code
    fork = line.choices["fork"].options[-1].code.rpartition("-")[0]
    part = heights_chart(line, Ask(only={"rear_wheel": (wheel.lower(),), "fork": (fork,)}))
    assert part.why.shape[0] == 1
    assert 1 < part.why.shape[3] < whole.why.shape[3]
    assert {option.code.rpartition("-")[0] for option in forks(part)} == {fork}
    own = whole.figures[FRONT][2:3, :, :, [whole.options["fork"].index(a) for a in place(part)]]
    assert np.array_equal(part.figures[FRONT], own, equal_nan=True)


def forks(chart: HeightsChart) -> list[Any]:
    return [chart.option("fork", at) for at in range(chart.why.shape[3])]


def place(chart: HeightsChart) -> tuple[int, ...]:
    return chart.options["fork"]


def test_an_unknown_code_is_refused_with_a_near_one() -> None:
    code = everyday().choices["side_frame"].options[0].code
    told = refusal(Ask(fixed={"side_frame": code + "X"}))
    assert told.startswith("--side-frame: it must be a side frame of the line; got ")
    assert f"Did you mean {code}?" in told


def test_every_unknown_code_of_an_axis_is_told() -> None:
    told = refusal(Ask(only={"caster": ("C99", "C98")}))
    assert "C99" in told
    assert "C98" in told


def test_an_unknown_column_is_refused_with_those_that_are_there() -> None:
    told = refusal(Ask(column="Z"))
    labels = ", ".join(column.label for column in hole_columns(everyday()))
    assert f"--axle-column: it must be a column of the line's axle plates ({labels})" in told


def test_codes_that_no_rule_lets_be_together_are_refused_with_the_rule() -> None:
    line = everyday()
    frame = line.choices["side_frame"].options[0].code
    depth = line.choices["seat_depth"].options[-1].code
    told = refusal(Ask(fixed={"side_frame": frame, "seat_depth": depth}))
    assert told.startswith("--side-frame, --seat-depth: ")
    assert "each side frame is made for a range of seat depths" in told


def test_a_range_upside_down_is_refused() -> None:
    assert "least seat angle comes first" in refusal(Ask(level_deg=(4.0, -1.0)))
