"""Work beside the pages: its result, its faults, and who sees it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

import pytest
from django.test import RequestFactory

from chairwright_desk.jobs.bridge import ChairwrightError
from chairwright_desk.jobs.models import Job
from chairwright_desk.jobs.run import claim, mark_interrupted, perform
from chairwright_desk.jobs.work import KINDS, Progress, start, work

from ..kit.world import World


@pytest.fixture(autouse=True)
def kinds() -> Iterator[None]:
    """Three kinds of work for these tests."""

    @work("tests.sum")
    def add(arguments: Mapping[str, Any], progress: Progress) -> Any:
        for number, _ in enumerate(arguments["numbers"]):
            progress(number + 1, len(arguments["numbers"]), "adding")
        return {"sum": sum(arguments["numbers"])}

    @work("tests.refuse")
    def refuse(arguments: Mapping[str, Any], progress: Progress) -> Any:
        raise ChairwrightError("the seat must be wider")  # noqa: EM101

    @work("tests.break")
    def fail(arguments: Mapping[str, Any], progress: Progress) -> Any:
        raise RuntimeError(str(arguments))

    yield
    for kind in ("tests.sum", "tests.refuse", "tests.break"):
        del KINDS[kind]


def begin(world: World, kind: str, **arguments: Any) -> Job:
    request: Any = RequestFactory().get("/")
    request.user = world.people["clinician"]
    return start(request, kind, "Adding", arguments, team=world.team, record=world.client)


def test_work_ends_with_its_result_and_how_far_it_came(world: World) -> None:
    job = begin(world, "tests.sum", numbers=[1, 2, 3])
    assert (job.state, job.result, job.done, job.whole) == ("done", {"sum": 6}, 3, 3)
    assert "Done" in world.visitor("clinician").get(f"/work/{job.pk}/").content.decode()


def test_a_fault_of_the_input_is_told_and_one_of_the_program_is_not_quoted(world: World) -> None:
    assert begin(world, "tests.refuse").trouble == "the seat must be wider"
    broken = begin(world, "tests.break", name="Wilhelmine")
    assert broken.state == "failed"
    assert "Wilhelmine" not in broken.trouble


def test_an_unknown_kind_is_refused_at_once(world: World) -> None:
    with pytest.raises(KeyError):
        begin(world, "tests.unknown")


def test_two_workers_never_take_the_same_job(world: World) -> None:
    job = Job.objects.create(kind="tests.sum", owner=world.people["clinician"], team=world.team)
    assert claim() == job.pk
    assert claim() is None


def test_work_that_waits_is_stopped_at_once_and_started_again(world: World, settings: Any) -> None:
    settings.WORK_AT_ONCE = False
    job, visitor = begin(world, "tests.sum", numbers=[4]), world.visitor("clinician")
    visitor.post(f"/work/{job.pk}/stop/")
    job.refresh_from_db()
    assert job.state == "cancelled"
    visitor.post(f"/work/{job.pk}/again/")
    again = Job.objects.get(state="waiting")
    assert (again.arguments, again.record) == ({"numbers": [4]}, world.client.pk)


def test_work_that_is_asked_to_stop_stops_at_its_next_report(world: World, settings: Any) -> None:
    settings.WORK_AT_ONCE = False
    job = begin(world, "tests.sum", numbers=[1, 2])
    assert claim() == job.pk
    Job.objects.filter(pk=job.pk).update(cancel_asked=True)
    perform(job.pk)
    job.refresh_from_db()
    assert (job.state, job.result) == ("cancelled", None)


def test_work_whose_worker_is_gone_is_marked(world: World, settings: Any) -> None:
    settings.WORK_AT_ONCE = False
    begin(world, "tests.sum", numbers=[1])
    claim()
    assert mark_interrupted() == 0, "its worker was heard of just now"
    assert mark_interrupted(everything=True) == 1
    assert Job.objects.get().state == "interrupted"
