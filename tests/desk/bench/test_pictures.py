"""Pictures: nothing that a strict page refuses, holes where the line says, a window that stays."""

from __future__ import annotations

from math import hypot
from xml.etree import ElementTree as ET

import pytest

from chairwright_desk.bench.bridge import (
    HolePicture,
    State,
    change,
    choice_shown,
    hole_picture,
    pictures_of,
    state_of,
    table_of,
)
from chairwright_desk.bench.bridge.holes import PLACED
from tests.desk.bench.examples import opened


def _views(state: State) -> dict[str, ET.Element]:
    found = pictures_of(state, "mm")
    if found is None:
        raise AssertionError
    return {
        "side": ET.fromstring(found.side.svg),
        "plan": ET.fromstring(found.plan.svg),
        "rear": ET.fromstring(found.rear.svg),
        "polar": ET.fromstring(found.polar.svg),
    }


def _holes(state: State, name: str) -> HolePicture:
    found = hole_picture(state, choice_shown(state, name, table_of(state)), "mm")
    if found is None:
        raise AssertionError
    return found


def test_nothing_inline_and_every_id_once_on_the_page() -> None:
    state = opened("avg-001")
    texts = [ET.tostring(each, encoding="unicode") for each in _views(state).values()]
    texts += [_holes(state, name).svg for name in PLACED]
    nodes = [node for text in texts for node in ET.fromstring(text).iter()]
    ids = [node.get("id") for node in nodes if node.get("id")]
    assert len(ids) == len(set(ids))
    keys = {key for node in nodes for key in node.attrib}
    assert not {node.tag.rpartition("}")[2] for node in nodes} & {"style", "script", "a"}
    assert not [key for key in keys if key == "style" or key.startswith("on")]


def test_the_window_stays_while_the_chair_changes() -> None:
    state = opened("avg-001")
    after = state_of(state.bench, change(state, "back_height", "P425").codes)
    before, now = _views(state), _views(after)
    for name in ("side", "plan", "rear"):
        assert now[name].get("viewBox") == before[name].get("viewBox")
    assert ET.tostring(now["side"]) != ET.tostring(before["side"])


@pytest.mark.parametrize("name", sorted(PLACED))
def test_holes_lie_as_far_apart_as_the_line_says(name: str) -> None:
    state = opened("avg-001")
    picture, choice = _holes(state, name), state.bench.line.choices[name]
    scale = float(picture.name.rpartition("1:")[2])
    numbers = {each.code: each.numbers for each in choice.options}
    first, *others = picture.spots
    assert others
    for spot in others:
        apart = hypot(spot.x - first.x, spot.y - first.y) * scale
        one, other = numbers[first.code], numbers[spot.code]
        keys = [k for k in ("x_mm", "z_mm", "drop_mm", "height_mm", "trail_mm") if k in one]
        if name == "back_angle":
            continue
        if name in ("fork", "back_height"):
            keys = [k for k in keys if k not in ("x_mm", "z_mm")]
        if name == "caster_housing":
            keys = ["z_mm"]
        assert apart == pytest.approx(hypot(*(one[k] - other[k] for k in keys)), abs=0.02 * scale)


@pytest.mark.parametrize("name", sorted(PLACED))
def test_buttons_do_not_lie_on_each_other_and_say_what_they_are(name: str) -> None:
    picture = _holes(opened("avg-001"), name)
    spots = picture.spots
    for at, one in enumerate(spots):
        assert 0.0 <= one.left <= one.left + one.size <= picture.width
        for other in spots[at + 1 :]:
            assert max(abs(one.x - other.x), abs(one.y - other.y)) >= one.size
    (chosen,) = [spot for spot in spots if spot.standing == "chosen"]
    assert chosen.label.endswith("now chosen")
    for spot in spots:
        assert spot.code in spot.label
        assert (spot.reason in spot.label) and bool(spot.reason) == (spot.standing == "refused")


def test_a_hole_is_named_by_where_it_lies() -> None:
    labels = [spot.label for spot in _holes(opened("avg-001"), "axle_hole").spots]
    numbers = opened("avg-001").bench.line.choices["axle_hole"].options[3].numbers
    assert (numbers["x_mm"], numbers["z_mm"]) == (-45.0, -116.0)
    assert "axle hole A4, 45 mm behind, 116 mm below, free" in labels


def test_inches_where_the_client_is_measured_in_inches() -> None:
    state = opened("avg-001")
    found = hole_picture(state, choice_shown(state, "axle_hole", table_of(state)), "in")
    if found is None:
        raise AssertionError
    assert "axle hole A4, 1 3/4 in behind, 4 5/8 in below, free" in [s.label for s in found.spots]
