"""The trail: what stands in it, and that it stays."""

from __future__ import annotations

import pytest
from django.db import DatabaseError, connection, transaction

from chairwright_desk.audit.models import Entry, Kept

from ..kit.world import World


def lines() -> list[tuple[str, str, list[str]]]:
    found = Entry.objects.order_by("id")
    return [(each.kind, each.record, each.fields) for each in found]


def test_opening_and_changing_a_client_is_noted_with_names_of_fields_only(world: World) -> None:
    visitor, client = world.visitor("clinician"), world.client
    visitor.get(f"/clients/{client.pk}/")
    visitor.get(f"/clients/{client.pk}/")
    fields = {"reference": "AVG-001", "keep_until": "2033-05-04", "revision": "1"}
    visitor.post(f"/clients/{client.pk}/change/", fields)
    assert lines() == [("read", client.pk, []), ("change", client.pk, ["keep_until"])]
    change = Entry.objects.get(kind="change")
    assert (change.who, change.team) == (world.people["clinician"].pk, world.team.pk)
    assert "2033" not in str(Entry.objects.values())


def test_a_change_that_fails_leaves_no_line(world: World) -> None:
    fields = {"reference": "AVG-001", "keep_until": "2033-05-04", "revision": "7"}
    world.visitor("clinician").post(f"/clients/{world.client.pk}/change/", fields)
    assert lines() == []


def test_a_line_is_neither_changed_nor_taken_away(world: World) -> None:
    line = Entry.objects.create(kind="read", record="x")
    line.kind = "export"
    with pytest.raises(Kept):
        line.save()
    with pytest.raises(Kept):
        line.delete()


@pytest.mark.parametrize(
    "statement", ["UPDATE audit_entry SET kind = 'export'", "DELETE FROM audit_entry"]
)
def test_the_database_refuses_as_well(statement: str, world: World) -> None:
    Entry.objects.create(kind="read", record="x")
    with (
        pytest.raises(DatabaseError, match="the trail cannot be changed"),
        transaction.atomic(),
        connection.cursor() as cursor,
    ):
        cursor.execute(statement)
    assert Entry.objects.get().kind == "read"


def test_removing_many_at_once_is_refused(world: World) -> None:
    Entry.objects.create(kind="read", record="x")
    with pytest.raises(DatabaseError, match="the trail"), transaction.atomic():
        Entry.objects.all().delete()
