"""After a removal nothing of the client is left but lines of the trail without values."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from django.apps import apps
from django.core.serializers import serialize
from django.db import connection, models

from chairwright_desk.audit.models import Entry
from chairwright_desk.clients.models import Client, Identity
from chairwright_desk.drafts.models import Draft
from chairwright_desk.keeping.graph import APART, LOOSE, holders, models_of_the_desk, troubles

from ..kit.world import World
from .filled import PLANT, address, empty_kinds, fill


def everything() -> str:
    """Every row of every table of the desk, as text."""
    every: list[Any] = [*models_of_the_desk()]
    told = "".join(serialize("json", kind._default_manager.order_by("pk")) for kind in every)
    bytes_held = apps.get_model("notes", "PictureBytes")._default_manager.values_list("content")
    return told + "".join(bytes(row[0]).decode("latin-1") for row in bytes_held)


def test_everything_goes_and_the_trail_stays_without_values(world: World) -> None:
    client = fill(world)
    assert empty_kinds(client) == []
    key = client.pk
    assert PLANT in everything()
    answer = world.visitor("clinician").post(address("remove", client), {"reference": PLANT})
    assert answer.status_code == 302
    assert PLANT not in everything()
    for kind in holders():
        assert not kind._default_manager.exists(), kind
    line = Entry.objects.get(kind="removal", record=key)
    assert "clients.identity" in line.fields


def test_what_anybody_has_typed_of_who_it_is_goes_too(world: World) -> None:
    key = f"clients.identity:{world.client.pk}"
    for role in ("clinician", "specialist"):
        Draft.objects.create(user=world.people[role], form_key=key, fields={"name": [PLANT]})
    reference = world.client.reference
    world.visitor("clinician").post(address("remove", world.client), {"reference": reference})
    assert not Draft.objects.exists()
    assert not Identity.objects.exists()


@pytest.mark.parametrize("typed", ["", "AVG", PLANT.lower(), f"{PLANT} x"])
def test_another_reference_removes_nothing(world: World, typed: str) -> None:
    client = fill(world)
    answer = world.visitor("clinician").post(address("remove", client), {"reference": typed})
    assert answer.status_code == 200
    assert Client.objects.filter(pk=client.pk).exists()
    assert empty_kinds(client) == []


def test_other_clients_stay(world: World) -> None:
    other, client = world.add_client("TAL-002"), fill(world)
    world.visitor("clinician").post(address("remove", client), {"reference": PLANT})
    assert Client.objects.filter(pk=other.pk).exists()


def test_every_model_belongs_to_a_client_or_says_why_not() -> None:
    assert troubles() == []
    labels = {kind._meta.label_lower for kind in models_of_the_desk()}
    assert set(LOOSE) | set(APART) <= labels, "named here, but there is no such model any more"


@pytest.fixture
def planted() -> Any:
    """Make a model in an app of the desk, gone after the test."""
    made: list[type[models.Model]] = []

    def plant(**fields: Any) -> type[models.Model]:
        meta = type("Meta", (), {"app_label": "keeping"})
        inside = {"__module__": "chairwright_desk.keeping.models", "Meta": meta, **fields}
        kind = type(f"Planted{len(made)}", (models.Model,), inside)
        made.append(kind)
        return kind

    yield plant
    for kind in made:
        del apps.all_models["keeping"][kind._meta.model_name or ""]
    apps.clear_cache()


def test_a_model_that_is_added_later_is_found_by_its_link(planted: Any) -> None:
    kind = planted(client=models.ForeignKey(Client, models.CASCADE, related_name="+"))
    deeper = planted(of=models.ForeignKey(kind, models.CASCADE))
    assert holders()[kind] == ("client",)
    assert holders()[deeper] == ("of__client",)
    assert troubles() == []


def test_a_model_without_handling_is_named(planted: Any) -> None:
    loose = planted(record=models.CharField(max_length=16))
    assert any(loose._meta.label_lower in each for each in troubles())


@pytest.mark.parametrize("stays", [models.PROTECT, models.SET_NULL, models.DO_NOTHING])
def test_a_link_that_would_keep_a_record_is_named(planted: Any, stays: Any) -> None:
    kind = planted(client=models.ForeignKey(Client, stays, null=True, related_name="+"))
    assert troubles() == [f"{kind._meta.label_lower}.client: must go with its record"]


def test_a_file_beside_the_database_is_named(planted: Any) -> None:
    kind = planted(client=models.ForeignKey(Client, models.CASCADE), scan=models.FileField())
    assert any("scan" in each for each in troubles() if kind._meta.label_lower in each)


def stored() -> bytes:
    """All that the database holds: SQLite's files byte for byte, PostgreSQL's rows."""
    if connection.vendor == "sqlite":
        file = Path(str(connection.settings_dict["NAME"]))
        files = file, file.with_name(f"{file.name}-wal")
        return b"".join(path.read_bytes() for path in files if path.exists())
    rows = []
    with connection.cursor() as cursor:
        for table in connection.introspection.table_names(cursor):
            cursor.execute(f'SELECT held::text FROM "{table}" held')  # noqa: S608
            rows += [str(row) for (row,) in cursor.fetchall()]
    return "\n".join(rows).encode()


def test_nothing_of_the_client_is_left_in_the_database(live_world: World) -> None:
    client = fill(live_world)

    def found() -> bool:
        return PLANT.encode() in stored()

    assert found()
    live_world.visitor("clinician").post(address("remove", client), {"reference": PLANT})
    assert not Client.objects.filter(pk=client.pk).exists()
    assert not found()
