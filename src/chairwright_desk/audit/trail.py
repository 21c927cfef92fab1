"""Writing the trail: one function a kind of event, called in the same transaction as the event."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import timedelta
from typing import Any

from django.db.models import Model
from django.http import HttpRequest
from django.utils import timezone

from chairwright_desk.audit.models import Entry

READ_ONCE = timedelta(minutes=5)
"""Reading the same record again within this time adds no line."""


def note_read(request: HttpRequest, record: Model, fields: Iterable[str] = ()) -> None:
    """Note that somebody opened a record; `fields` names what is special about it (identity)."""
    about = _about(request, record, fields)
    since = timezone.now() - READ_ONCE
    if not Entry.objects.filter(kind="read", at__gte=since, **about).exists():
        Entry.objects.create(kind="read", **about, **_shown(request))


def note_change(request: HttpRequest, record: Model, fields: Iterable[str]) -> None:
    """Note a change: the names of the fields, never their values."""
    Entry.objects.create(kind="change", **_about(request, record, fields), **_shown(request))


def note_export(request: HttpRequest, record: Model, fields: Iterable[str] = ()) -> None:
    """Note that a record's data left the desk (a paper, a file)."""
    Entry.objects.create(kind="export", **_about(request, record, fields), **_shown(request))


def note_removal(request: HttpRequest, record: Model, fields: Iterable[str] = ()) -> None:
    """Note that a record was removed; call it before the record is gone."""
    Entry.objects.create(kind="removal", **_about(request, record, fields), **_shown(request))


def note_sign_in(request: HttpRequest, user: Any, kind: str) -> None:
    """Note a sign-in, a sign-out, or one that failed (then nobody's name is written)."""
    who = {"who": user.pk, "who_shown": user.shown} if user is not None else {}
    Entry.objects.create(kind=kind, address=_address(request), **who)


def _about(request: HttpRequest, record: Model, fields: Iterable[str]) -> dict[str, Any]:
    from chairwright_desk.base.access import team_path

    team: Any = record
    for step in team_path(record.__class__).split("__"):
        team = getattr(team, step, None)
    return {
        "who": request.user.pk or "",
        "record_kind": record._meta.label_lower,
        "record": str(record.pk),
        "team": getattr(team, "pk", "") or "",
        "fields": sorted(set(fields)),
    }


def _shown(request: HttpRequest) -> dict[str, str]:
    return {"who_shown": str(request.user), "address": _address(request)}


def _address(request: HttpRequest) -> str:
    return str(request.META.get("REMOTE_ADDR", ""))[:45]
