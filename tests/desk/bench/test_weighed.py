"""A client who was weighed: cautions beside figures say so, with the day, on every page."""

from __future__ import annotations

import pytest

from chairwright_desk.bench.bridge import change
from chairwright_desk.bench.models import Setup

from ..kit.world import World
from ..standing.chair_now import weighing
from .examples import opened
from .made import address, setup_of

MEASURED = "Centre of mass measured on the scales (2026-11-25)"
ESTIMATE = "The centre of mass is an estimate"
LEANING = "Angles are for sitting still on a firm slope."


def _told(world: World, setup: Setup, view: str, *more: str) -> str:
    answer = world.visitor("clinician").get(address(setup, view, *more))
    return answer.content.decode()


def _page(world: World, name: str) -> str:
    return _told(world, setup_of(world), name, *(["axle_hole"] if name == "try" else []))


@pytest.mark.parametrize("name", ["show", "try", "why"])
def test_the_caution_says_what_the_scales_said(world: World, name: str) -> None:
    held = weighing(world)
    setup = setup_of(world)
    ahead = change(opened("avg-001"), "axle_hole", "F4")  # tips back too soon
    setup.codes = ahead.codes
    setup.save()
    before = _page(world, name)
    assert ESTIMATE in before
    assert LEANING in before
    type(held).objects.update(in_use=True)
    after = _page(world, name)
    assert MEASURED in after
    assert LEANING in after
    assert ESTIMATE not in after
