"""The export holds everything, and says what it left the desk as."""

from __future__ import annotations

import io
import json
import zipfile

from chairwright_desk.audit.models import Entry
from chairwright_desk.keeping.held import rows_of

from ..kit.world import World
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
    assert Entry.objects.filter(kind="export", record=client.pk).get().fields == ["everything"]


def test_the_same_file_is_the_same_zip_but_for_the_trail(world: World) -> None:
    from chairwright_desk.keeping.export import zipped

    client = fill(world)
    assert zipped(client) == zipped(client)
