"""Work under way: begin, read, stop; one's own only."""

from __future__ import annotations

from typing import Any

from django.core.paginator import Paginator
from django.urls import reverse
from pydantic import BaseModel

from chairwright_desk.api.calls.setups import setup_of
from chairwright_desk.api.operations import Call, operation
from chairwright_desk.api.shapes.jobs import JobGiven, JobNew, JobsGiven
from chairwright_desk.base.access import find, visible
from chairwright_desk.jobs.models import Job
from chairwright_desk.jobs.work import start

KINDS = {"front": "bench.trade"}
A_PAGE = 50


def told(job: Job, *, whole: bool = True) -> JobGiven:
    """Return a piece of work as it is answered.

    Parameters
    ----------
    job : Job
    whole : bool
        Whether with its result; pictures are left out.
    """
    result: Any = job.result if whole else None
    if isinstance(result, dict):
        result = {name: value for name, value in result.items() if name != "picture"}
    named = {kind: name for name, kind in KINDS.items()}
    return JobGiven(
        id=job.pk,
        work=named.get(job.kind, job.kind),
        state=job.state,
        done=job.done,
        whole=job.whole,
        said=job.said,
        trouble=job.trouble,
        created=job.created,
        finished=job.finished,
        result=result,
    )


def _mine(call: Call, job_id: str) -> Job:
    mine = Job.objects.filter(owner=call.request.user).select_related("team")
    return find(call.request, mine, job_id)


@operation("GET", "jobs", "job.own", "Lists your own work.", gives=JobsGiven, paged=True)
def jobs(call: Call) -> BaseModel:
    """List, newest first."""
    mine = visible(call.request, Job.objects.filter(owner=call.request.user))
    pages = Paginator(mine.order_by("-created", "pk"), A_PAGE)
    rows = pages.page(call.page).object_list if call.page <= pages.num_pages else []
    listed = [told(each, whole=False) for each in rows]
    return JobsGiven(page=call.page, pages=pages.num_pages, jobs=listed)


@operation(
    "POST", "jobs", "setup.see", "Begins work on a set-up.",
    takes=JobNew, gives=JobGiven, status=202, faults=(404, 409),
)  # fmt: skip
def new_job(call: Call) -> BaseModel:
    """Begin."""
    setup = setup_of(call, call.body.client, call.body.setup)
    job = start(
        call.request,
        KINDS[call.body.work],
        f"Trade-off for {setup.client.reference}, {setup.name}",
        {"setup": setup.pk, "units": "mm"},
        team=setup.client.team,
        record=setup,
        back=reverse("bench:trade", args=[setup.client_id, setup.pk]),
    )
    return told(job)


@operation("GET", "jobs/{job_id}", "job.own", "Reads a piece of your work.", gives=JobGiven)
def job(call: Call, job_id: str) -> BaseModel:
    """Read, with the result when it is done."""
    return told(_mine(call, job_id))


@operation("POST", "jobs/{job_id}/stop", "job.own", "Stops a piece of your work.", gives=JobGiven)
def stop_job(call: Call, job_id: str) -> BaseModel:
    """Stop; work that waits at once, work under way as soon as its process is ended."""
    mine = Job.objects.filter(pk=_mine(call, job_id).pk)
    if not mine.filter(state=Job.State.WAITING).update(state=Job.State.CANCELLED):
        mine.filter(state=Job.State.RUNNING).update(cancel_asked=True)
    return told(mine.get())
