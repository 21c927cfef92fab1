"""What the desk writes to its log while everything is opened, refused, and made to fail."""

from __future__ import annotations

import io
import json
import logging
from collections.abc import Iterator
from typing import Any
from unittest import mock

import pytest
from django.db import DatabaseError

from chairwright_desk.base.logs import QuietFormatter
from chairwright_desk.clients.models import Client, Identity

from ..kit.standing import Standing, entries
from ..kit.world import UNKNOWN, World

PLANT = "Zwetschgenbaum"
WALKED: list[Standing] = [each for each in entries() if each.page.action]


@pytest.fixture
def log() -> Iterator[io.StringIO]:
    """What the desk's own handler would write."""
    written = io.StringIO()
    handler = logging.StreamHandler(written)
    handler.setFormatter(QuietFormatter())
    logging.getLogger().addHandler(handler)
    yield written
    logging.getLogger().removeHandler(handler)


@pytest.fixture
def planted(world: World) -> World:
    """A world whose client is called by the word in everything that says who it is."""
    Client.objects.filter(pk=world.client.pk).update(reference=PLANT)
    Identity.objects.filter(client=world.client).update(name=PLANT, diagnosis=PLANT)
    world.client.refresh_from_db()
    return world


def _forms(entry: Standing, world: World) -> list[dict[str, Any]]:
    good = entry.data(world)
    return [dict.fromkeys(good, PLANT), {**good, "surprise": PLANT, PLANT: PLANT}]


@pytest.mark.parametrize("entry", WALKED, ids=str)
def test_opening_and_refusing_writes_nothing_of_a_client(
    entry: Standing, planted: World, log: io.StringIO
) -> None:
    visitor, stranger = planted.visitor(entry.role), planted.visitor(entry.role, other=True)
    address = entry.address(planted)
    if entry.reads:
        visitor.get(address)
        stranger.get(address)
    if "POST" in entry.page.methods:
        for form in _forms(entry, planted):
            stranger.post(address, form)
            visitor.post(address, form)
    visitor.put(address, PLANT)
    assert PLANT not in log.getvalue()


@pytest.mark.parametrize("fault", [ValueError, DatabaseError, OSError], ids=lambda f: f.__name__)
def test_a_fault_that_holds_values_is_written_by_its_place_only(
    planted: World, log: io.StringIO, fault: type[Exception]
) -> None:
    visitor = planted.visitor("clinician")
    visitor.raise_request_exception = False
    address = f"/clients/{planted.client.pk}/change/"
    target = "chairwright_desk.clients.views.find"
    with mock.patch(target, side_effect=fault(PLANT)):
        answer = visitor.post(
            address, {"reference": PLANT}, headers={"Origin": "http://testserver"}
        )
    assert answer.status_code in (500, 503)
    written = log.getvalue()
    assert fault.__name__ in written
    assert "views.py" in written
    assert PLANT not in written


def test_calls_that_fail_write_nothing_of_a_client(planted: World, log: io.StringIO) -> None:
    visitor = planted.visitor("clinician")
    visitor.raise_request_exception = False
    sent = json.dumps({"holds": PLANT, "text": PLANT, "revision": PLANT, "name": PLANT})
    who = f"clients/{planted.client.pk}/identity"
    for path in ("clients/search", f"clients/{UNKNOWN}", who, "lines/check", "jobs", "no/such"):
        for method in ("POST", "PATCH", "GET", "PUT"):
            visitor.generic(method, f"/api/{path}", sent, content_type="application/json")
    with mock.patch("chairwright_desk.api.calls.clients.visible", side_effect=ValueError(PLANT)):
        sent = json.dumps({"holds": PLANT})
        answer = visitor.post("/api/clients/search", sent, content_type="application/json")
    assert answer.status_code == 500
    assert PLANT not in answer.content.decode()
    written = log.getvalue()
    assert "ValueError" in written
    assert PLANT not in written


def test_work_that_fails_writes_its_place_only(planted: World, log: io.StringIO) -> None:
    from chairwright_desk.jobs.models import Job
    from chairwright_desk.jobs.run import claim, perform

    job = Job.objects.create(
        kind="jobs.rest", words=PLANT, owner=planted.people["clinician"], team=planted.team,
        arguments={"seconds": PLANT},
    )  # fmt: skip
    assert claim(job.pk)
    perform(job.pk)
    written = log.getvalue()
    assert "work failed" in written
    assert PLANT not in written
