"""Measured chairs: verdicts as the command line has them, slips named, a set-up beside."""

from __future__ import annotations

from typing import Any

import pytest
from django.urls import reverse

from chairwright_desk.audit.models import Entry
from chairwright_desk.chair_now.models import MeasuredChair

from ..kit.world import World
from ..orders.made import text_of
from ..standing.bench import made
from ..standing.chair_now import chair, measures


def _enter(world: World, **more: Any) -> Any:
    made(world)
    fields = {**measures(), "name": "the old chair", "measured_on": "2026-11-25", "revision": 0}
    address = reverse("chair_now:measure", args=[world.client.pk])
    return world.visitor("clinician").post(address, {**fields, **more})


def test_a_chair_is_kept_and_judged(world: World) -> None:
    answer = _enter(world)
    told = world.visitor("reader").get(answer["Location"]).content.decode()
    assert "The measures fit each other" in told
    assert "Seat width" in told
    line = told.partition('class="verdict-line"')[2].partition("</p>")[0]
    assert "seat width" in line.partition("Not known")[0]
    assert "anti-tip device" in line.partition("Not known")[2]  # nobody measured one


def test_a_slipped_digit_is_named_at_its_field(world: World) -> None:
    answer = _enter(world, wheelbase="481 mm")  # 418 with two digits exchanged
    assert answer.status_code == 200
    assert not MeasuredChair.objects.exists()
    assert "418 mm would fit the others" in answer.context["form"].errors["wheelbase"][0]
    assert _enter(world, wheelbase="481 mm", as_it_is="on").status_code == 302
    kept = MeasuredChair.objects.get()
    shown = reverse("chair_now:measured", args=[world.client.pk, kept.pk])
    assert "do not fit each other" in world.visitor("reader").get(shown).content.decode()


@pytest.mark.parametrize(("field", "typed"), [("seat_depth", ""), ("camber", "x"),
                                              ("wheelbase", "-5")])  # fmt: skip
def test_what_cannot_be_meant_stands_beside_its_field(world: World, field: str, typed: str) -> None:
    answer = _enter(world, **{field: typed})
    assert answer.status_code == 200
    assert answer.context["form"].errors[field]


def test_what_the_client_would_gain(world: World) -> None:
    old, setup = chair(world), made(world)
    address = reverse("chair_now:measured", args=[world.client.pk, old.pk])
    told = world.visitor("clinician").get(address, {"beside": setup.pk}).content.decode()
    assert "<h4>Gains</h4>" in told
    assert world.visitor("clinician").get(address, {"beside": "nobody"}).status_code == 404


def test_the_sheet_says_the_same_and_what_is_gained(world: World) -> None:
    old, setup = chair(world), made(world)
    key, visitor = [world.client.pk, old.pk], world.visitor("reader")
    address = reverse("chair_now:measured-sheet", args=key)
    shown = reverse("chair_now:measured", args=key)
    assert address in visitor.get(shown).content.decode()
    beside = f"{address}?beside={setup.pk}"
    assert beside in visitor.get(shown, {"beside": setup.pk}).content.decode()
    alone, both = (text_of(visitor.get(each).content) for each in (address, beside))
    assert "Seat width 457 mm" in alone  # 18 in
    gain = f"What this client would gain from {setup.name}"
    assert gain in both
    assert gain not in alone
    assert Entry.objects.filter(kind="export", record=old.pk).count() == 2
    assert visitor.get(address, {"beside": "nobody"}).status_code == 404
