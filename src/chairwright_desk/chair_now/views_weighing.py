"""Weighings: entered, looked at, counted or not."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.db import transaction
from django.http import HttpResponse
from django.shortcuts import redirect, render

from chairwright_desk.audit.trail import note_change, note_read, note_removal
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions, save_revised
from chairwright_desk.bench.shown import units_of
from chairwright_desk.chair_now.bridge import InputError, PadsShown, shown_pads
from chairwright_desk.chair_now.forms import KEPT, WeighForm
from chairwright_desk.chair_now.known import pads_of
from chairwright_desk.chair_now.models import Weighing
from chairwright_desk.chair_now.opened import (
    Known,
    alone_of,
    client_of,
    context_of,
    known_of,
    record_of,
    setups_of,
)
from chairwright_desk.chair_now.written import problem_words
from chairwright_desk.drafts.kept import drop, filled, forget_record

LABELS = {"weighed_on": "Weighed on", "setup_name": "Set-up on the pads", "fields": "Readings",
          "in_use": "Counts"}  # fmt: skip


@page("setup.change", "GET", "POST")
def new(request: Request, client_id: str) -> HttpResponse:
    """Enter a weighing."""
    known = known_of(request, client_of(request, client_id))
    return _entered(request, known, None) if isinstance(known, Known) else known


@page("setup.change", "GET", "POST")
def change(request: Request, client_id: str, weighing_id: str) -> HttpResponse:
    """Correct a weighing."""
    client = client_of(request, client_id)
    weighing = record_of(Weighing, client, weighing_id)
    known = known_of(request, client)
    return _entered(request, known, weighing) if isinstance(known, Known) else known


def _entered(request: Request, known: Known, held: Weighing | None) -> HttpResponse:
    client = known.client
    key = f"chair_now.weigh:{held.pk if held else client.pk}"
    form = filled(
        request, key, WeighForm, initial=_initial(held), texts=known.texts,
        setups=setups_of(client), held=held, reference=known.reference, alone=alone_of(request),
    )  # fmt: skip
    if request.method == "POST" and form.is_valid():
        try:
            kept = _keep(request, known, held, form)
        except Overtaken as error:
            return both_versions(request, error, LABELS, request.path)
        drop(request, key)
        messages.success(request, "The weighing is kept.")
        return redirect("chair_now:weighing", client.pk, kept.pk)
    context = context_of(request, client, form=form, form_key=key, held=held)
    return render(request, "chair_now/weigh.html", context)


def _initial(held: Weighing | None) -> dict[str, Any]:
    if held is None:
        return {}
    more = {"loads_on": held.fields.get("loads_on") != "no", "in_use": held.in_use, "setup": KEPT}
    return {**held.fields, **more, "weighed_on": held.weighed_on, "revision": held.revision}


def _keep(request: Request, known: Known, held: Weighing | None, form: WeighForm) -> Weighing:
    values = form.values
    if held is not None:
        return save_revised(request, held, form.cleaned_data["revision"], values)
    with transaction.atomic():
        made = Weighing.objects.create(client=known.client, changed_by=request.user, **values)
        note_change(request, made, values)
    return made


@page("setup.see")
def show(request: Request, client_id: str, weighing_id: str) -> HttpResponse:
    """Show what a weighing says."""
    client = client_of(request, client_id)
    weighing = record_of(Weighing, client, weighing_id)
    note_read(request, weighing)
    shown, trouble = _shown(request, weighing)
    known = known_of(request, client)
    counts, refused = False, ""
    if isinstance(known, Known):
        counts, refused = known.weighing == weighing, known.refused
    context = context_of(
        request, client, weighing=weighing, shown=shown, trouble=trouble, counts=counts,
        refused=refused,
    )  # fmt: skip
    return render(request, "chair_now/weighing.html", context)


def _shown(request: Request, weighing: Weighing) -> tuple[PadsShown | None, str]:
    try:
        return shown_pads(pads_of(weighing), units_of(request)), ""
    except InputError as error:
        return None, problem_words(error.problems[0])


@page("setup.change", "POST")
def use(request: Request, client_id: str, weighing_id: str) -> HttpResponse:
    """Count a weighing for the client's set-ups, or count it no longer."""
    client = client_of(request, client_id)
    weighing = record_of(Weighing, client, weighing_id)
    wanted = request.POST.get("use") == "yes"
    save_revised(request, weighing, weighing.revision, {"in_use": wanted})
    said = "It counts from now on." if wanted else "It counts no longer; estimates take its place."
    messages.success(request, said)
    return redirect("chair_now:weighing", client.pk, weighing.pk)


@page("setup.change", "POST")
def remove(request: Request, client_id: str, weighing_id: str) -> HttpResponse:
    """Remove a weighing."""
    client = client_of(request, client_id)
    weighing = record_of(Weighing, client, weighing_id)
    with transaction.atomic():
        note_removal(request, weighing)
        forget_record(weighing.pk)
        weighing.delete()
    messages.success(request, "The weighing is removed.")
    return redirect("chair_now:show", client.pk)
