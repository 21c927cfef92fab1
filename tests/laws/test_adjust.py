"""An adjustment followed step by step turns the first set-up into the second.

Replayed from its data and, by somebody who has nothing but the sheet, from its printed text. What
each step says of the chair is worked out again here: the rules in plain Python, the floor and the
readings with all the set-ups at once.
"""

from __future__ import annotations

import math
import re

import numpy as np
import pytest

from chairwright.chair.buildable import buildable
from chairwright.chair.occupant import Occupant
from chairwright.cli.opened import open_setup
from chairwright.cli.report_adjust import adjust_report
from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described, describe
from chairwright.fitting.extras import with_extras
from chairwright.line.load import load_line
from chairwright.line.model import Line
from chairwright.order.adjust import Adjustment, adjust
from chairwright.order.adjust_readings import AT_STEP
from chairwright.order.adjust_state import DEVICE_GAP
from chairwright.order.steps import EXTRAS, WORKS
from tests.laws.setups import Made, for_many, make
from tests.oracles.draws import random_setups
from tests.oracles.people import anybody, seated
from tests.oracles.rules import rules_kept

from .example_sweeps import EXAMPLES, SETUPS

LINES = {name: load_line(name) for name in ("everyday", "heavy-duty", "light-rigid")}
GROUPS = [*dict.fromkeys(work.group for work in WORKS), "Last check"]
MODEL = ["Foot support", "Seat", "Back", "Rear wheel", "Caster housings", "Wheel locks", "Anti-tip"]
MOVE = re.compile(r"^   ([A-Z][^:]*): (\S+) -> (\S+)(?: \(.*\))?$")
PAIRS = 3


def drawn(seed: int) -> tuple[Occupant, list[Described]]:
    """A client and set-ups of one line, two by two, some with extras."""
    rng = np.random.default_rng(seed)
    line = LINES[sorted(LINES)[seed % 3]]
    occupant = seated(anybody(rng))
    rows, _ = random_setups(line, occupant, rng, 2 * PAIRS)
    found = []
    for at in range(2 * PAIRS):
        index = {name: int(array[at]) for name, array in rows.index.items()}
        fitted = [extra.code for extra in line.extras if rng.random() < 0.3]
        found.append(describe(with_extras(line, fitted, {}), occupant, index, ()))
    return occupant, found


def pairs(seed: int) -> list[tuple[Adjustment, Described, Described, Occupant]]:
    occupant, found = drawn(seed)
    twos = list(zip(found[::2], found[1::2], strict=True))
    return [(adjust(one, two, occupant), one, two, occupant) for one, two in twos]


def replayed(found: Adjustment) -> list[dict[str, str]]:
    """Codes after each step, when each move is done as it says."""
    codes, extras = found.first.codes, {extra.code for extra in found.first.extras}
    after = []
    for step in found.steps:
        codes = dict(codes)
        for move in step.moves:
            if move.choice == EXTRAS:
                assert (move.before in extras) == (move.before != "none")
                extras = (extras - {move.before}) | ({move.after} - {"none"})
                continue
            assert codes[move.choice] == move.before
            codes[move.choice] = move.after
        after.append(codes)
    assert codes == found.last.codes
    assert extras == {extra.code for extra in found.last.extras}
    return after


def remade(line: Line, occupant: Occupant, states: list[dict[str, str]]) -> Made:
    index = {
        name: np.array([choice.codes[codes[name]] for codes in states])
        for name, choice in line.choices.items()
    }
    return make(line, occupant, index)


@for_many(12)
def test_the_steps_turn_the_first_set_up_into_the_second(seed: int) -> None:
    for found, one, two, _ in pairs(seed):
        replayed(found)
        moved = [move.choice for step in found.steps for move in step.moves]
        differ = {name for name in one.codes if one.codes[name] != two.codes[name]}
        assert set(moved) - {EXTRAS} == differ
        once = [name for name in moved if name != EXTRAS]
        assert len(once) == len(set(once))


@for_many(12)
def test_each_state_between_is_told_right(seed: int) -> None:
    for found, _, two, occupant in pairs(seed):
        after = replayed(found)
        made = remade(two.line, occupant, after)
        fine = rules_kept(two.line, made.rows.index) & buildable(made.rows)
        assert fine[-1]
        for at, step in enumerate(found.steps):
            assert step.state.stands == bool(fine[at])
            assert step.state.status == ("on its wheels" if fine[at] else "off its wheels")
            assert bool(step.state.reasons) == (not fine[at])
            assert all(reason and ";" not in reason for reason in step.state.reasons)
            later = next(n for n in range(at, len(fine)) if fine[n])
            assert step.down_after == later + 1
        spans = [n for start, end in found.off_wheels for n in range(start, end + 1)]
        assert spans == [step.number for step in found.steps if not step.state.stands]


@for_many(12)
def test_each_reading_is_that_of_the_chair_as_it_then_is(seed: int) -> None:
    for found, _, two, occupant in pairs(seed):
        made = remade(two.line, occupant, replayed(found))
        gap = made.rows["device_z"] - made.rows["device_radius"]
        for at, step in enumerate(found.steps):
            for each in step.readings:
                value = gap[at] if each.name == DEVICE_GAP else made[each.name][at]
                assert each.after == pytest.approx(value, abs=1e-9)
                assert each.digits == (FIGURES[each.name].digits if each.name in FIGURES else 0)
        if found.steps:
            told = {each.name: each.after for each in found.steps[-1].readings}
            for name, value in told.items():
                assert value == pytest.approx(two.figures[name], abs=1e-9)


