"""Asking for a study: a re-fit, the years to come, the surest set-up."""

from __future__ import annotations

from typing import Any

from django.db import transaction
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse

from chairwright_desk.audit.trail import note_change
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.shown import units_of
from chairwright_desk.chair_now.bridge import InputError
from chairwright_desk.chair_now.earlier import client_then
from chairwright_desk.chair_now.forms_study import SETUP, RefitForm, YearsForm
from chairwright_desk.chair_now.jobs import STUDY
from chairwright_desk.chair_now.known import bench_from, snapshot
from chairwright_desk.chair_now.models import MeasuredChair, Study
from chairwright_desk.chair_now.opened import (
    Known,
    client_of,
    context_of,
    known_of,
    record_of,
    setups_of,
)
from chairwright_desk.chair_now.present import present_of
from chairwright_desk.chair_now.written import put_problems
from chairwright_desk.drafts.kept import drop, filled
from chairwright_desk.jobs.work import start

Data = dict[str, Any]


@page("setup.change", "GET", "POST")
def refit(request: Request, client_id: str) -> HttpResponse:
    """Ask for the smallest changes that meet today's targets."""
    client = client_of(request, client_id)
    known, key = known_of(request, client), f"chair_now.refit:{client.pk}"
    if not isinstance(known, Known):
        return known
    chairs = list(MeasuredChair.objects.filter(client=client))
    initial = {"line": "everyday", "chair": _wanted(request)}
    form = filled(request, key, RefitForm, initial=initial, team=client.team_id,
                  setups=setups_of(client), chairs=chairs)  # fmt: skip
    if "look" in request.POST:
        typed = {**request.POST.dict(), "places": "places" in request.POST}
        form = RefitForm(initial=typed, team=client.team_id, setups=setups_of(client),
                         chairs=chairs)  # fmt: skip
    elif request.method == "POST" and form.is_valid():
        title, asked = _refit_asked(known, form.cleaned_data)
        try:
            present_of(asked)
        except InputError as error:
            put_problems(form, error.problems, {})
        else:
            drop(request, key)
            return begin(request, known, Study.Kind.REFIT, title, asked)
    context = context_of(request, client, form=form, form_key=key, known=known,
                         looked="look" in request.POST)  # fmt: skip
    return render(request, "chair_now/ask_refit.html", context)


def _wanted(request: Request) -> str:
    return request.GET.get("chair", "")


def _refit_asked(known: Known, data: Data) -> tuple[str, Data]:
    kind, _, key = data["chair"].partition(":")
    asked = snapshot(known.client, known.texts)
    if not data["places"]:
        asked["places"] = ""
    if kind == SETUP:
        setup = record_of(Setup, known.client, key)
        then = client_then(known.client, setup, known.texts.client)
        more = {"line": setup.line, "codes": setup.codes, "extras": setup.extras,
                "name": setup.name, "then": then}  # fmt: skip
        return f"{setup.name}, fitted again", {**asked, **more}
    chair = record_of(MeasuredChair, known.client, key)
    more = {"line": data["line"], "measured": chair.text, "kept": data["kept"]}
    return f"{chair.name}, fitted again", {**asked, **more}


@page("setup.change", "GET", "POST")
def years(request: Request, client_id: str) -> HttpResponse:
    """Ask how long a chair lasts while the client changes."""
    client = client_of(request, client_id)
    known, key = known_of(request, client), f"chair_now.years:{client.pk}"
    if not isinstance(known, Known):
        return known
    form = filled(request, key, YearsForm, initial={"chair": _wanted(request)},
                  team=client.team_id, setups=setups_of(client))  # fmt: skip
    if request.method == "POST" and form.is_valid():
        title, asked = _years_asked(known, form.cleaned_data)
        drop(request, key)
        return begin(request, known, Study.Kind.YEARS, title, asked)
    context = context_of(request, client, form=form, form_key=key, known=known)
    return render(request, "chair_now/ask_years.html", context)


def _years_asked(known: Known, data: Data) -> tuple[str, Data]:
    kind, _, key = data["chair"].partition(":")
    asked = snapshot(known.client, known.texts)
    if not data["places"]:
        asked["places"] = ""
    asked |= {name: data[name] for name in ("years", "lasts", "mass_change")}
    asked["delivered"] = f"{data['delivered']:%Y-%m-%d}" if data["delivered"] else ""
    if kind != SETUP:
        return "What lasts longest", {**asked, "line": key, "codes": None, "extras": []}
    setup = record_of(Setup, known.client, key)
    more = {"line": setup.line, "codes": setup.codes, "extras": setup.extras}
    return f"{setup.name} over the years", {**asked, **more}


@page("setup.change", "POST")
def surest(request: Request, client_id: str, setup_id: str) -> HttpResponse:
    """Ask for the best set-up, on the line of another, whose musts hold with their spread."""
    client = client_of(request, client_id)
    setup = record_of(Setup, client, setup_id)
    known = known_of(request, client)
    if not isinstance(known, Known):
        return known
    asked = snapshot(client, known.texts, line=setup.line, extras=setup.extras)
    try:
        bench_from(asked, extras=tuple(setup.extras))
    except InputError:
        raise Http404 from None
    return begin(request, known, Study.Kind.SUREST, "Best set-up that is sure", asked)


def begin(request: Request, known: Known, kind: str, title: str, asked: Data) -> HttpResponse:
    """Keep what is asked, and let it be worked out.

    Parameters
    ----------
    request : Request
    known : Known
    kind, title : str
    asked : dict
    """
    client = known.client
    with transaction.atomic():
        study = Study.objects.create(
            client=client, kind=kind, title=title[:120], asked=asked, created_by=request.user,
            changed_by=request.user,
        )  # fmt: skip
        note_change(request, study, ["asked"])
    return work_out(request, client, study)


def work_out(request: Request, client: Any, study: Study) -> HttpResponse:
    """Put a study into the queue, and show how far it is.

    Parameters
    ----------
    request : Request
    client : Client
    study : Study
    """
    back = reverse("chair_now:study", args=[client.pk, study.pk])
    job = start(
        request, STUDY, f"{client.reference}: {study.title}",
        {"study": study.pk, "units": units_of(request)}, team=client.team, record=study, back=back,
    )  # fmt: skip
    return redirect("jobs:show", job.pk) if not job.ended else redirect(back)
