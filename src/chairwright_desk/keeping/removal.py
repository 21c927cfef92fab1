"""Taking everything of one client away; of the trail only lines without values stay."""

from __future__ import annotations

from django.db import connection, transaction

from chairwright_desk.audit.trail import note_removal
from chairwright_desk.base.requests import Request
from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.models import Draft
from chairwright_desk.jobs.models import Job
from chairwright_desk.keeping.held import drafts_of, ids_of, jobs_of, rows_of


def counted(client: Client) -> list[tuple[str, int]]:
    """Return how many records of each kind there are, in words.

    Parameters
    ----------
    client : Client
    """
    rows = ((model._meta.verbose_name, found.count()) for model, found in rows_of(client).items())
    return [(str(words), count) for words, count in rows if count]


def remove(request: Request, client: Client) -> None:
    """Remove a client with everything that belongs to it; work about it is stopped.

    Parameters
    ----------
    request : Request
        Whose removal it is.
    client : Client
    """
    with transaction.atomic():
        ids = ids_of(client)
        kinds = [kind._meta.label_lower for kind, r in rows_of(client).items() if r.exists()]
        note_removal(request, client, kinds)
        Draft.objects.filter(pk__in=[each.pk for each in drafts_of(ids)]).delete()
        Job.objects.filter(pk__in=[each.pk for each in jobs_of(ids)]).delete()
        client.delete()
        transaction.on_commit(empty_journal)


def empty_journal() -> None:
    """Bring SQLite's journal into the file, so that no old page of it stays on the disk.

    Pages that a removal frees are overwritten (``secure_delete`` in the settings). PostgreSQL
    frees the space by itself, in its own time.
    """
    if connection.vendor == "sqlite":
        with connection.cursor() as cursor:
            cursor.execute("PRAGMA wal_checkpoint(TRUNCATE)")
            cursor.fetchall()
