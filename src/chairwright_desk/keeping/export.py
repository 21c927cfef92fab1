"""Everything of one client in one zip."""

from __future__ import annotations

import io
import json
import zipfile
from collections.abc import Iterable
from typing import Any

from django.core.serializers.json import DjangoJSONEncoder
from django.db.models import BinaryField, Model

from chairwright_desk.accounts.models import User
from chairwright_desk.audit.models import Entry
from chairwright_desk.bench.texts import texts_of
from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.models import Draft
from chairwright_desk.jobs.bridge import ChairwrightError
from chairwright_desk.jobs.models import Job
from chairwright_desk.keeping.held import drafts_of, ids_of, jobs_of, rows_of, trail_of

STAMP = (2000, 1, 1, 0, 0, 0)
KINDS = {b"\xff\xd8\xff": "jpg", b"\x89PNG": "png", b"%PDF": "pdf"}
READ_ME = """Everything that the desk holds of the client {reference}.

client.yaml, places.yaml   the client file and the places file, where there are any
records/                   every record, by kind; a field that holds bytes names its file
bytes/                     pictures and other bytes
records/clients.identity.json   name, date of birth and diagnosis, where they were entered
records/drafts.draft.json  what you have typed and not saved; what others have is theirs: {others}
records/audit.entry.json   the trail: who read, changed or took out which record; no values
Papers are made anew from the records of an order whenever they are opened; which of them left
the desk, and when, stands in the trail as "export".
"""


def zipped(client: Client, reader: User) -> bytes:
    """Return the zip.

    Parameters
    ----------
    client : Client
    reader : User
        Who takes it out: of drafts, which only their author reads, it holds this person's.
    """
    ids, held = ids_of(client), io.BytesIO()
    drafts = drafts_of(ids)
    own = [draft for draft in drafts if draft.user_id == reader.pk]
    said = READ_ME.format(reference=client.reference, others=_others(len(drafts) - len(own)))
    with zipfile.ZipFile(held, "w", zipfile.ZIP_DEFLATED) as file:
        _put(file, "READ ME.txt", said)
        for name, text in _files(client):
            _put(file, name, text)
        for model, rows in rows_of(client).items():
            _records(file, model, rows)
        _records(file, Job, jobs_of(ids))
        _records(file, Draft, own)
        _records(file, Entry, trail_of(client))
    return held.getvalue()


def _others(count: int) -> str:
    return f"{count} draft{'' if count == 1 else 's'} left out" if count else "none left out"


def _put(file: zipfile.ZipFile, name: str, content: str | bytes) -> None:
    about = zipfile.ZipInfo(name, STAMP)
    about.compress_type = zipfile.ZIP_DEFLATED
    file.writestr(about, content)


def _files(client: Client) -> list[tuple[str, str]]:
    try:
        texts = texts_of(client)
    except ChairwrightError:
        return []
    if texts is None:
        return []
    return [(n, t) for n, t in (("client.yaml", texts.client), ("places.yaml", texts.places)) if t]


def _records(file: zipfile.ZipFile, model: type[Model], rows: Iterable[Model]) -> None:
    label, told = model._meta.label_lower, []
    for row in rows:
        fields: dict[str, Any] = {}
        for field in row._meta.concrete_fields:
            value = field.value_from_object(row)
            if isinstance(field, BinaryField) and value is not None:
                content = bytes(value)
                name = f"bytes/{label}-{row.pk}-{field.name}.{_ending(content)}"
                _put(file, name, content)
                value = name
            fields[field.attname] = value
        told.append(fields)
    if told:
        text = json.dumps(told, cls=DjangoJSONEncoder, ensure_ascii=False, indent=1)
        _put(file, f"records/{label}.json", text + "\n")


def _ending(content: bytes) -> str:
    return next((end for start, end in KINDS.items() if content.startswith(start)), "bin")
