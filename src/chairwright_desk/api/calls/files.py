"""What is known of a client, as a client file and a places file.

The revision of a file stands for its content: the desk makes the text anew from what is typed on
its pages, so a change there changes the revision too.
"""

from __future__ import annotations

import zlib
from collections.abc import Callable

from django.db import transaction
from pydantic import BaseModel

from chairwright_desk.api import faults
from chairwright_desk.api.bridge import check_client, check_places
from chairwright_desk.api.faults import Wrong
from chairwright_desk.api.kept import put_places, put_set
from chairwright_desk.api.operations import Call, operation
from chairwright_desk.api.shapes.files import FileGiven, FilePut
from chairwright_desk.audit.trail import note_read
from chairwright_desk.base.access import find
from chairwright_desk.bench.texts import texts_of
from chairwright_desk.clients.models import Client
from chairwright_desk.surroundings.texts import places_text

LARGEST = 2_000_000_000


def _given(client: Client, part: str) -> FileGiven:
    texts = texts_of(client)
    if texts is not None:
        text = str(getattr(texts, part))
    else:
        text = (places_text(client) or "") if part == "places" else ""
    revision = 1 + zlib.crc32(text.encode()) % LARGEST if text else 0
    return FileGiven(text=text, revision=min(revision, LARGEST))


def _text(call: Call) -> str:
    text: str | None = call.body.as_text()
    if text is None:
        must, remedy = "must be sent in one way", "Send “text” or “file”, not both."
        raise faults.not_good(Wrong("text", must, "none or both", remedy))
    return text


def _put(
    call: Call, client_id: str, part: str, keep: Callable[[Call, Client, str], None]
) -> FileGiven:
    """Keep a file if nobody has changed it since the revision named; all of it or nothing."""
    find(call.request, Client.objects.all(), client_id)
    text = _text(call)
    (check_client if part == "client" else check_places)(text)
    with transaction.atomic():
        client = Client.objects.select_for_update().get(pk=client_id)
        now = _given(client, part)
        if now.revision != call.body.revision:
            raise faults.overtaken(now.model_dump(), {"text": text})
        keep(call, client, text)
        return _given(client, part)


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
    "Adds a set of measures, sent as a client file or as the same in JSON; the sets before stay.",
    takes=FilePut, gives=FileGiven, faults=(409,),
)  # fmt: skip
def put_measures(call: Call, client_id: str) -> BaseModel:
    """Keep, when every line of it can be read."""
    return _put(call, client_id, "client", put_set)


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
    "Replaces a client's surroundings, sent as a places file or as the same in JSON.",
    takes=FilePut, gives=FileGiven, faults=(409,),
)  # fmt: skip
def put_surroundings(call: Call, client_id: str) -> BaseModel:
    """Keep, when every line of it can be read; a place that is not in it goes away."""
    return _put(call, client_id, "places", put_places)
