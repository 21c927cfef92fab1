"""A client with something in every app, under a word that can be searched for."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any

from django.db import models
from django.urls import reverse

from chairwright_desk.accounts.models import Team, User
from chairwright_desk.clients.models import Client, Identity
from chairwright_desk.drafts.models import Draft
from chairwright_desk.jobs.models import Job
from chairwright_desk.keeping.graph import holders
from chairwright_desk.keeping.held import rows_of
from chairwright_desk.surroundings.models import Spot

from ..kit.world import World
from ..standing.orders import made as made_order

PLANT = "Zwetschgenbaum"
"""A word that stands in no program: wherever it is found, it came from the client."""
BYTES = b"\x89PNG" + PLANT.encode() * 3
NOW = datetime(2026, 11, 25, 12, tzinfo=UTC)


def fill(world: World) -> Client:
    """Put something of every kind into the file of AVG-001, also of kinds that come later."""
    order, client = made_order(world), world.client
    Identity.objects.filter(client=client).update(name=PLANT, diagnosis=PLANT)
    Client.objects.filter(pk=client.pk).update(reference=PLANT)
    client.refresh_from_db()
    person = world.people["clinician"]
    for kind in holders():
        if not rows_of(client)[kind].exists():
            kind._default_manager.create(**_values(kind, client, person))
    Job.objects.create(
        kind="bench.trade", words=PLANT, owner=person, team=world.team,
        record=str(order.pk), result={"told": PLANT},
    )  # fmt: skip
    Draft.objects.create(user=person, form_key=f"notes.new:{client.pk}", fields={"text": [PLANT]})
    return client


def _values(kind: type[models.Model], client: Client, person: User) -> dict[str, Any]:
    """Something for every field, with the word wherever it can stand."""
    fields = [f for f in kind._meta.concrete_fields if not f.primary_key]
    return {field.name: _value(field, client, person) for field in fields}


def _value(field: models.Field[Any, Any], client: Client, person: User) -> Any:
    if isinstance(field, models.ForeignKey):
        return _linked(field, client, person)
    if field.model is Spot and field.name == "kind":
        return "ramp"
    if isinstance(field, models.CharField | models.TextField):
        return PLANT[: field.max_length]
    if isinstance(field, models.JSONField):
        return {"told": PLANT}
    if isinstance(field, models.DateField):
        return NOW if isinstance(field, models.DateTimeField) else NOW.date()
    return BYTES if isinstance(field, models.BinaryField) else 1


def _linked(field: Any, client: Client, person: User) -> Any:
    target = field.related_model
    if target in (User, Team):
        return person if target is User else client.team
    return rows_of(client)[target].first()


def empty_kinds(client: Client) -> list[str]:
    """Kinds of records that belong to clients, of which this one has none."""
    rows = rows_of(client)
    return [kind._meta.label_lower for kind, found in rows.items() if not found.exists()]


def address(view: str, client: Client) -> str:
    return reverse(f"keeping:{view}", args=[client.pk])
