"""What would help: the cheapest single change against brute force, sizes just enough."""

from __future__ import annotations

import math
from dataclasses import fields, replace
from typing import Any

import numpy as np
import pytest

from chairwright.fitting.described import Described, describe, why_not_buildable
from chairwright.fitting.person import Person
from chairwright.fitting.place_changes import cheapest_setup_change, mend, place_change
from chairwright.fitting.place_verdicts import PlaceVerdict, Tried, is_missed, place_verdicts
from chairwright.fitting.settled import space_for
from chairwright.places.kinds import (
    Bed,
    Boot,
    Corner,
    Corridor,
    CrossSlope,
    Door,
    Kerb,
    Lift,
    Ramp,
    Room,
    Table,
    Threshold,
)
from chairwright.places.model import Place, Slope
from chairwright.search.space import obeyed
from tests.unit.fitting.placed import among, example, wandered


def verdict_of(person: Person, setup: Described, place: Place) -> tuple[Person, PlaceVerdict]:
    person = among(person, place)
    return person, place_verdicts(person, setup)[0]


def brute(person: Person, setup: Described, verdict: PlaceVerdict) -> list[tuple[Any, ...]]:
    """Every single change that helps, described one by one: missed, price, lost, choice, code."""
    space, found = space_for(person.client, setup.line, person.occupant), []
    musts = {item.target for item in setup.judged if item.target.must and not is_missed(item)}
    likes = {item.target for item in setup.judged if not item.target.must and not is_missed(item)}
    for name, allowed in space.allowed.items():
        for at in allowed:
            index = {**setup.index, name: int(at)}
            rows = {each: np.array([place]) for each, place in index.items()}
            if at == setup.index[name] or not obeyed(space.line, space.line.rules, rows)[0]:
                continue
            if why_not_buildable(space.line, person.occupant, index):
                continue
            other = describe(space.line, person.occupant, index, person.targets)
            missed = {item.target for item in other.judged if is_missed(item)}
            own = [item for item in Tried(person, other).judged(verdict.place) if is_missed(item)]
            if musts & missed or any(item.target.must for item in own):
                continue
            code = other.codes[name]
            found.append((len(own), other.figures["price"], len(likes & missed), name, code))
    return [each for each in found if each[0] < sum(map(is_missed, verdict.judged))]


@pytest.mark.parametrize(("name", "at"), [("avg-001", 0), ("chi-007", 0), ("hem-004", 0)])
def test_the_cheapest_change_against_every_change_one_by_one(name: str, at: int) -> None:
    person, setup = example(name)
    verdict = place_verdicts(person, setup)[at]
    found = cheapest_setup_change(person, setup.line, setup, verdict)
    every = brute(person, setup, verdict)
    assert found is not None and every
    best = min(every, key=lambda each: each[:3])
    ((choice, (before, after)),) = found.codes.items()
    assert (choice, after) == best[3:]
    assert before == setup.codes[choice]
    assert found.kind == "set-up"
    assert found.price == pytest.approx(best[1] - setup.figures["price"])
    assert ("not as preferred" in found.words) == (best[2] > 0)


def test_where_nothing_is_missed_or_no_change_helps_there_is_none() -> None:
    person, setup = example("avg-001")
    verdicts = place_verdicts(person, setup)
    assert verdicts[1].word == "holds"
    assert cheapest_setup_change(person, setup.line, setup, verdicts[1]) is None
    assert place_change(person, setup, verdicts[1]) is None
    person, verdict = verdict_of(person, setup, Door(name="slit", clear_width_mm=300))
    assert verdict.word == "fails"
    assert cheapest_setup_change(person, setup.line, setup, verdict) is None


def test_what_is_only_told_asks_for_no_other_set_up() -> None:
    person, setup = example("car-009")
    kerb = next(each for each in place_verdicts(person, setup) if each.place.kind == "kerb")
    assert kerb.word == "not as preferred"
    assert cheapest_setup_change(person, setup.line, setup, kerb) is None


def test_a_heavy_piece_is_not_helped_by_a_larger_boot() -> None:
    person, setup = example("car-009")
    boot = place_verdicts(person, setup)[0]
    assert boot.word == "fails"
    assert place_change(person, setup, boot) is None


