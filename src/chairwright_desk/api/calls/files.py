"""What is known of a client, as a client file and a places file."""

from __future__ import annotations

from django.db import transaction
from pydantic import BaseModel

from chairwright_desk.api import faults
from chairwright_desk.api.faults import Wrong
from chairwright_desk.api.operations import Call, operation
from chairwright_desk.api.shapes.files import FileGiven, FilePut
from chairwright_desk.audit.trail import note_change, note_read
from chairwright_desk.base.access import find
from chairwright_desk.base.revised import Overtaken, save_revised
from chairwright_desk.bench.bridge import open_bench
from chairwright_desk.bench.models import ClientFile
from chairwright_desk.bench.texts import texts_of
from chairwright_desk.clients.models import Client

LINE = "everyday"


def _text(call: Call) -> str:
    text: str | None = call.body.as_text()
    if text is None:
        must, remedy = "must be sent in one way", "Send “text” or “file”, not both."
        raise faults.not_good(Wrong("text", must, "none or both", remedy))
    return text


def _given(client: Client, part: str) -> FileGiven:
    texts, held = texts_of(client), ClientFile.objects.filter(client=client).first()
    text = "" if texts is None else getattr(texts, part)
    return FileGiven(text=text, revision=held.revision if held else 0)


def _keep(call: Call, client: Client, field: str) -> None:
    text, held = _text(call), ClientFile.objects.filter(client=client).first()
    both = {"client_text": "", "places_text": ""}
    if held is not None:
        both = {"client_text": held.client_text, "places_text": held.places_text}
    both[field] = text
    open_bench(both["client_text"], LINE, both["places_text"])
    with transaction.atomic():
        if held is None and call.body.revision == 0:
            made = ClientFile.objects.create(client=client, changed_by=call.request.user, **both)
            note_change(call.request, made, [field])
        else:
            _save(call, client, held, field, text)


def _save(call: Call, client: Client, held: ClientFile | None, field: str, text: str) -> None:
    try:
        if held is None:
            raise faults.overtaken({"text": "", "revision": 0}, {"text": text})
        save_revised(call.request, held, call.body.revision, {field: text})
    except Overtaken as error:
        saved = {"text": getattr(error.current, field), "revision": error.current.revision}
        raise faults.overtaken(saved, {"text": text}) from None


@operation(
    "GET", "clients/{client_id}/measures", "measures.see",
    "Reads a client's measures as a client file.", gives=FileGiven,
)  # fmt: skip
def measures(call: Call, client_id: str) -> BaseModel:
    """Read."""
    client = find(call.request, Client.objects.all(), client_id)
    note_read(call.request, client, ["measures"])
    return _given(client, "client")


@operation(
    "PUT", "clients/{client_id}/measures", "measures.change",
    "Keeps a client's measures, sent as a client file or as the same in JSON.",
    takes=FilePut, gives=FileGiven, faults=(409,),
)  # fmt: skip
def put_measures(call: Call, client_id: str) -> BaseModel:
    """Keep, when every line of it can be read."""
    client = find(call.request, Client.objects.all(), client_id)
    _keep(call, client, "client_text")
    return _given(client, "client")


@operation(
    "GET", "clients/{client_id}/surroundings", "surroundings.see",
    "Reads a client's surroundings as a places file.", gives=FileGiven,
)  # fmt: skip
def surroundings(call: Call, client_id: str) -> BaseModel:
    """Read."""
    client = find(call.request, Client.objects.all(), client_id)
    note_read(call.request, client, ["surroundings"])
    return _given(client, "places")


@operation(
    "PUT", "clients/{client_id}/surroundings", "surroundings.change",
    "Keeps a client's surroundings, sent as a places file or as the same in JSON.",
    takes=FilePut, gives=FileGiven, faults=(409,),
)  # fmt: skip
def put_surroundings(call: Call, client_id: str) -> BaseModel:
    """Keep, when every line of it can be read."""
    client = find(call.request, Client.objects.all(), client_id)
    texts_missing = texts_of(client) is None
    if texts_missing:
        what = "The client has no measures yet, which the surroundings are read beside."
        raise faults.in_the_way(what, "PUT /api/clients/{client_id}/measures first.")
    _keep(call, client, "places_text")
    return _given(client, "places")
