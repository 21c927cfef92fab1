"""Who a client is: one call of its own, so that no other answer holds a name."""

from __future__ import annotations

from django.utils import timezone
from pydantic import BaseModel

from chairwright_desk.api import faults
from chairwright_desk.api.faults import Wrong
from chairwright_desk.api.operations import Call, operation
from chairwright_desk.api.shapes.identity import IdentityGiven, IdentityPut
from chairwright_desk.base.access import find
from chairwright_desk.base.revised import Overtaken
from chairwright_desk.clients.models import Client, Identity
from chairwright_desk.clients.who import identity_of, note_seen, save_identity


def _told(held: Identity) -> IdentityGiven:
    return IdentityGiven(
        name=held.name,
        born=held.born,
        diagnosis=held.diagnosis,
        revision=held.revision,
        changed_at=held.changed_at if held.revision else None,
    )


@operation(
    "GET", "clients/{client_id}/identity", "identity.see",
    "Reads who a client is; empty, with revision 0, where nothing was entered.",
    gives=IdentityGiven,
)  # fmt: skip
def identity(call: Call, client_id: str) -> BaseModel:
    """Read."""
    client = find(call.request, Client.objects.select_related("team"), client_id)
    note_seen(call.request, client)
    return _told(identity_of(client))


@operation(
    "PUT", "clients/{client_id}/identity", "identity.change",
    "Replaces who a client is; empty texts and null empty it.",
    takes=IdentityPut, gives=IdentityGiven, faults=(409,),
)  # fmt: skip
def put_identity(call: Call, client_id: str) -> BaseModel:
    """Keep; when somebody else was faster, both versions."""
    client = find(call.request, Client.objects.select_related("team"), client_id)
    body = call.body
    if body.born is not None and body.born > timezone.localdate():
        must, remedy = "must not be a day to come", "Look at the year."
        raise faults.not_good(Wrong("born", must, "a later day", remedy))
    try:
        return _told(save_identity(call.request, client, body.revision, call.sent))
    except Overtaken:
        note_seen(call.request, client)
        saved = _told(identity_of(client)).model_dump(mode="json")
        raise faults.overtaken(saved, body.model_dump(mode="json")) from None
