"""Findings that need geometry, on lines cut down until their answer is plain."""

from __future__ import annotations

import copy
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from ruamel.yaml import YAML

from chairwright.fitting.line_checks.check import check_line
from chairwright.fitting.line_checks.finding import Finding
from chairwright.fitting.line_checks.heights import gaps
from chairwright.line.load import load_line
from tests.oracles.lines import everyday_as_written

Data = dict[str, Any]
Cut = Callable[[Data], None]
SWINGS = "with hanger H70 and caster C8 the caster must swing clear of the footplates"


def findings(folder: Path, *cuts: Cut) -> list[Finding]:
    data = everyday_as_written()
    for cut in cuts:
        cut(data)
    path = folder / "cut.yaml"
    with path.open("w", encoding="utf-8") as stream:
        YAML(typ="safe").dump(data, stream)
    return list(check_line(load_line(str(path))))


def told(found: list[Finding], words: str) -> list[Finding]:
    return [finding for finding in found if words in str(finding.problem)]


def part(data: Data, name: str, code: str) -> Data:
    (found,) = [each for each in data[name] if each["code"] == code]
    assert isinstance(found, dict)
    return found


def another(data: Data, name: str, like: str, **changes: object) -> None:
    """A copy of a part with changes, behind the others."""
    data[name].append(copy.deepcopy(part(data, name, like)) | changes)


def one_gear(data: Data) -> None:
    """One frame, wheel, caster, fork and housing hole: the axle holes alone set the height."""
    every_depth = {"depth_from_mm": 300, "depth_to_mm": 520}
    data["side_frames"] = [part(data, "side_frames", "SFL") | every_depth]
    data["rear_wheels"] = [part(data, "rear_wheels", "W24")]
    data["cambers"] = [part(data, "cambers", "K0")]
    data["axle_plates"] = [part(data, "axle_plates", "XN")]
    data["casters"] = [part(data, "casters", "C8")]
    data["forks"] = [part(data, "forks", "FL") | {"holes_mm": {1: 134}}]
    data["caster_housings"] |= {"ahead_of_tube_mm": {"leading": 42}, "rows_mm": {1: -200}}
    data["stem_spacers"], data["foot_plates"] = [], [part(data, "foot_plates", "FP")]
    data["hangers"] = [part(data, "hangers", "H70")]
    data["arm_supports"] = [part(data, "arm_supports", "AF")]
    data["rules"], data["custom_sizes"] = [], {}


def test_gaps_are_the_wide_steps_between_neighbours() -> None:
    heights = np.array([500.0, 430.0, 445.0, 445.0, 461.0, 480.5])
    assert gaps(heights) == [(445.0, 461.0), (461.0, 480.5), (480.5, 500.0)]
    assert gaps(np.array([400.0])) == []


def few_rows(data: Data) -> None:
    plate = part(data, "axle_plates", "XN")
    plate["columns_mm"] = {"C": 5}
    plate["rows_mm"] = {1: -110, 2: -120, 3: -130, 4: -170, 5: -180}
    data["caster_housings"] |= {
        "rows_mm": {1: -240},
        "stem_settings_deg": list(range(-12, 3)),
    }


def test_a_row_that_is_missing_leaves_a_gap_in_the_heights(tmp_path: Path) -> None:
    (finding,) = told(findings(tmp_path, one_gear, few_rows), "should follow each other within 15")
    assert finding.severity == "remark"
    assert "with any rear wheel" in finding.problem.must
    assert finding.problem.where.startswith(f"{tmp_path / 'cut.yaml'}:")
    lower, upper = finding.problem.got.removeprefix("nothing between ").split()[:3:2]
    assert (
        30 < float(upper) - float(lower) < 50
    )  # the rows are 40 mm apart, the frame tilts a little
    assert "between C3 and C4" in finding.problem.remedy


def even_rows(data: Data) -> None:
    part(data, "axle_plates", "XN")["rows_mm"] = {n: -90 - 6 * n for n in range(1, 14)}


def test_even_rows_leave_no_gap(tmp_path: Path) -> None:
    assert told(findings(tmp_path, one_gear, even_rows), "should follow each other") == []


def long_trail(data: Data) -> None:
    part(data, "forks", "FL")["trail_mm"] = 100
    part(data, "foot_plates", "FP")["behind_tube_mm"] = 60
    data["leg_lengths"] = {"lengths_mm": [360, 380, 400]}


def test_casters_that_strike_whatever_is_done_are_a_mistake(tmp_path: Path) -> None:
    (finding,) = told(findings(tmp_path, one_gear, long_trail), SWINGS)
    assert finding.severity == "mistake"
    assert finding.problem.got.startswith("none of ")


def plates_far_ahead(data: Data) -> None:
    part(data, "foot_plates", "FP")["behind_tube_mm"] = -150


def test_footplates_far_ahead_are_struck_by_no_caster(tmp_path: Path) -> None:
    found = findings(tmp_path, one_gear, plates_far_ahead)
    assert told(found, "swing clear of the footplates") == []


