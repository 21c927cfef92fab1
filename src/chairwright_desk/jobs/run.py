"""Running one piece of work: taking it, doing it, and writing down how it ended."""

from __future__ import annotations

import logging
from datetime import timedelta
from typing import Any

from django.utils import timezone

from chairwright_desk.jobs.bridge import ChairwrightError
from chairwright_desk.jobs.models import Job
from chairwright_desk.jobs.work import Cancelled, Progress, found

log = logging.getLogger("chairwright_desk")
SILENT = timedelta(seconds=30)
"""A job under way whose worker has not been heard of for so long was broken off."""


def claim(job_id: str | None = None) -> str | None:
    """Take the oldest waiting job (or a given one) so that no other worker does; return its id."""
    waiting = Job.objects.filter(state=Job.State.WAITING).order_by("created")
    named = waiting.filter(pk=job_id) if job_id else waiting
    for key in named.values_list("pk", flat=True)[:5]:
        now = timezone.now()
        mine = Job.objects.filter(pk=key, state=Job.State.WAITING)
        if mine.update(state=Job.State.RUNNING, started=now, beat=now):
            return str(key)
    return None


def perform(job_id: str) -> None:
    """Do a job that was claimed and write its end."""
    job = Job.objects.get(pk=job_id)
    try:
        result = found(job.kind)(job.arguments, Progress(job.pk))
    except Cancelled:
        end(job_id, Job.State.CANCELLED)
    except ChairwrightError as error:
        end(job_id, Job.State.FAILED, trouble=str(error))
    except Exception:
        log.exception("work failed")
        end(
            job_id, Job.State.FAILED, trouble="The program failed at this work; the log says where."
        )
    else:
        end(job_id, Job.State.DONE, result=result)


def end(job_id: str, state: Job.State, **more: Any) -> None:
    """Write how a job ended; a job that has ended stays as it is."""
    running = Job.objects.filter(pk=job_id, state=Job.State.RUNNING)
    running.update(state=state, finished=timezone.now(), **more)


def mark_interrupted(*, everything: bool = False) -> int:
    """Mark jobs whose worker is gone; `everything` when this is the only worker there is."""
    running = Job.objects.filter(state=Job.State.RUNNING)
    if not everything:
        running = running.filter(beat__lt=timezone.now() - SILENT)
    return running.update(state=Job.State.INTERRUPTED, finished=timezone.now())
