"""The person who asks, and clients."""

from __future__ import annotations

from typing import Any

from django.core.paginator import Paginator
from django.db import transaction
from django.db.models import QuerySet
from django.http import HttpResponse
from pydantic import BaseModel

from chairwright_desk.accounts.models import Membership
from chairwright_desk.api import faults
from chairwright_desk.api.faults import Wrong
from chairwright_desk.api.operations import Call, operation
from chairwright_desk.api.shapes.clients import (
    ClientChange,
    ClientGiven,
    ClientNew,
    ClientSearch,
    ClientsGiven,
    PersonGiven,
    TeamGiven,
)
from chairwright_desk.audit.trail import note_change, note_read
from chairwright_desk.base.access import find, visible
from chairwright_desk.base.revised import Overtaken, save_revised
from chairwright_desk.clients.models import Client

A_PAGE = 100
TAKEN = "Another client of the team has this reference already."
TAKEN_SO = "Use that client, or send another reference."


@operation("GET", "me", "account.own", "Says who asks, with teams and roles.", gives=PersonGiven)
def me(call: Call) -> BaseModel:
    """Tell the person, and what he or she is in each team."""
    user = call.request.user
    teams: dict[str, TeamGiven] = {}
    rows = Membership.objects.filter(user=user).select_related("team")
    for row in rows.order_by("team__name", "role"):
        team = TeamGiven(id=row.team.pk, name=row.team.name, roles=[])
        teams.setdefault(row.team_id, team).roles.append(row.role)
    return PersonGiven(id=user.pk, shown=user.shown, units=user.units, teams=list(teams.values()))


def told(client: Client) -> ClientGiven:
    """Return a client as it is answered.

    Parameters
    ----------
    client : Client
    """
    return ClientGiven(
        id=client.pk,
        reference=client.reference,
        team=client.team_id,
        created=client.created,
        keep_until=client.keep_until,
        revision=client.revision,
        changed_at=client.changed_at,
    )


def _listed(found: QuerySet[Client], page: int) -> ClientsGiven:
    pages = Paginator(found.order_by("reference", "pk"), A_PAGE)
    rows = pages.page(page).object_list if page <= pages.num_pages else []
    return ClientsGiven(page=page, pages=pages.num_pages, clients=[told(each) for each in rows])


@operation(
    "GET", "clients", "client.see", "Lists the clients of your teams.",
    gives=ClientsGiven, paged=True,
)  # fmt: skip
def clients(call: Call) -> BaseModel:
    """List."""
    return _listed(visible(call.request, Client.objects.all()), call.page)


@operation(
    "POST", "clients/search", "client.see", "Lists the clients whose reference holds a text.",
    takes=ClientSearch, gives=ClientsGiven, changes=False,
)  # fmt: skip
def search_clients(call: Call) -> BaseModel:
    """Search."""
    found = visible(call.request, Client.objects.filter(reference__icontains=call.body.holds))
    return _listed(found, call.body.page)


@operation(
    "POST", "clients", "client.change", "Makes a client.",
    takes=ClientNew, gives=ClientGiven, status=201, faults=(409,),
)  # fmt: skip
def new_client(call: Call) -> BaseModel:
    """Make."""
    body = call.body
    if body.team not in call.request.user.teams_for("client.change"):
        must, remedy = "must be a team in which you may make clients", "See GET /api/me."
        raise faults.not_good(Wrong("team", must, "another id", remedy))
    if Client.objects.filter(team=body.team, reference=body.reference).exists():
        raise faults.in_the_way(TAKEN, TAKEN_SO)
    values = {"reference": body.reference, "keep_until": body.keep_until}
    with transaction.atomic():
        client = Client.objects.create(**values, team_id=body.team, changed_by=call.request.user)
        note_change(call.request, client, [*values, "team"])
    return told(client)


@operation("GET", "clients/{client_id}", "client.see", "Reads a client.", gives=ClientGiven)
def client(call: Call, client_id: str) -> BaseModel:
    """Read."""
    found = find(call.request, Client.objects.all(), client_id)
    note_read(call.request, found)
    return told(found)


@operation(
    "PATCH", "clients/{client_id}", "client.change", "Changes a client.",
    takes=ClientChange, gives=ClientGiven, faults=(409,),
)  # fmt: skip
def change_client(call: Call, client_id: str) -> BaseModel | HttpResponse:
    """Change; when somebody else was faster, both versions."""
    found = find(call.request, Client.objects.all(), client_id)
    values: dict[str, Any] = call.sent
    others = Client.objects.filter(team=found.team_id, reference=values.get("reference"))
    if others.exclude(pk=found.pk).exists():
        raise faults.in_the_way(TAKEN, TAKEN_SO)
    try:
        return told(save_revised(call.request, found, call.body.revision, values))
    except Overtaken as error:
        current = Client.objects.get(pk=error.current.pk)
        yours = call.body.model_dump(mode="json", exclude_unset=True)
        raise faults.overtaken(told(current).model_dump(mode="json"), yours) from None
