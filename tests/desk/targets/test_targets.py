"""Targets: a change asks why, counts in the client file, is shown, and can be put back."""

from __future__ import annotations

from itertools import groupby
from typing import Any

from django.urls import reverse
from django.utils.html import escape

from chairwright.files.client import read_client
from chairwright.person.estimates import complete
from chairwright.reading import FileText
from chairwright.targets.build import targets_for
from chairwright_desk.measures.models import Measuring
from chairwright_desk.measures.texts import client_text
from chairwright_desk.surroundings.texts import places_text
from chairwright_desk.targets.bridge import listing
from chairwright_desk.targets.models import OwnTarget, TargetChange

from ..kit.world import World
from ..standing import measures, surroundings
from ..standing.measures import BODY
from ..standing.targets import made


def post(world: World, view: str, data: dict[str, Any], *more: str) -> Any:
    address = reverse(f"targets:{view}", args=[world.client.pk, *more])
    return world.visitor("clinician").post(address, {"alone": "mm", **data})


def page(world: World, role: str = "clinician") -> str:
    address = reverse("targets:show", args=[world.client.pk])
    return str(world.visitor(role).get(address).content.decode())


def counted(world: World, figure: str, *, must: bool) -> Any:
    client = read_client(FileText("client", str(client_text(world.client))))
    every = targets_for(client, complete(client))
    return next(each for each in every if (each.figure, each.must) == (figure, must))


def test_a_changed_target_counts_and_is_put_back(world: World) -> None:
    measures.made(world)
    before = counted(world, "overall_width_mm", must=True)
    data = {"at_most": "25 1/2 in", "reason": "the office door"}
    assert post(world, "change", data, "overall_width_mm", "must").status_code == 302
    now = counted(world, "overall_width_mm", must=True)
    assert now.high == 647.7
    assert now.reason == "the office door"
    told = page(world)
    assert "Changed by Clinician" in told
    assert "The rules ask" in told
    own = OwnTarget.objects.get()
    assert post(world, "back", {}, own.pk).status_code == 302
    assert counted(world, "overall_width_mm", must=True) == before
    assert [each.reason for each in TargetChange.objects.all()] == ["", "the office door"]


def test_a_change_without_a_reason_is_refused_and_kept_in_the_form(world: World) -> None:
    measures.made(world)
    answer = post(world, "change", {"at_most": "640", "reason": " "}, "overall_width_mm", "must")
    assert answer.status_code == 200
    assert 'value="640"' in answer.content.decode()
    assert not OwnTarget.objects.exists()


def test_an_end_as_the_rule_has_it_stays_the_rules(world: World) -> None:
    measures.made(world)
    address = reverse("targets:change", args=[world.client.pk, "seat_width_mm", "must"])
    form = world.visitor("clinician").get(address).context["form"]
    data = {name: form[name].value() for name in ("at_least", "at_most")}
    same = post(world, "change", {**data, "reason": "none"}, "seat_width_mm", "must")
    assert "Nothing differs" in same.content.decode()
    data["at_most"] = "420"
    assert (
        post(world, "change", {**data, "reason": "x"}, "seat_width_mm", "must").status_code == 302
    )
    own = OwnTarget.objects.get()
    assert (own.at_least, own.at_most) == ("", "420 mm")


def test_only_the_weight_of_a_wish_may_be_changed(world: World) -> None:
    measures.made(world)
    address = reverse("targets:change", args=[world.client.pk, "chair_mass_kg", "wish"])
    form = world.visitor("clinician").get(address).context["form"]
    data = {name: form[name].value() for name in ("at_least", "at_most")}
    answer = post(world, "change", {**data, "weight": "3", "reason": "x"}, "chair_mass_kg", "wish")
    assert answer.status_code == 302
    assert counted(world, "chair_mass_kg", must=False).weight == 3.0
    assert "weights:" in str(client_text(world.client))


def test_what_cannot_be_meant_is_said_at_its_field(world: World) -> None:
    measures.made(world)
    for data, field in (
        ({"at_least": "700", "at_most": "600"}, "at_least"),
        ({"at_most": "wide"}, "at_most"),
    ):
        answer = post(world, "change", {**data, "reason": "x"}, "overall_width_mm", "must")
        assert f'id="id_{field}_error"' in answer.content.decode(), data
    bad = post(
        world, "change", {"at_most": "13", "weight": "much", "reason": "x"}, "chair_mass_kg", "wish"
    )
    assert 'id="id_weight_error"' in bad.content.decode()
    assert not OwnTarget.objects.exists()


def test_a_place_that_asks_is_named(world: World) -> None:
    surroundings.made(world)
    measures.made(world)
    told = page(world, "builder")
    assert "place: <a" in told
    assert "from the hallway to the bedroom" in told
    assert ">Change<" not in told


def test_other_rules_count_with_their_reason(world: World) -> None:
    measures.made(world)
    assert (
        post(world, "rules", {"rule_set": "propulsion", "reason": "pushes far"}).status_code == 302
    )
    assert 'rule_set: "propulsion"' in str(client_text(world.client))
    assert "pushes far" in page(world)


def test_own_targets_are_seen_and_can_be_put_back_while_no_list_can_be_made(world: World) -> None:
    OwnTarget.objects.create(client=world.client, figure="overall_width_mm", must=True,
                             at_least="9 m", at_most="1 m", reason="x")  # fmt: skip
    Measuring.objects.create(client=world.client, fields=BODY)
    told = page(world)
    assert "must not be above" in told
    assert "Put back" in told


def test_all_that_is_asked_of_one_figure_stands_together(world: World) -> None:
    measures.made(world)
    surroundings.made(world)
    text, places = str(client_text(world.client)), str(places_text(world.client))
    for group in listing(text, places, "mm").groups:
        figures = [each.figure for each in group.asked]
        assert len(list(groupby(figures))) == len(set(figures)), group.words
    told = page(world)
    assert told.count('class="label">Seat width<') == 1
    assert told.count('class="why"') == told.count('class="ask"') == told.count("<summary>Why<")
    assert "Add a target" in told


def test_every_reason_stands_with_its_range_and_source(world: World) -> None:
    target = made(world)
    text, places = str(client_text(world.client)), str(places_text(world.client))
    told = page(world)
    whole = listing(text, places, "mm").groups
    every = [each for group in whole for each in group.asked if each.figure != target.figure]
    assert len(every) > 40
    for each in every:
        assert f"<b>{each.ends.words}, {each.kind}:</b> {escape(each.reason)}" in told, each.label
        assert f"Source: {escape(each.source)}<" in told, each.label
    assert "The rules ask at most 700 mm" in told
