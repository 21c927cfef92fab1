"""From parts as written to options: codes, order, sizes, and the rules that sizes make."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.line.choices import CHOICES
from chairwright.line.codes import matching_codes
from tests.laws.setups import some
from tests.oracles.lines import everyday, everyday_as_written, line_from


def codes(choice: str) -> list[str]:
    return [option.code for option in everyday().choices[choice].options]


def test_every_choice_has_options_with_the_numbers_it_needs() -> None:
    for name, kind in CHOICES.items():
        options = everyday().choices[name].options
        assert options, name
        fitted = [option for option in options if option.code != "none"]
        for key in kind.needs:
            assert all(key in option.numbers for option in fitted), (name, key)


def test_codes_of_holes() -> None:
    assert codes("axle_hole")[:2] == ["A1", "A2"]
    assert codes("fork")[0] == "FS-1"
    assert {"L1", "T4"} <= set(codes("caster_housing"))
    assert {"N0", "NF2", "N2"} <= set(codes("stem_setting"))
    assert codes("foot_supports") == ["both", "left", "right", "none"]
    for choice in ("hanger", "leg_length", "anti_tip"):
        assert codes(choice)[-1] == "none"


def test_codes_are_unique_within_a_choice() -> None:
    for name in CHOICES:
        assert len(set(codes(name))) == len(codes(name)), name


def test_a_wheel_reaches_over_its_tyre() -> None:
    line = everyday()
    bead, tyre, radius = (
        line.column("rear_wheel", key) for key in ("bead_seat_mm", "tyre_width_mm", "radius_mm")
    )
    assert radius == pytest.approx(bead / 2 + tyre)


def test_a_part_without_its_hole_means_every_hole() -> None:
    fork = everyday().choices["fork"]
    assert matching_codes(fork, ["FM"]) == {code for code in fork.codes if code.startswith("FM-")}
    assert matching_codes(fork, ["FM-2", "FS-1"]) == {"FM-2", "FS-1"}
    assert matching_codes(fork, ["F"]) == frozenset()


def test_closed_holes_are_no_options() -> None:
    data = everyday_as_written()
    data["axle_plates"][0]["closed"] = ["A1", "F9"]
    left = [option.code for option in line_from(data).choices["axle_hole"].options]
    assert set(codes("axle_hole")) - set(left) == {"A1", "F9"}


def test_a_caster_must_fit_the_fork_below_its_crown() -> None:
    line = everyday()
    radius = {option.code: option.numbers["radius_mm"] for option in line.choices["caster"].options}
    forks = {option.code: option.numbers for option in line.choices["fork"].options}
    seen = 0
    for rule in line.rules:
        if set(rule.when) == {"caster"} and set(rule.need) == {"fork"}:
            (caster,) = rule.when["caster"]
            for code, numbers in forks.items():
                room = numbers["drop_mm"] - line.crown_gap_mm
                largest = min(room, numbers["largest_radius_mm"])
                assert (code in rule.need["fork"]) == (radius[caster] <= largest)
                seen += 1
    assert seen == len(radius) * len(forks)


def test_a_seat_depth_must_lie_in_the_frames_range() -> None:
    line = everyday()
    depths = {o.code: o.numbers["depth_mm"] for o in line.choices["seat_depth"].options}
    rules = [rule for rule in line.rules if set(rule.need) == {"seat_depth"}]
    assert len(rules) == len(line.choices["side_frame"].options)
    for rule in rules:
        (frame,) = rule.when["side_frame"]
        numbers = next(o.numbers for o in line.choices["side_frame"].options if o.code == frame)
        low, high = numbers["depth_from_mm"], numbers["depth_to_mm"]
        wanted = {code for code, depth in depths.items() if low <= depth <= high}
        assert rule.need["seat_depth"] == wanted


def test_order_of_the_fixed_parts_changes_no_figure() -> None:
    data = everyday_as_written()
    data["fixed_parts"].reverse()
    made = some(5)
    other = made.changed(line=line_from(data))
    for name, values in made.figures.items():
        assert other[name] == pytest.approx(values, rel=1e-12, abs=1e-9, nan_ok=True), name


def test_order_of_the_options_changes_no_figure() -> None:
    data = everyday_as_written()
    for name in ("rear_wheels", "casters", "cushions", "seat_widths", "back_heights"):
        data[name].reverse()
    turned, made = line_from(data), some(6)
    index = {}
    for name, places in made.rows.index.items():
        old, new = everyday().choices[name].options, turned.choices[name].codes
        index[name] = np.array([new[old[at].code] for at in places])
    other = made.changed(index, line=turned)
    for name, values in made.figures.items():
        assert other[name] == pytest.approx(values, rel=1e-12, abs=1e-9, nan_ok=True), name
