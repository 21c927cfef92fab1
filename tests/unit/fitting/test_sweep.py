"""Options tried one by one: rules, feet, the floor, the anti-tip device, re-squaring."""

from __future__ import annotations

from functools import cache

import pytest

from chairwright.fitting.described import Described, describe
from chairwright.fitting.person import Person, read_person
from chairwright.fitting.runs import EVERY, runs_of
from chairwright.fitting.sweep import Sweep, Tried, sweep
from chairwright.line.load import load_line
from tests.oracles.people import client
from tests.unit.chair.seated import CODES

LINE = load_line("everyday")


@cache
def person() -> Person:
    return read_person(client())


@cache
def base(**other: str) -> Described:
    codes = CODES | other
    index = {name: LINE.choices[name].codes[code] for name, code in codes.items()}
    return describe(LINE, person().occupant, index, person().targets)


def swept(choice: str, wanted: str | None = EVERY, *, keep: bool = False, **other: str) -> Sweep:
    setup = base(**other)
    runs = runs_of(LINE.choices[choice], setup.index[choice], wanted)
    return sweep(person(), setup, choice, runs, keep=keep)


def tried(sweep: Sweep) -> dict[str, Tried]:
    return {each.option.code: each for run in sweep.runs for each in run.tried}


def test_only_the_swept_choice_changes() -> None:
    for each in tried(swept("back_angle")).values():
        assert each.setup is not None
        codes = {**base().codes, "back_angle": each.option.code}
        assert each.setup.codes == codes
        assert not each.also


def test_the_option_of_the_set_up_is_marked_and_its_figures_are_those_of_the_set_up() -> None:
    found = tried(swept("cushion"))
    here = found.pop(base().codes["cushion"])
    assert here.status == "as it stands"
    assert here.setup is not None
    assert here.setup.figures == base().figures
    assert {each.status for each in found.values()} == {"stands"}


def test_an_option_that_a_rule_forbids_is_told_with_the_rule() -> None:
    short = tried(swept("fork"))["FS-1"]
    assert short.status == "not allowed"
    (reason,) = short.reasons
    assert reason.startswith("caster C6 needs fork and hole ")
    assert reason.endswith("clear of its crown")
    assert short.setup is None


def test_a_foot_that_rests_needs_its_support() -> None:
    left = tried(swept("foot_supports"))["left"]
    assert left.status == "not allowed"
    assert "the right foot rests and must have a foot support" in left.reasons


def test_an_option_that_does_not_stand_is_told_why() -> None:
    longest = tried(swept("leg_length"))["G500"]
    assert longest.status == "does not stand"
    assert longest.reasons == (
        "the footplate would stand in the floor; choose a shorter hanger length",
    )


def test_an_anti_tip_device_in_the_floor_is_raised_and_that_is_said() -> None:
    low = "TS-8"
    run = swept("axle_hole", "up-down", anti_tip=low).runs[0]
    kept = tried(swept("axle_hole", "up-down", keep=True, anti_tip=low))
    raised = [each for each in run.tried if each.also]
    assert raised
    for each in raised:
        assert kept[each.option.code].status == "does not stand"
        assert "anti-tip wheel would stand in the floor" in kept[each.option.code].reasons[0]
        assert each.setup is not None
        assert each.also == {"anti_tip": each.setup.codes["anti_tip"]}
        assert each.also["anti_tip"].startswith("TS-")
        wheel = each.setup.shape.anti_tip_wheel
        assert wheel is not None
        assert wheel[1] >= each.setup.shape.anti_tip_radius_mm
    for each in run.standing:
        if not each.also:
            assert each.setup is not None
            assert each.setup.codes["anti_tip"] == low


def test_a_device_that_is_swept_itself_is_not_raised() -> None:
    found = tried(swept("anti_tip", anti_tip="TS-1"))
    assert all(not each.also for each in found.values())
    assert {each.status for each in found.values()} >= {"as it stands", "stands", "does not stand"}


def test_squaring_is_offered_for_the_running_gear_only() -> None:
    assert any(each.squared for each in tried(swept("axle_hole", "up-down")).values())
    assert not any(each.squared for each in tried(swept("cushion")).values())
    assert not any(each.squared for each in tried(swept("stem_setting")).values())


def test_missed_musts_are_named_once() -> None:
    wide = tried(swept("seat_width"))["S520"]
    names = [figure.name for figure in wide.missed]
    assert "seat_width_mm" in names
    assert len(names) == len(set(names))


def test_progress_counts_every_option() -> None:
    seen: list[tuple[int, int]] = []
    runs = runs_of(LINE.choices["cushion"], base().index["cushion"])
    sweep(person(), base(), "cushion", runs, progress=lambda *done: seen.append(done))
    assert seen == [(at, 4) for at in (1, 2, 3, 4)]


@pytest.mark.parametrize("choice", LINE.choices)
def test_every_choice_of_the_line_can_be_swept(choice: str) -> None:
    found = swept(choice, None)
    for run in found.runs:
        assert run.tried[run.present].option is found.option
        assert all(each.stands or each.reasons for each in run.tried)


def test_a_reason_of_many_codes_stays_short() -> None:
    reasons = [reason for each in tried(swept("fork")).values() for reason in each.reasons]
    assert max(len(reason) for reason in reasons) < 200
