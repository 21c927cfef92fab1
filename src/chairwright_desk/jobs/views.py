"""The work under way: only its owner sees it."""

from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import redirect, render

from chairwright_desk.base.access import find, page, visible
from chairwright_desk.base.requests import Request
from chairwright_desk.jobs.models import Job
from chairwright_desk.jobs.work import start

SHOWN = 50


def _job(request: Request, job_id: str) -> Job:
    return find(request, Job.objects.filter(owner=request.user).select_related("team"), job_id)


@page("job.own")
def jobs(request: Request) -> HttpResponse:
    """List one's own work, newest first."""
    mine = visible(request, Job.objects.filter(owner=request.user))[:SHOWN]
    return render(request, "jobs/list.html", {"jobs": mine})


@page("job.own")
def show(request: Request, job_id: str) -> HttpResponse:
    """Show how far a piece of work is; the part that changes is asked for again while it runs."""
    template = "jobs/state.html" if request.htmx else "jobs/show.html"
    return render(request, template, {"job": _job(request, job_id)})


@page("job.own", "POST")
def stop(request: Request, job_id: str) -> HttpResponse:
    """Ask for a piece of work to stop; one that waits is stopped at once."""
    job = _job(request, job_id)
    mine = Job.objects.filter(pk=job.pk)
    if not mine.filter(state=Job.State.WAITING).update(state=Job.State.CANCELLED):
        mine.update(cancel_asked=True)
    return redirect("jobs:show", job.pk)


@page("job.own", "POST")
def again(request: Request, job_id: str) -> HttpResponse:
    """Start the same work once more, when it has ended without a result."""
    old = _job(request, job_id)
    if old.open:
        return redirect("jobs:show", old.pk)
    job = start(request, old.kind, old.words, old.arguments, team=old.team, back=old.back)
    Job.objects.filter(pk=job.pk).update(record=old.record)
    return redirect("jobs:show", job.pk)
