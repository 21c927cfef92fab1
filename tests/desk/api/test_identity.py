"""Who a client is, over the API: read and put under the rules of the pages."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest
from django.utils import timezone

from chairwright_desk.audit.models import Entry
from chairwright_desk.clients.models import Identity

from ..kit.world import BORN, DIAGNOSIS, NAME, WHO, World
from .samples import ADA
from .test_calls import Caller


def path(world: World) -> str:
    return f"clients/{world.client.pk}/identity"


def test_it_is_read_put_and_emptied(world: World) -> None:
    call = Caller(world, "specialist")
    told = call("GET", path(world)).json()
    changed = told.pop("changed_at")
    assert changed
    held = {"name": NAME, "born": str(BORN), "diagnosis": DIAGNOSIS, "revision": 1}
    assert told == held
    saved = call("PUT", path(world), {**ADA, "revision": 1}).json()
    assert (saved["name"], saved["born"], saved["revision"]) == ("Ada", "1960-05-06", 2)
    empty = {"name": "", "born": None, "diagnosis": "", "revision": 2}
    assert call("PUT", path(world), empty).json()["revision"] == 3
    row = Identity.objects.get(client=world.client)
    assert (row.name, row.born, row.diagnosis) == ("", None, "")


def test_a_client_of_whom_nothing_is_known_begins_with_revision_0(world: World) -> None:
    client, call = world.add_client("NEW-1"), Caller(world)
    there = f"clients/{client.pk}/identity"
    nothing = {"name": "", "born": None, "diagnosis": "", "revision": 0, "changed_at": None}
    assert call("GET", there).json() == nothing
    assert not Identity.objects.filter(client=client).exists()
    assert call("PUT", there, {**ADA, "revision": 0}).json()["revision"] == 1
    assert call("PUT", there, {**ADA, "revision": 0}).status_code == 409


def test_the_second_of_two_is_told_both_versions(world: World) -> None:
    call = Caller(world)
    call("PUT", path(world), {**ADA, "revision": 1})
    late = call("PUT", path(world), {**ADA, "name": "Eva", "revision": 1})
    assert late.status_code == 409
    assert late.json()["saved"]["name"] == "Ada"
    assert late.json()["yours"] == {**ADA, "name": "Eva", "revision": 1}


@pytest.mark.parametrize(
    "wrong",
    [
        {"name": "x" * 121}, {"name": "two\nlines"}, {"born": "1899-12-31"}, {"born": "yesterday"},
        {"born": ""}, {"diagnosis": "x" * 2001}, {"diagnosis": None}, {"diagnosis": "a\0"},
    ],
    ids=str,
)  # fmt: skip
def test_what_cannot_be_is_refused_by_name(world: World, wrong: dict[str, Any]) -> None:
    answer = Caller(world)("PUT", path(world), {**ADA, **wrong, "revision": 1})
    assert answer.status_code == 422
    assert [each["where"].partition(".")[0] for each in answer.json()["problems"]] == [*wrong]


def test_a_birth_to_come_and_a_part_left_out_are_refused(world: World) -> None:
    call, tomorrow = Caller(world), timezone.localdate() + timedelta(days=1)
    late = call("PUT", path(world), {**ADA, "born": str(tomorrow), "revision": 1})
    assert [each["where"] for each in late.json()["problems"]] == ["born"]
    for name in ADA:
        sent = {each: value for each, value in ADA.items() if each != name}
        answer = call("PUT", path(world), {**sent, "revision": 1})
        assert [each["where"] for each in answer.json()["problems"]] == [name]
    assert Identity.objects.get(client=world.client).revision == 1


def test_the_trail_names_the_call_like_the_page_without_a_value(world: World) -> None:
    call = Caller(world)
    call("GET", path(world))
    call("PUT", path(world), {**ADA, "name": NAME, "revision": 1})
    lines = [(each.kind, each.fields) for each in Entry.objects.order_by("id")]
    assert lines == [("read", ["identity"]), ("change", ["born", "diagnosis"])]
    told = str(list(Entry.objects.values()))
    assert [words for words in (*WHO, *ADA.values()) if words and words in told] == []


def test_a_builder_learns_nothing_from_the_search(world: World) -> None:
    for role in ("builder", "clinician"):
        found = Caller(world, role)("POST", "clients/search", {"holds": "Nachtigall"}).json()
        assert found["clients"] == [], "the call searches references only"
