"""Who a client is: read, kept and searched apart from everything else of the file."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.db import transaction

from chairwright_desk.audit.trail import note_read
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import save_revised
from chairwright_desk.clients.models import Client, Identity
from chairwright_desk.drafts.models import Draft
from chairwright_desk.keeping.removal import empty_journal

SEE = "identity.see"
CHANGE = "identity.change"
FIELDS = ("name", "born", "diagnosis")
FEWEST_LETTERS = 3
"""A name is searched from here on, so that single letters do not go through all names."""


def draft_key(client: Client) -> str:
    """Return the key of the drafts of the form; it says nothing of the person."""
    return f"clients.identity:{client.pk}"


def identity_of(client: Client) -> Identity:
    """Return who the client is; empty, unsaved and of revision 0 where nothing was ever entered."""
    held = Identity.objects.select_related("changed_by").filter(client=client).first()
    return held or Identity(client=client, revision=0)


def note_seen(request: Request, client: Client) -> None:
    """Note in the trail that the visitor has seen who the client is."""
    note_read(request, client, ["identity"])


def save_identity(
    request: Request, client: Client, revision: int, values: Mapping[str, Any]
) -> Identity:
    """Save who the client is; when all of it is emptied, everybody's drafts of it go too.

    Parameters
    ----------
    request : Request
        Whose change it is.
    client : Client
        Found under the action ``identity.change``.
    revision : int
        Which the change was made from; 0 when there was nothing.
    values : mapping of str to object
        Every one of `FIELDS`.

    Returns
    -------
    Identity
        As saved.

    Raises
    ------
    Overtaken
        Somebody else has saved since, the first entry included; nothing is changed.
    """
    with transaction.atomic():
        held, _ = Identity.objects.get_or_create(client=client, defaults={"revision": 0})
        saved = save_revised(request, held, revision, values)
        if not any(values.values()):
            Draft.objects.filter(form_key=draft_key(client)).delete()
            transaction.on_commit(empty_journal)
    return saved


def found_by_name(request: Request, asked: str) -> list[str]:
    """Return the ids of clients whose name holds a text, where the visitor may see names.

    Parameters
    ----------
    request : Request
        Each client that is found is noted in the trail: its name was seen in part.
    asked : str
        What was typed; shorter than `FEWEST_LETTERS` finds nothing.
    """
    if len(asked) < FEWEST_LETTERS:
        return []
    teams = request.user.teams_for(SEE)
    found = Client.objects.filter(team__in=teams, identity__name__icontains=asked)
    for client in found.select_related("team"):
        note_read(request, client, ["name"])
    return [client.pk for client in found]
