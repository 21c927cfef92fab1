"""What the searches say: ties, order, and the same answer every time."""

from __future__ import annotations

from functools import cache

import pytest

from chairwright.line.choices import CHOICES
from chairwright.search.best import find_best
from chairwright.search.front import Objective, find_front
from chairwright.search.prepared import Prepared
from chairwright.search.reasons import find_reasons
from chairwright.search.space import Space, open_space
from chairwright.targets.target import Target
from tests.oracles.lines import everyday
from tests.oracles.people import client, seated


def must(figure: str, low: float | None, high: float | None) -> Target:
    return Target(figure, low, high, True, 1.0, "test", "test")


def wish(figure: str, low: float | None, high: float | None, weight: float = 1.0) -> Target:
    return Target(figure, low, high, False, weight, "test", "test")


@cache
def space() -> Space:
    settled = {"fork": ["FM"], "seat_depth": ["D400", "D420"], "hanger": ["H70"]}
    return open_space(everyday(), seated(client()), settled)


MUSTS = (must("seat_width_mm", 420, 420), must("caster_stem_angle_deg", -1, 1))
AIMS = (Objective("tip_rear_locked_deg", "max"), Objective("overall_width_mm", "min"))


def test_costs_are_weight_times_steps_of_the_scale() -> None:
    # Seat width: scale 10 mm. 25 mm below the low end at weight 2 is 5.0.
    targets = [must("seat_width_mm", 420, 420), wish("seat_width_mm", 445, 500, 2.0)]
    found = find_best(space(), targets)
    assert found is not None
    assert found.cost == pytest.approx(5.0)


def test_of_equals_the_option_that_the_line_lists_first_wins() -> None:
    found = find_best(space(), list(MUSTS))
    assert found is not None
    assert found.cost == 0.0
    # Nothing speaks of these: the first option stands.
    for choice in ("back_support", "back_height", "wheel_lock", "arm_support"):
        assert found.index[choice] == space().allowed[choice][0], choice


def test_an_unreachable_must_gives_no_best_and_an_empty_front() -> None:
    never = [must("seat_width_mm", 2000, None)]
    assert find_best(space(), never) is None
    assert find_front(space(), never, AIMS).points == ()


def test_the_same_question_has_the_same_answer() -> None:
    targets = [*MUSTS, wish("tip_rear_locked_deg", 14, 18), wish("overall_width_mm", None, 600)]
    first, second = (find_best(space(), targets) for _ in range(2))
    assert first == second
    assert find_front(space(), targets, AIMS) == find_front(Prepared(space()), targets, AIMS)


def test_one_preparation_serves_several_searches() -> None:
    prepared = Prepared(space())
    for low in (12.0, 15.0):
        targets = [*MUSTS, wish("tip_rear_locked_deg", low, None)]
        assert find_best(prepared, targets) == find_best(space(), targets)


def test_the_front_is_in_the_order_of_its_first_objective_and_improves_step_by_step() -> None:
    aims = (Objective("tip_rear_locked_deg", "max"), Objective("turning_diameter_mm", "min"))
    points = find_front(space(), list(MUSTS), aims).points
    steady = [point.values["tip_rear_locked_deg"] for point in points]
    round_the_axle = [point.values["turning_diameter_mm"] for point in points]
    assert len(points) > 1
    assert steady == sorted(steady, reverse=True)
    assert round_the_axle == sorted(round_the_axle, reverse=True)
    assert all(set(point.index) == set(CHOICES) for point in points)


def test_a_must_that_cannot_hold_by_itself_is_its_own_conflict() -> None:
    wide = must("seat_width_mm", 600, None)
    found = find_reasons(space(), [*MUSTS[1:], wide])
    ((correction,), (conflict,)) = found.corrections, found.conflicts
    (give,) = correction.gives
    assert conflict == (wide,)
    # The widest seat of the line is 580 mm.
    assert (give.target, give.value, give.by) == (wide, 580.0, 20.0)


def test_two_musts_that_exclude_each_other() -> None:
    narrow, wide = must("seat_width_mm", None, 400), must("overall_width_mm", 780, None)
    found = find_reasons(space(), [narrow, wide])
    assert found.conflicts == ((narrow, wide),)
    assert {correction.gives[0].target for correction in found.corrections} == {narrow, wide}
    assert found.complete


def test_reasons_may_stop_at_a_number_of_corrections() -> None:
    narrow, wide = must("seat_width_mm", None, 400), must("overall_width_mm", 780, None)
    found = find_reasons(space(), [narrow, wide], most=1)
    assert len(found.corrections) == 1
    assert (found.conflicts, found.complete) == (((narrow, wide),), False)


def test_no_reasons_when_the_musts_hold() -> None:
    found = find_reasons(space(), list(MUSTS))
    assert (found.corrections, found.conflicts) == ((), ())
