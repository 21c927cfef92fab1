"""Keeping what a file holds as the records that the pages keep."""

from __future__ import annotations

from typing import Any

from chairwright_desk.api import faults
from chairwright_desk.api.faults import Wrong
from chairwright_desk.api.operations import Call
from chairwright_desk.audit.trail import note_change, note_removal
from chairwright_desk.base.revised import save_revised
from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.kept import forget_record
from chairwright_desk.measures.bridge.brought import brought_in
from chairwright_desk.measures.views_more import take_set
from chairwright_desk.surroundings.bridge.brought import places_brought
from chairwright_desk.surroundings.models import Helpers, Spot
from chairwright_desk.surroundings.views import MOST_PLACES


def _refuse(troubles: tuple[str, ...] | list[str]) -> None:
    if troubles:
        remedy = "Mend it and send it again."
        raise faults.not_good(*(Wrong("file", each, "", remedy) for each in troubles))


def put_set(call: Call, client: Client, text: str) -> None:
    """Add a set of measures, with what else a client file holds where nothing is known yet.

    Parameters
    ----------
    call : Call
    client : Client
    text : str
        Of a client file.
    """
    found = brought_in(text.encode())
    _refuse(found.troubles)
    take_set(call.request, client, found)


def put_places(call: Call, client: Client, text: str) -> None:
    """Make the places those of a file.

    Parameters
    ----------
    call : Call
    client : Client
    text : str
        Of a places file.
    """
    around, spots, troubles = places_brought(text.encode())
    _refuse(troubles)
    if len(spots) > MOST_PLACES:
        must = f"must hold at most {MOST_PLACES} places"
        raise faults.not_good(Wrong("file", must, f"{len(spots)} places", "Send fewer."))
    _keep_helpers(call, client, around)
    here = {spot.name: spot for spot in Spot.objects.filter(client=client)}
    for kind, name, fields in spots:
        _keep_spot(
            call, client, here.pop(name, None), {"kind": kind, "name": name, "fields": fields}
        )
    for spot in here.values():
        note_removal(call.request, spot)
        forget_record(spot.pk)
        spot.delete()


def _keep_helpers(call: Call, client: Client, around: dict[str, str]) -> None:
    held = Helpers.objects.filter(client=client).first()
    if held is None:
        made = Helpers.objects.create(client=client, fields=around, changed_by=call.request.user)
        note_change(call.request, made, around)
    elif held.fields != around:
        save_revised(call.request, held, held.revision, {"fields": around})


def _keep_spot(call: Call, client: Client, held: Spot | None, values: dict[str, Any]) -> None:
    if held is None:
        made = Spot.objects.create(client=client, changed_by=call.request.user, **values)
        note_change(call.request, made, ["name", *values["fields"]])
    elif (held.kind, held.fields) != (values["kind"], values["fields"]):
        save_revised(call.request, held, held.revision, values)
