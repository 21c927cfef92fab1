"""Who a client is: entered, changed, emptied and searched by those who may; noted in the trail."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import pytest
from django.utils import timezone

from chairwright_desk.accounts.models import Membership
from chairwright_desk.accounts.roles import Role
from chairwright_desk.audit.models import Entry
from chairwright_desk.clients.models import Client, Identity
from chairwright_desk.drafts.models import Draft

from ..keeping.test_removal import stored
from ..kit.world import BORN, DIAGNOSIS, NAME, WHO, World

ADA = {"name": "Ada Pflaume", "born": "1960-05-06", "diagnosis": "left-sided weakness"}
EMPTY = {"name": "", "born": "", "diagnosis": ""}


def page(client: Client) -> str:
    return f"/clients/{client.pk}/who/"


def change(client: Client) -> str:
    return f"/clients/{client.pk}/who/change/"


def saved(client: Client) -> tuple[Any, ...]:
    held = Identity.objects.get(client=client)
    return held.name, held.born, held.diagnosis, held.revision


def trail() -> list[tuple[str, str, list[str]]]:
    found = Entry.objects.order_by("id")
    return [(each.kind, each.record_kind, each.fields) for each in found]


def test_it_is_entered_changed_and_seen(world: World) -> None:
    client, visitor = world.add_client("NEW-1"), world.visitor("specialist")
    assert visitor.get(page(client)).content.decode().count("not entered") == 3
    assert visitor.post(change(client), {**ADA, "revision": 0}).status_code == 302
    assert saved(client) == ("Ada Pflaume", date(1960, 5, 6), "left-sided weakness", 1)
    told = visitor.get(page(client)).content.decode()
    for words in ("Ada Pflaume", "6 May 1960", "left-sided weakness"):
        assert words in told
    visitor.post(change(client), {**ADA, "born": "", "revision": 1})
    assert saved(client) == ("Ada Pflaume", None, "left-sided weakness", 2)


@pytest.mark.parametrize("only", ["name", "born", "diagnosis"])
def test_each_may_stand_alone(world: World, only: str) -> None:
    client = world.add_client("NEW-1")
    fields = {**EMPTY, only: ADA[only], "revision": 0}
    assert world.visitor("clinician").post(change(client), fields).status_code == 302
    assert [bool(each) for each in saved(client)[:3]] == [n == only for n in EMPTY]


def test_a_reader_sees_it_and_changes_nothing(world: World) -> None:
    visitor = world.visitor("reader")
    told = visitor.get(page(world.client)).content.decode()
    assert NAME in told
    assert DIAGNOSIS in told
    assert change(world.client) not in told
    assert visitor.post(change(world.client), {**ADA, "revision": 1}).status_code == 403
    assert saved(world.client) == (NAME, BORN, DIAGNOSIS, 1)


def test_the_part_of_the_file_is_offered_to_those_who_may_open_it(world: World) -> None:
    for role in ("clinician", "specialist", "reader", "builder"):
        told = world.visitor(role).get(f"/clients/{world.client.pk}/").content.decode()
        assert (page(world.client) in told) is (role != "builder"), role


@pytest.mark.parametrize("born", ["1899-12-31", "3000-01-01", "tomorrow", "not a day"])
def test_a_birth_that_cannot_be_is_refused_and_nothing_is_saved(world: World, born: str) -> None:
    day = str(timezone.localdate() + timedelta(days=1)) if born == "tomorrow" else born
    fields = {**ADA, "born": day, "revision": 1}
    assert world.visitor("clinician").post(change(world.client), fields).status_code == 200
    assert saved(world.client) == (NAME, BORN, DIAGNOSIS, 1)


def test_ends_of_lines_alone_are_no_change(world: World) -> None:
    visitor, fields = world.visitor("clinician"), {**ADA, "diagnosis": "one\r\ntwo"}
    visitor.post(change(world.client), {**fields, "revision": 1})
    assert saved(world.client)[2] == "one\ntwo"
    visitor.post(change(world.client), {**fields, "name": "Ada", "revision": 2})
    assert Entry.objects.filter(kind="change").latest("id").fields == ["name"]


def test_emptying_takes_what_others_have_typed_with_it(world: World) -> None:
    client, visitor = world.client, world.visitor("clinician")
    key = f"clients.identity:{client.pk}"
    for other_key in (key, f"notes.new:{client.pk}"):
        world.visitor("specialist").post(f"/drafts/{other_key}/", {"name": NAME})
    assert visitor.post(change(client), {**EMPTY, "revision": 1}).status_code == 302
    assert saved(client) == ("", None, "", 2)
    assert [each.form_key for each in Draft.objects.all()] == [f"notes.new:{client.pk}"]


def test_what_was_emptied_is_not_left_in_the_database(live_world: World) -> None:
    client = live_world.client
    assert NAME.encode() in stored()
    live_world.visitor("clinician").post(change(client), {**EMPTY, "revision": 1})
    assert saved(client) == ("", None, "", 2)
    assert NAME.encode() not in stored()
    assert DIAGNOSIS.encode() not in stored()


def test_a_draft_is_its_authors_alone(world: World) -> None:
    key = f"clients.identity:{world.client.pk}"
    mine = world.visitor("clinician")
    mine.post(f"/drafts/{key}/", {**ADA, "revision": 1})
    assert "Ada Pflaume" in mine.get(change(world.client)).content.decode()
    for role in ("specialist", "reader", "builder", "administrator"):
        told = world.visitor(role).get(change(world.client)).content.decode()
        assert not any(words in told for words in ADA.values()), role
    mine.post(change(world.client), {**ADA, "revision": 1})
    assert not Draft.objects.exists()


def test_the_trail_says_who_saw_and_changed_it_without_a_value(world: World) -> None:
    client, visitor = world.client, world.visitor("clinician")
    visitor.get(page(client))
    visitor.get(page(client))
    visitor.get(change(client))
    visitor.post(change(client), {**ADA, "name": NAME, "revision": 1})
    assert trail() == [
        ("read", "clients.client", ["identity"]),
        ("change", "clients.identity", ["born", "diagnosis"]),
    ]
    assert {each.team for each in Entry.objects.all()} == {world.team.pk}
    told = str(list(Entry.objects.values()))
    told += world.visitor("administrator").get("/trail/").content.decode()
    assert [words for words in (*WHO, *ADA.values()) if words in told] == []


def test_of_two_who_enter_it_first_the_second_sees_both_versions(world: World) -> None:
    client = world.add_client("NEW-1")
    world.visitor("specialist").post(change(client), {**ADA, "revision": 0})
    late = world.visitor("clinician").post(change(client), {**ADA, "name": "Eva", "revision": 0})
    assert late.status_code == 409
    assert "Ada Pflaume" in late.content.decode()
    assert "Eva" in late.content.decode()
    assert saved(client)[0] == "Ada Pflaume"
    again = world.visitor("clinician").post(change(client), {**ADA, "name": "Eva", "revision": 1})
    assert again.status_code == 302
    assert saved(client)[0] == "Eva"


def found(visitor: Any, words: str) -> list[str]:
    told = visitor.post("/clients/", {"search": words}).content.decode()
    return [each.reference for each in Client.objects.all() if f"/clients/{each.pk}/" in told]


def test_a_client_is_found_by_name_by_those_who_see_names(world: World) -> None:
    world.add_client("TAL-002")
    for role in ("clinician", "specialist", "reader"):
        assert found(world.visitor(role), "nachti") == ["AVG-001"], role
    assert found(world.visitor("builder"), "nachti") == []
    assert found(world.visitor("builder"), "avg") == ["AVG-001"]
    assert found(world.visitor("clinician"), "na") == []
    assert found(world.visitor("clinician"), "tal-0") == ["TAL-002"]
    assert found(world.visitor("clinician"), "nach\0ti") == ["AVG-001"]
    assert "or name" not in world.visitor("builder").get("/clients/").content.decode()


def test_a_name_that_was_found_stands_in_the_trail_as_read(world: World) -> None:
    found(world.visitor("reader"), "nachti")
    found(world.visitor("builder"), "nachti")
    found(world.visitor("clinician"), "avg")
    assert trail() == [("read", "clients.client", ["name"])]
    assert Entry.objects.get().who == world.people["reader"].pk


def test_a_builder_who_is_a_clinician_elsewhere_finds_names_only_there(world: World) -> None:
    there = world.add_client("SOUTH-1", world.other)
    Identity.objects.create(client=there, name="Nachtigall, Otto")
    both = world.people["builder"]
    Membership.objects.create(user=both, team=world.other, role=Role.CLINICIAN)
    visitor = world.visitor("builder")
    assert found(visitor, "nachti") == ["SOUTH-1"]
    assert visitor.get(page(there)).status_code == 200
    assert visitor.get(page(world.client)).status_code == 403
    file = visitor.get(f"/clients/{world.client.pk}/").content.decode()
    assert page(world.client) not in file