@for_many(8)
def test_a_figure_on_the_floor_is_read_only_on_its_wheels(seed: int) -> None:
    floor = ("seat_to_floor_rear_mm", "seat_angle_deg", "caster_stem_angle_deg", DEVICE_GAP)
    for found, *_ in pairs(seed):
        for step in found.steps:
            names = {each.name for each in step.readings}
            assert step.state.stands or not names & set(floor)


@for_many(12)
def test_steps_keep_the_order_of_adjustment(seed: int) -> None:
    assert [group for group in GROUPS if group in MODEL] == MODEL
    for found, *_ in pairs(seed):
        order = [GROUPS.index(step.group) for step in found.steps]
        assert order == sorted(order)
        assert [step.number for step in found.steps] == list(range(1, len(found.steps) + 1))


@for_many(12)
def test_what_follows_from_a_moved_axle_is_never_left_out(seed: int) -> None:
    for found, one, two, _ in pairs(seed):
        if one.codes["axle_hole"] == two.codes["axle_hole"]:
            continue
        groups = [step.group for step in found.steps]
        assert "Wheel locks" in groups
        stems = [step for step in found.steps if any("stems upright" in n for n in step.notes)]
        assert len(stems) == 1
        assert "caster_stem_angle_deg" in {each.name for each in stems[0].readings} or (
            not stems[0].state.stands or stems[0].kind == "change"
        )
        assert ("Anti-tip" in groups) or two.codes["anti_tip"] == one.codes["anti_tip"] == "none"
        assert groups[-1] == "Last check"
        assert any("spotter" in note for note in found.steps[-1].notes)


@for_many(12)
def test_somebody_with_nothing_but_the_sheet_comes_to_the_second_set_up(seed: int) -> None:
    for found, one, two, _ in pairs(seed):
        labels = {choice.label: name for name, choice in one.line.choices.items()}
        codes, extras = dict(one.codes), {extra.code for extra in one.extras}
        for line in adjust_report(found, "one", "two", "mm").splitlines():
            match = MOVE.match(line)
            if match is None:
                continue
            label, before, after = match.groups()
            if label == "Extra":
                extras = (extras - {before}) | ({after} - {"none"})
                continue
            assert codes[labels[label]] == before
            codes[labels[label]] = after
        assert codes == two.codes
        assert extras == {extra.code for extra in two.extras}


@for_many(8)
def test_the_way_back_has_the_same_moves_turned_round(seed: int) -> None:
    for found, one, two, occupant in pairs(seed):
        back = adjust(two, one, occupant)
        there = {(m.choice, m.before, m.after) for step in found.steps for m in step.moves}
        again = {(m.choice, m.after, m.before) for step in back.steps for m in step.moves}
        assert there == again
        assert [each.code for each in found.parts_on] == [each.code for each in back.parts_off]


@for_many(8)
def test_one_moved_axle_hole_alone(seed: int) -> None:
    """A near pair: only what changes and what follows, nothing else."""
    occupant, found = drawn(seed)
    for one in found:
        made = remade(one.line, occupant, [one.codes])
        options = one.line.choices["axle_hole"].options
        here = options[one.index["axle_hole"]]
        for at, option in enumerate(options):
            near = option.mounting == here.mounting and option.code != here.code
            if not near or math.hypot(
                option.numbers["x_mm"] - here.numbers["x_mm"],
                option.numbers["z_mm"] - here.numbers["z_mm"],
            ) > 30:  # fmt: skip
                continue
            other = made.changed({"axle_hole": np.array([at])})
            if not (other.stands[0] and rules_kept(one.line, other.rows.index)[0]):
                continue
            two = describe(one.line, occupant, {**one.index, "axle_hole": at}, ())
            steps = adjust(one, two, occupant).steps
            device = one.codes["anti_tip"] != "none"
            kinds = [(step.group, step.kind) for step in steps]
            assert kinds == [
                ("Rear wheel", "change"),
                ("Caster housings", "check"),
                ("Wheel locks", "set again"),
                *([("Anti-tip", "check")] if device else []),
                ("Last check", "check"),
            ]
            assert all(step.state.stands for step in steps)
            break


@pytest.mark.parametrize("first", EXAMPLES)
def test_every_pair_of_examples(first: str) -> None:
    one = open_setup(SETUPS / f"{first}.yaml")
    for last in EXAMPLES:
        two = open_setup(SETUPS / f"{last}.yaml")
        found = adjust(one.setup, two.setup, two.person.occupant)
        replayed(found)
        assert bool(found.steps) == (one.setup.codes != two.setup.codes)
        assert not found.steps or found.steps[-1].state.stands


def test_every_reading_of_a_step_is_one_that_can_be_taken() -> None:
    names = {name for group in AT_STEP.values() for name in group}
    assert names - set(FIGURES) == {DEVICE_GAP}
