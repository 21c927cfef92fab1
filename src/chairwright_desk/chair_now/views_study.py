"""Studies: what came out, one row of a re-fit, its papers, and keeping it as a set-up."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.db import transaction
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render

from chairwright_desk.audit.trail import note_change, note_export, note_read, note_removal
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.shown import units_of
from chairwright_desk.bench.texts import texts_of
from chairwright_desk.chair_now.bridge import InputError, refit_figures
from chairwright_desk.chair_now.bridge import refit as refits
from chairwright_desk.chair_now.bridge import years as plans
from chairwright_desk.chair_now.models import Study
from chairwright_desk.chair_now.opened import client_of, context_of, record_of
from chairwright_desk.chair_now.present import present_of
from chairwright_desk.chair_now.views_ask import work_out
from chairwright_desk.clients.models import Client
from chairwright_desk.jobs.models import Job


@page("setup.see")
def show(request: Request, client_id: str, study_id: str) -> HttpResponse:
    """Show what came out of a study."""
    client, study = _study(request, client_id, study_id)
    note_read(request, study)
    texts = texts_of(client)
    job = Job.objects.filter(record=study.pk).order_by("-created").first()
    context = context_of(
        request, client, study=study, result=study.result, job=job,
        own=job is not None and job.owner_id == request.user.pk,
        old=texts is not None and texts.client != study.asked["client"],
        beside=_beside(request, study),
    )  # fmt: skip
    return render(request, f"chair_now/{study.kind}.html", context)


def _beside(request: Request, study: Study) -> refit_figures.Beside | None:
    """Figures beside the trade-off of a re-fit; None for another study, or one without rows."""
    if study.kind != Study.Kind.REFIT or not study.result or not study.result["points"]:
        return None
    try:
        found = _found(study)
    except InputError:
        return None
    names = request.GET.getlist("figure")
    return refit_figures.figures_beside(found, names, units_of(request))


def _found(study: Study) -> Any:
    person, present = present_of(study.asked)
    return refits.put_together(person, present, study.result)  # type: ignore[arg-type]


def _study(request: Request, client_id: str, study_id: str) -> tuple[Client, Study]:
    client = client_of(request, client_id)
    return client, record_of(Study, client, study_id)


@page("setup.see")
def row(request: Request, client_id: str, study_id: str, number: int) -> HttpResponse:
    """Show one row of a re-fit: what is kept, bought and moved, and what follows."""
    client, study = _study(request, client_id, study_id)
    try:
        found = _row(request, study, number)
    except InputError as error:
        raise Http404 from error
    note_read(request, study)
    context = context_of(request, client, study=study, number=number, row=found,
                         chosen=found.content["chosen"])  # fmt: skip
    return render(request, "chair_now/row.html", context)


def _row(request: Request, study: Study, number: int) -> refits.RowShown:
    if study.kind != Study.Kind.REFIT or not study.result:
        raise Http404
    if not 1 <= number <= len(study.result["points"]):
        raise Http404
    return refits.row_shown(_found(study), study.result, number, units_of(request))


@page("setup.see")
def sheet(request: Request, client_id: str, study_id: str, number: int) -> HttpResponse:
    """Give the paper of a study: of one row of a re-fit, or over the years."""
    _, study = _study(request, client_id, study_id)
    if not study.result:
        raise Http404
    if study.kind == Study.Kind.YEARS:
        pdf, name = plans.sheet(study.result["content"], "a4"), "life-sheet.pdf"
    else:
        try:
            pdf = refits.sheet(_row(request, study, number).content, "a4")
        except InputError as error:
            raise Http404 from error
        name = "re-fit-sheet.pdf"
    note_export(request, study, [name])
    answer = HttpResponse(pdf, content_type="application/pdf")
    answer["Content-Disposition"] = f'inline; filename="{name}"'
    return answer


@page("setup.change", "POST")
def keep(request: Request, client_id: str, study_id: str, number: int) -> HttpResponse:
    """Keep what came out as a new set-up on the bench."""
    client, study = _study(request, client_id, study_id)
    if not study.result:
        raise Http404
    codes, extras = _codes(request, study, number)
    with transaction.atomic():
        setup = Setup.objects.create(
            client=client, name=_name(study, number), line=study.asked["line"], codes=codes,
            extras=extras, created_by=request.user, changed_by=request.user,
        )  # fmt: skip
        note_change(request, setup, ["name", "line", "codes"])
    messages.success(request, f"{setup.name} is kept.")
    return redirect("bench:show", client.pk, setup.pk)


def _codes(request: Request, study: Study, number: int) -> tuple[dict[str, str], list[str]]:
    if study.kind == Study.Kind.REFIT:
        try:
            found = _row(request, study, number)
        except InputError as error:
            raise Http404 from error
        return found.codes, list(found.extras)
    result: Any = study.result
    if not result["codes"]:
        raise Http404
    return result["codes"], result["extras"]


def _name(study: Study, number: int) -> str:
    more = f", row {number}" if study.kind == Study.Kind.REFIT else ""
    taken = set(Setup.objects.filter(client=study.client_id).values_list("name", flat=True))
    stem = f"{study.title[:60]}{more}"
    names = (stem, *(f"{stem}, {n}" for n in range(2, len(taken) + 3)))
    return next(each for each in names if each not in taken)


@page("setup.change", "POST")
def again(request: Request, client_id: str, study_id: str) -> HttpResponse:
    """Work a study out once more, from what it holds."""
    client, study = _study(request, client_id, study_id)
    return work_out(request, client, study)


@page("setup.change", "POST")
def remove(request: Request, client_id: str, study_id: str) -> HttpResponse:
    """Remove a study."""
    client, study = _study(request, client_id, study_id)
    with transaction.atomic():
        note_removal(request, study)
        study.delete()
    messages.success(request, f"{study.title} is removed.")
    return redirect("chair_now:show", client.pk)
