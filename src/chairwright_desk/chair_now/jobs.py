"""Long work: fitting again, the years to come, the surest set-up."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from chairwright_desk.chair_now.bridge.refit import searched
from chairwright_desk.chair_now.bridge.sure import find_surest
from chairwright_desk.chair_now.bridge.years import planned
from chairwright_desk.chair_now.known import bench_from
from chairwright_desk.chair_now.models import Study
from chairwright_desk.chair_now.present import present_of
from chairwright_desk.jobs.work import Progress, work

STUDY = "chair_now.study"
Told = Callable[[str], None]


@work(STUDY)
def study(arguments: Mapping[str, Any], progress: Progress) -> dict[str, Any]:
    """Work a study out and keep its result.

    Parameters
    ----------
    arguments : mapping
        ``study`` (id) and ``units`` ("mm" or "in").
    progress : Progress
    """
    found = Study.objects.get(pk=arguments["study"])
    done = 0

    def told(words: str) -> None:
        nonlocal done
        done += 1
        progress(done, done + 1, words)

    result = worked(found.kind, found.asked, arguments["units"], told)
    Study.objects.filter(pk=found.pk).update(result=result)
    return {}


def worked(kind: str, asked: Mapping[str, Any], units: Any, told: Told) -> dict[str, Any]:
    """What comes out, as plain data.

    Parameters
    ----------
    kind : str
        Of `Study.Kind`.
    asked : mapping
    units : {"mm", "in"}
    told : callable
        Told in a few words what is being done.
    """
    if kind == Study.Kind.REFIT:
        told("looking for the smallest changes")
        person, present = present_of(asked)
        return searched(person, present, units)
    if kind == Study.Kind.YEARS:
        extras = None if asked["codes"] is None else tuple(asked["extras"])
        return planned(bench_from(asked, extras=extras), asked["codes"], asked, told)
    told("looking for the best set-up")
    return find_surest(bench_from(asked, extras=tuple(asked["extras"])), told)