def short_frame(data: Data) -> None:
    """A second frame whose casters come behind the rear axle."""
    another(data, "side_frames", "SFL", code="SFX", caster_tube_x_mm=150)
    part(data, "axle_plates", "XN")["columns_mm"] = {"A": 80, "B": 90}
    data["caster_housings"] |= {"ahead_of_tube_mm": {"trailing": -42}}


def test_a_frame_on_which_no_chair_stands_is_a_mistake(tmp_path: Path) -> None:
    (finding,) = told(findings(tmp_path, one_gear, short_frame), "stand on its four wheels")
    assert finding.severity == "mistake"
    assert "side frame SFX" in finding.problem.must


def square_only_with_c8(data: Data) -> None:
    """A second caster, 30 mm smaller: the frame tilts 4 degrees less, the stem with it."""
    few_rows(data)
    another(data, "casters", "C8", code="C7", diameter_mm=140)
    part(data, "axle_plates", "XN")["rows_mm"] = {1: -150}
    data["caster_housings"]["stem_settings_deg"] = [-4]


def test_a_part_whose_chairs_all_stand_out_of_square_is_remarked(tmp_path: Path) -> None:
    found = findings(tmp_path, one_gear, square_only_with_c8)
    (finding,) = told(found, "a chair with caster C7 should come square")
    assert finding.severity == "remark"


def high_device(data: Data) -> None:
    part(data, "anti_tips", "TS")["holes_mm"] = {1: -60}


def low_device(data: Data) -> None:
    part(data, "anti_tips", "TS")["holes_mm"] = {1: -590}


@pytest.mark.parametrize(
    ("cut", "words"),
    [
        (high_device, "TS should touch the floor"),
        (low_device, "TS should clear the floor"),
    ],
)
def test_an_anti_tip_hole_that_is_of_no_use_is_remarked(
    cut: Cut, words: str, tmp_path: Path
) -> None:
    (finding,) = told(findings(tmp_path, one_gear, cut), words)
    assert finding.severity == "remark"


def rated_high(data: Data) -> None:
    part(data, "side_frames", "SFL")["load_limit_kg"] = 140
    part(data, "rear_wheels", "W24")["load_limit_kg"] = 120
    part(data, "casters", "C8")["load_limit_kg"] = 110


def test_the_weakest_part_is_named_with_what_it_carries(tmp_path: Path) -> None:
    (finding,) = told(findings(tmp_path, one_gear, rated_high), "is rated for 140 kg")
    assert finding.problem.got.startswith("110 kg at most: caster C8 carries 110 kg (line ")
    assert "W24" not in finding.problem.got  # raising it alone would not help


def strong_enough(data: Data) -> None:
    rated_high(data)
    part(data, "side_frames", "SFL")["load_limit_kg"] = 110


def test_a_rated_load_that_one_build_reaches_is_no_mistake(tmp_path: Path) -> None:
    assert told(findings(tmp_path, one_gear, strong_enough), "is rated for") == []


def only_together_on_request(data: Data) -> None:
    part(data, "wheel_locks", "LP")["on_request"] = True
    part(data, "wheel_locks", "LL")["on_request"] = False
    data["rules"] = [
        {"when": {"wheel_lock": ["LL"]}, "need": {"belt": ["YP"]}, "because": "a test"},
    ]


def test_a_standard_range_in_which_nothing_goes_together_is_a_mistake(tmp_path: Path) -> None:
    found = findings(tmp_path, one_gear, only_together_on_request)
    (finding,) = told(found, "possible without sizes made to order and options on request")
    assert finding.severity == "mistake"
    assert "a test" in finding.problem.got


def weak_bolts(data: Data) -> None:
    part(data, "fixed_parts", "XB")["load_limit_kg"] = 90


def test_a_fixed_part_that_carries_less_than_a_frame_is_named(tmp_path: Path) -> None:
    (finding,) = told(findings(tmp_path, one_gear, weak_bolts), "what every chair has must carry")
    assert finding.severity == "mistake"
    assert finding.problem.got == "90 kg for the fixed part XB"


def deep_to_order(data: Data) -> None:
    data["custom_sizes"] = {
        "seat_depth": {"from_mm": 290, "to_mm": 530, "step_mm": 10, "surcharge": 1, "days": 1}
    }


def test_sizes_to_order_that_no_frame_takes_are_remarked(tmp_path: Path) -> None:
    (finding,) = told(findings(tmp_path, one_gear, deep_to_order), "made to order should be")
    assert finding.severity == "remark"
    # 290 to 530 by 10 are 25 sizes, of which 300, 320 ... 520 are standard.
    assert finding.problem.got.startswith("2 of 13 that are not, MD290 to MD530: ")


def test_a_part_is_named_whole_and_its_holes_one_by_one(tmp_path: Path) -> None:
    def rules(data: Data) -> None:
        data["rules"] = [
            {"when": {"axle_hole": ["XN"]}, "need": {"camber": ["K0"]}, "because": "one"},
            {"when": {"axle_hole": ["C2", "C3"]}, "need": {"camber": ["K0"]}, "because": "two"},
        ]

    found = told(findings(tmp_path, one_gear, rules), "something new of axle hole")
    named = [finding.problem.must.partition("axle hole ")[2] for finding in found]
    assert sorted(named) == ["C2 or C3", "XN"]