PLACES: tuple[Place, ...] = (
    Door(name="door", clear_width_mm=540),
    Door(name="turn", clear_width_mm=700, approach="corridor", corridor_width_mm=1000),
    Corridor(name="passage", width_mm=560, turn_back=True),
    Corner(name="corner", width_in_mm=900, width_out_mm=610),
    Corner(name="tight", width_in_mm=500, width_out_mm=510),
    Room(name="room", width_mm=900, depth_mm=1100),
    Lift(name="lift", door_width_mm=590, width_mm=900, depth_mm=900),
    Boot(name="boot", opening_width_mm=400, opening_height_mm=300, depth_mm=700, lifted_by="self"),
    Ramp(name="ramp", rise_mm=200, run_mm=900, helped=False),
    Ramp(name="pushed", rise_mm=200, run_mm=1200, helped=True),
    Ramp(name="tilted", rise_mm=100, run_mm=600, cross_slope=Slope(0.4)),
    CrossSlope(name="way", slope=Slope(0.45)),
    Threshold(name="sill", height_mm=60),
    Threshold(name="pushed sill", height_mm=40, helped=True),
    Kerb(name="kerb", height_mm=120, helped=True),
    Table(name="table", clear_height_mm=560),
    Bed(name="high", height_mm=700, transfer="side"),
    Bed(name="low", height_mm=250, transfer="side"),
)  # fmt: skip


@pytest.mark.parametrize("place", PLACES, ids=lambda place: place.name)
def test_the_stated_size_is_enough_and_one_printed_step_less_is_not(place: Place) -> None:
    mended_at_all = 0
    for name in ("avg-001", "hem-004"):
        person, setup = example(name)
        for each in (setup, wandered(person, setup, 1)):
            who, verdict = verdict_of(person, each, place)
            mended_at_all += just_enough(who, each, verdict)
    assert mended_at_all


def just_enough(person: Person, setup: Described, verdict: PlaceVerdict) -> bool:
    """Check what is stated for one set-up; False where it misses nothing there."""
    tried, before, change = (
        Tried(person, setup),
        verdict.place,
        place_change(person, setup, verdict),
    )
    if not any(is_missed(item) for item in verdict.judged):
        assert change is None
        return False
    assert change is not None and change.price is None and not change.codes
    for each in mend(tried, verdict):
        assert not any(is_missed(tried.judged(each.place)[at]) for at in each.targets)
        for less in one_step_less(before, each.place):
            assert any(is_missed(tried.judged(less)[at]) for at in each.targets), less
        before = each.place
    assert not any(item.target.must and is_missed(item) for item in tried.judged(before))
    return True


def one_step_less(before: Place, after: Place) -> list[Place]:
    """The changed place with what was changed one printed step back: together, or one by one."""
    back = {
        field.name: stepped_back(field.name, before, after)
        for field in fields(after)
        if field.name != "typed" and getattr(before, field.name) != getattr(after, field.name)
    }
    if isinstance(after, Boot):
        return [replace(after, **{name: size}) for name, size in back.items()]
    return [replace(after, **back)] if back else []


def stepped_back(name: str, before: Place, after: Place) -> Any:
    old, new = getattr(before, name), getattr(after, name)
    if isinstance(new, Slope):
        return Slope(new.ratio + 0.001)
    step = 0.1 * after.rise_mm if isinstance(after, Ramp) else 1.0
    return new + math.copysign(step, old - new)


def test_the_words_give_what_the_first_principles_give() -> None:
    person, setup = example("avg-001")
    wide, knees = setup.figures["overall_width_mm"], setup.figures["knee_top_mm"]
    for place, words in (
        (
            Door(name="door", clear_width_mm=540),
            f"a clear opening of at least {math.ceil(wide + 10)} mm (now 540 mm)",
        ),
        (
            Table(name="table", clear_height_mm=560.5),
            f"raised until its lowest edge is at {math.ceil(knees + 15)} mm (now 560.5 mm)",
        ),
        (
            Lift(name="lift", door_width_mm=900, width_mm=900, depth_mm=900),
            f"a depth of at least {math.ceil(setup.figures['overall_length_mm'] + 10)} mm "
            "(now 900 mm)",
        ),
    ):
        who, verdict = verdict_of(person, setup, place)
        change = place_change(who, setup, verdict)
        assert change is not None
        assert change.words == words


def test_a_longer_ramp_keeps_its_rise_and_what_is_printed_is_enough() -> None:
    person, setup = example("chi-007")
    verdict = place_verdicts(person, setup)[0]
    change = place_change(person, setup, verdict)
    assert change is not None
    assert change.words.startswith("a ramp of 1:9.7 for the same rise, a run of 0.73 m (now 1:6,")
    assert isinstance(verdict.place, Ramp)
    printed = replace(verdict.place, run_mm=730.0)
    assert not any(is_missed(item) for item in Tried(person, setup).judged(printed))


def test_wishes_come_after_musts() -> None:
    person, setup = example("avg-001")
    corner = Corner(name="corner", width_in_mm=900, width_out_mm=610)
    person, verdict = verdict_of(person, setup, corner)
    change = place_change(person, setup, verdict)
    assert change is not None
    must, wish = change.words.split("; ")
    assert must.startswith("a way ") and must.endswith("mm)")
    assert wish.startswith("in one turn: a way ")
