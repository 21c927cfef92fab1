"""Measured chairs: entered, judged, and laid beside a kept set-up."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.db import transaction
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render

from chairwright_desk.audit.trail import note_change, note_read, note_removal
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions, save_revised
from chairwright_desk.bench.bridge import State, open_bench, state_of
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.shown import units_of
from chairwright_desk.bench.texts import line_of
from chairwright_desk.chair_now.bridge import InputError, Judged, gained, judged, shown_measured
from chairwright_desk.chair_now.forms import MeasuredForm
from chairwright_desk.chair_now.known import weighed_or_not
from chairwright_desk.chair_now.models import MeasuredChair
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

LABELS = {"name": "What it is called", "measured_on": "Measured on", "fields": "Readings"}


@page("setup.change", "GET", "POST")
def new(request: Request, client_id: str) -> HttpResponse:
    """Enter a measured chair."""
    known = known_of(request, client_of(request, client_id))
    return _entered(request, known, None) if isinstance(known, Known) else known


@page("setup.change", "GET", "POST")
def change(request: Request, client_id: str, chair_id: str) -> HttpResponse:
    """Correct a measured chair."""
    client = client_of(request, client_id)
    chair = record_of(MeasuredChair, client, chair_id)
    known = known_of(request, client)
    return _entered(request, known, chair) if isinstance(known, Known) else known


def _entered(request: Request, known: Known, held: MeasuredChair | None) -> HttpResponse:
    client = known.client
    key = f"chair_now.measured:{held.pk if held else client.pk}"
    initial: dict[str, Any] = {}
    if held is not None:
        initial = {**held.fields, "name": held.name, "measured_on": held.measured_on,
                   "revision": held.revision}  # fmt: skip
    form = filled(request, key, MeasuredForm, initial=initial, bench=known.bench,
                  alone=alone_of(request))  # fmt: skip
    if request.method == "POST" and form.is_valid():
        try:
            kept = _keep(request, known, held, form)
        except Overtaken as error:
            return both_versions(request, error, LABELS, request.path)
        drop(request, key)
        messages.success(request, "The measured chair is kept.")
        return redirect("chair_now:measured", client.pk, kept.pk)
    context = context_of(request, client, form=form, form_key=key, held=held)
    return render(request, "chair_now/measure.html", context)


def _keep(
    request: Request, known: Known, held: MeasuredChair | None, form: MeasuredForm
) -> MeasuredChair:
    values = form.values
    if held is not None:
        return save_revised(request, held, form.cleaned_data["revision"], values)
    with transaction.atomic():
        made = MeasuredChair.objects.create(
            client=known.client, changed_by=request.user, **values
        )  # fmt: skip
        note_change(request, made, values)
    return made


@page("setup.see")
def show(request: Request, client_id: str, chair_id: str) -> HttpResponse:
    """Show a measured chair with its verdicts, and what a kept set-up would bring."""
    client = client_of(request, client_id)
    chair = record_of(MeasuredChair, client, chair_id)
    known = known_of(request, client)
    if not isinstance(known, Known):
        return known
    note_read(request, chair)
    setups = setups_of(client)
    more: dict[str, Any] = {"chair": chair, "setups": setups, "known": known}
    try:
        found = judged(chair.text, known.bench)
        more["shown"] = shown_measured(found, units_of(request))
        more |= _beside(request, known, found, chair, setups)
    except InputError as error:
        more["trouble"] = problem_words(error.problems[0])
    return render(request, "chair_now/measured.html", context_of(request, client, **more))


def _beside(
    request: Request, known: Known, found: Judged, chair: MeasuredChair, setups: list[Setup]
) -> dict[str, Any]:
    proposed = proposed_of(request, known, setups)
    if proposed is None:
        return {}
    setup, state = proposed
    gain = gained(found, state, (chair.name, setup.name))
    return {"beside": setup, "gained": gain, "cannot": "" if gain else "; ".join(state.against)}


def proposed_of(request: Request, known: Known, setups: list[Setup]) -> tuple[Setup, State] | None:
    """The kept set-up that is to be laid beside, with its state; None when none is named.

    Parameters
    ----------
    request : Request
    known : Known
    setups : list of Setup
        Of the client.
    """
    wanted = request.GET.get("beside", "")
    if not wanted:
        return None
    setup = next((each for each in setups if each.pk == wanted), None)
    if setup is None:
        raise Http404
    bench = open_bench(known.texts.client, line_of(setup.line), "", tuple(setup.extras))
    return setup, state_of(weighed_or_not(known.client, bench)[0], setup.codes)


@page("setup.change", "POST")
def remove(request: Request, client_id: str, chair_id: str) -> HttpResponse:
    """Remove a measured chair."""
    client = client_of(request, client_id)
    chair = record_of(MeasuredChair, client, chair_id)
    with transaction.atomic():
        note_removal(request, chair)
        forget_record(chair.pk)
        chair.delete()
    messages.success(request, f"{chair.name} is removed.")
    return redirect("chair_now:show", client.pk)
