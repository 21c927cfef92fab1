"""Records that two people may change at once: nobody's version is lost."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from django.conf import settings
from django.db import models, transaction
from django.http import HttpResponse
from django.shortcuts import render
from django.utils import timezone

from chairwright_desk.audit.trail import note_change
from chairwright_desk.base.ids import new_id
from chairwright_desk.base.requests import Request


class Revised(models.Model):
    """A record with an opaque id and a revision that counts its saves."""

    id = models.CharField(primary_key=True, max_length=16, default=new_id, editable=False)
    revision = models.PositiveIntegerField(default=1, editable=False)
    changed_at = models.DateTimeField(default=timezone.now, editable=False)
    changed_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, models.PROTECT, null=True, editable=False, related_name="+"
    )

    class Meta:
        abstract = True


Changed = TypeVar("Changed", bound=Revised)


class Overtaken(Exception):
    """Somebody else saved first.

    Parameters
    ----------
    current : Revised
        The record as it stands now.
    mine : mapping of str to object
        What was to be saved.
    """

    def __init__(self, current: Revised, mine: Mapping[str, Any]) -> None:
        super().__init__("somebody else saved this record first")
        self.current = current
        self.mine = dict(mine)


def save_revised(
    request: Request, record: Changed, revision: int, values: Mapping[str, Any]
) -> Changed:
    """Save new values if nobody has saved since `revision`, and note it in the trail.

    Parameters
    ----------
    request : Request
        Whose change it is.
    record : Revised
        The record, as read by `chairwright_desk.base.access.find`.
    revision : int
        Which the form was filled from (its hidden field ``revision``).
    values : mapping of str to object
        Field name to new value.

    Returns
    -------
    Revised
        The record as saved, its revision one higher.

    Raises
    ------
    Overtaken
        Somebody else has saved since; nothing is changed.
    """
    kind = type(record)
    rows = kind._default_manager.filter(pk=record.pk)
    stamp = {"revision": revision + 1, "changed_at": timezone.now(), "changed_by": request.user}
    with transaction.atomic():
        changed = [n for n, v in values.items() if getattr(record, n) != v]
        if not rows.filter(revision=revision).update(**values, **stamp):
            raise Overtaken(rows.get(), values)
        note_change(request, record, changed)
    record.refresh_from_db()
    return record


def both_versions(
    request: Request, overtaken: Overtaken, labels: Mapping[str, str], back: str
) -> HttpResponse:
    """Show the saved and the unsaved version side by side; the person chooses.

    Parameters
    ----------
    request : Request
        The form as it was sent; it is sent again to the same address when "mine" is chosen.
    overtaken : Overtaken
        Both versions.
    labels : mapping of str to str
        Field name to the words shown.
    back : str
        Address of the record, where the saved version stays as it is.
    """
    rows = []
    for name, words in labels.items():
        theirs, mine = getattr(overtaken.current, name), overtaken.mine.get(name)
        rows.append({"words": words, "theirs": theirs, "mine": mine, "same": theirs == mine})
    hidden = ("csrfmiddlewaretoken", "revision")
    held = [(n, v) for n, vs in request.POST.lists() if n not in hidden for v in vs]
    context = {"current": overtaken.current, "rows": rows, "held": held, "back": back}
    return render(request, "base/both_versions.html", context, status=409)
