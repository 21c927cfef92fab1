"""The worker: a process beside the pages that takes one job after the other.

Each job runs in a child of its own, so that a stop is a stop at once. Started by the desk as
``python -m chairwright_desk.jobs.worker --beside``; then it ends when the desk ends, however that
ends: the desk holds the other side of its input, which closes with it. A team's server runs it
without ``--beside``, as a service of its own. ``--only`` says that no other worker is there.
"""

from __future__ import annotations

import multiprocessing
import os
import signal
import sys
import threading
import time
from typing import Any

from chairwright_desk import paths

BESIDE, ONLY = "--beside", "--only"
POLL_S = 0.25
BEAT_S = 5.0
PROCESSES: Any = multiprocessing.get_context(
    "fork" if "fork" in multiprocessing.get_all_start_methods() else "spawn"
)


def main() -> int:
    """Take jobs until the desk is gone."""
    import django

    paths.prepare()
    django.setup()
    from chairwright_desk.jobs.run import mark_interrupted

    _be_patient()
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(0))
    gone = _desk_gone()
    mark_interrupted(everything=ONLY in sys.argv)
    while not gone.is_set():
        if not _one_job(gone):
            gone.wait(POLL_S * 2)
    return 0


def _desk_gone() -> threading.Event:
    """Return an event that is set when the desk beside is no more."""
    gone = threading.Event()

    def wait() -> None:
        # Not sys.stdin.read(): its lock would be held in a forked child for ever.
        while os.read(sys.stdin.fileno(), 1):
            pass
        gone.set()

    if BESIDE in sys.argv:
        threading.Thread(target=wait, daemon=True).start()
    return gone


def _be_patient() -> None:
    if hasattr(os, "nice"):
        os.nice(10)


def _one_job(gone: threading.Event) -> bool:
    from django.db import Error, connections

    from chairwright_desk.jobs.run import claim

    try:
        job = claim()
    except Error:
        return False
    if job is None:
        return False
    connections.close_all()
    child = PROCESSES.Process(target=_child, args=(job,))
    child.start()
    try:
        _watch(job, child, gone)
    finally:
        if child.is_alive():
            child.kill()
            child.join()
    return True


def _child(job: str) -> None:
    signal.signal(signal.SIGTERM, signal.SIG_DFL)
    import django

    django.setup()
    from chairwright_desk.jobs.run import perform

    perform(job)


def _watch(job: str, child: Any, gone: threading.Event) -> None:
    from django.utils import timezone

    from chairwright_desk.jobs.models import Job
    from chairwright_desk.jobs.run import end

    row, beat = Job.objects.filter(pk=job), time.monotonic()
    while child.is_alive() and not gone.is_set():
        child.join(POLL_S)
        if not row.filter(cancel_asked=False).exists():
            child.kill()
            child.join()
            end(job, Job.State.CANCELLED)
        if time.monotonic() - beat > BEAT_S:
            row.update(beat=timezone.now())
            beat = time.monotonic()
    if child.is_alive():
        end(job, Job.State.INTERRUPTED)
    else:
        end(job, Job.State.FAILED, trouble="The work stopped without a result (out of memory?).")


if __name__ == "__main__":
    sys.exit(main())
