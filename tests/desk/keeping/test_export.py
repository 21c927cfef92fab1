"""The export holds everything, and says what it left the desk as."""

from __future__ import annotations

import io
import json
import zipfile

from chairwright_desk.audit.models import Entry
from chairwright_desk.drafts.models import Draft
from chairwright_desk.keeping.held import rows_of

from ..kit.world import BORN, DIAGNOSIS, NAME, World
from .filled import BYTES, PLANT, address, empty_kinds, fill


def test_the_zip_holds_every_record_of_the_client(world: World) -> None:
    client = fill(world)
    assert empty_kinds(client) == [], "fill() must put one of every kind into the file"
    other = world.add_client("OTHER-9")
    answer = world.visitor("clinician").post(address("export", client))
    assert answer.headers["Content-Type"] == "application/zip"
    assert PLANT not in answer.headers["Content-Disposition"]
    with zipfile.ZipFile(io.BytesIO(answer.content)) as file:
        held = {name: file.read(name) for name in file.namelist()}
    for kind, rows in rows_of(client).items():
        told = json.loads(held[f"records/{kind._meta.label_lower}.json"])
        name = kind._meta.pk.attname
        assert {row[name] for row in told} == set(rows.values_list("pk", flat=True)), kind
        fields = {field.attname for field in kind._meta.concrete_fields}
        assert all(row.keys() == fields for row in told)
    assert BYTES in held.values()
    assert held["client.yaml"].startswith(b"format: chairwright client 1")
    for label in ("jobs.job", "drafts.draft", "audit.entry"):
        assert json.loads(held[f"records/{label}.json"])
    assert not any(other.pk.encode() in content for content in held.values())
    assert Entry.objects.filter(kind="export", record=client.pk).get().fields == [
        "everything", "identity",
    ]  # fmt: skip


def test_the_same_file_is_the_same_zip_but_for_the_trail(world: World) -> None:
    from chairwright_desk.keeping.export import zipped

    client = fill(world)
    reader = world.people["clinician"]
    assert zipped(client, reader) == zipped(client, reader)


def taken_out(world: World, role: str) -> dict[str, str]:
    answer = world.visitor(role).post(address("export", world.client))
    with zipfile.ZipFile(io.BytesIO(answer.content)) as file:
        return {name: file.read(name).decode() for name in file.namelist()}


def test_who_the_client_is_comes_with_it(world: World) -> None:
    (told,) = json.loads(taken_out(world, "specialist")["records/clients.identity.json"])
    assert (told["name"], told["born"], told["diagnosis"]) == (NAME, str(BORN), DIAGNOSIS)


def test_drafts_of_others_stay_theirs(world: World) -> None:
    key = f"clients.identity:{world.client.pk}"
    for role in ("clinician", "specialist"):
        Draft.objects.create(user=world.people[role], form_key=key, fields={"name": [role * 2]})
    held = taken_out(world, "specialist")
    (told,) = json.loads(held["records/drafts.draft.json"])
    assert told["fields"] == {"name": ["specialist" * 2]}
    assert "1 draft left out" in held["READ ME.txt"]
    assert not any("clinician" * 2 in text for text in held.values())
