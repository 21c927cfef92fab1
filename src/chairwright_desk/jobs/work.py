"""Naming work, starting it, and what the work itself may call."""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from django.conf import settings
from django.db.models import Model
from django.utils import timezone
from django.utils.module_loading import autodiscover_modules

from chairwright_desk.accounts.models import Team
from chairwright_desk.base.requests import Request
from chairwright_desk.jobs.models import Job

STEP_S = 0.3
"""Progress is written at most this often."""


class Cancelled(Exception):
    """The owner asked for the work to stop."""


@dataclass
class Progress:
    """What a piece of work reports to.

    Parameters
    ----------
    job_id : str
        The job's row.
    """

    job_id: str
    _told: float = 0.0

    def __call__(self, done: int, whole: int, said: str = "") -> None:
        """Report `done` of `whole`, in words; raises `Cancelled` when the owner asked for it."""
        now = time.monotonic()
        if now - self._told < STEP_S and done < whole:
            return
        self._told = now
        row = Job.objects.filter(pk=self.job_id)
        row.update(done=done, whole=whole, said=said[:120], beat=timezone.now())
        if row.filter(cancel_asked=True).exists():
            raise Cancelled


Work = Callable[[Mapping[str, Any], Progress], Any]
KINDS: dict[str, Work] = {}


def work(kind: str) -> Callable[[Work], Work]:
    """Name a function as a kind of work; it stands in its app's ``jobs.py``, which is found.

    Parameters
    ----------
    kind : str
        Such as ``bench.best``.

    Notes
    -----
    The function takes the arguments (plain JSON values: ids, codes, numbers) and a `Progress`, and
    returns a JSON value. It runs in a process of its own, which is stopped when the owner asks.
    """

    def name(function: Work) -> Work:
        KINDS[kind] = function
        return function

    return name


def found(kind: str) -> Work:
    """Return the function of a kind."""
    if kind not in KINDS:
        autodiscover_modules("jobs")
    return KINDS[kind]


def start(
    request: Request,
    kind: str,
    words: str,
    arguments: Mapping[str, Any],
    *,
    team: Team,
    record: Model | None = None,
    back: str = "",
) -> Job:
    """Put a piece of work into the queue.

    Parameters
    ----------
    request : Request
        Whose work it is.
    kind : str
        As named with `work`.
    words : str
        What the page calls it: "Best set-up for AVG-001".
    arguments : mapping
        Plain JSON values.
    team : Team
        Whose record it is about.
    record : Model, optional
        What it is about; the work goes away with it.
    back : str, optional
        Address where the result is shown; the job's page links to it when the work is done.
    """
    found(kind)
    job = Job.objects.create(
        kind=kind,
        words=words[:120],
        owner=request.user,
        team=team,
        record=str(record.pk) if record is not None else "",
        back=back,
        arguments=dict(arguments),
    )
    if getattr(settings, "WORK_AT_ONCE", False):
        from chairwright_desk.jobs.run import claim, perform

        if claim(job.pk):
            perform(job.pk)
        job.refresh_from_db()
    return job
