"""The records of one client, those that only name it by id among them."""

from __future__ import annotations

from typing import Any

from django.db.models import Model, Q, QuerySet

from chairwright_desk.audit.models import Entry
from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.models import Draft
from chairwright_desk.jobs.models import Job
from chairwright_desk.keeping.graph import holders

AT_ONCE = 200


def rows_of(client: Client) -> dict[type[Model], QuerySet[Any]]:
    """Return the records that links lead from to a client, by model.

    Parameters
    ----------
    client : Client
    """
    found = {}
    for model, ways in holders().items():
        wanted = Q()
        for way in ways:
            wanted |= Q(**{way: client.pk})
        found[model] = model._default_manager.filter(wanted).order_by("pk").distinct()
    return found


def ids_of(client: Client) -> list[str]:
    """Return the ids of all of them.

    Parameters
    ----------
    client : Client
    """
    every = (
        str(key) for rows in rows_of(client).values() for key in rows.values_list("pk", flat=True)
    )
    return list(dict.fromkeys(every))


def _named(ids: list[str]) -> list[list[str]]:
    opaque = [each for each in ids if not each.isdigit()]
    return [opaque[at : at + AT_ONCE] for at in range(0, len(opaque), AT_ONCE)]


def jobs_of(ids: list[str]) -> list[Job]:
    """Return the work about records.

    Parameters
    ----------
    ids : list of str
    """
    return [
        job for some in _named(ids) for job in Job.objects.filter(record__in=some).order_by("pk")
    ]


def drafts_of(ids: list[str]) -> list[Draft]:
    """Return what anybody has typed about records and not saved.

    Parameters
    ----------
    ids : list of str
    """
    known = set(ids)
    keyed = Draft.objects.filter(form_key__contains=":").order_by("pk")
    return [draft for draft in keyed if known.intersection(draft.form_key.split(":"))]


def trail_of(client: Client) -> list[Entry]:
    """Return the lines of the trail about a client's records.

    Parameters
    ----------
    client : Client
    """
    found: list[Entry] = []
    for kind, rows in rows_of(client).items():
        keys = [str(key) for key in rows.values_list("pk", flat=True)]
        lines = Entry.objects.filter(record_kind=kind._meta.label_lower)
        for at in range(0, len(keys), AT_ONCE):
            found += lines.filter(record__in=keys[at : at + AT_ONCE])
    return sorted(found, key=lambda entry: entry.pk)
