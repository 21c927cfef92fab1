"""What each operation needs: the ids of its address and a good body."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

from django.test import Client as Visitor

from chairwright_desk.accounts.roles import TABLE, Role
from chairwright_desk.api.calls.files import _given
from chairwright_desk.api.operations import Operation, operations
from chairwright_desk.api.tokens import make_token
from chairwright_desk.clients.models import Identity
from chairwright_desk.jobs.models import Job

from ..kit.world import EXAMPLES, World
from ..standing.bench import made
from ..standing.orders import in_status

Body = Callable[[World], dict[str, Any]]
OPERATIONS = {each.name: each for each in operations()}


def _revision(world: World, part: str) -> int:
    made(world)
    return _given(world.client, part).revision


def _file(kind: str, part: str) -> Body:
    text = (EXAMPLES / kind / "avg-001.yaml").read_text("utf-8")
    return lambda world: {"revision": _revision(world, part), "text": text}


def _setup_revision(world: World) -> int:
    setup = made(world)
    setup.refresh_from_db()
    return setup.revision


def _client_revision(world: World) -> int:
    world.client.refresh_from_db()
    return world.client.revision


def _identity_revision(world: World) -> int:
    return Identity.objects.get(client=world.client).revision


ADA = {"name": "Ada", "born": "1960-05-06", "diagnosis": ""}
BODIES: dict[str, Body] = {
    "new_client": lambda w: {"reference": "NEW-001", "team": w.team.pk},
    "search_clients": lambda _w: {"holds": "avg"},
    "change_client": lambda w: {"revision": _client_revision(w), "keep_until": "2031-05-06"},
    "put_identity": lambda w: {**ADA, "revision": _identity_revision(w)},
    "put_measures": _file("clients", "client"),
    "put_surroundings": _file("places", "places"),
    "new_setup": lambda _w: {"name": "first idea"},
    "change_setup": lambda w: {"revision": _setup_revision(w), "codes": {"cushion": "Q50"}},
    "judge_setup": lambda _w: {"codes": {"cushion": "Q50"}},
    "best_setup": lambda _w: {},
    "new_job": lambda w: {"work": "front", "client": w.client.pk, "setup": made(w).pk},
    "new_order": lambda w: {"setup": made(w).pk},
    "step_order": lambda w: {"to": "building", "revision": in_status(w, "ordered").revision},
    "check_line": lambda _w: {"text": "format: chairwright line 1\n"},
}
PERSONAL = {"job", "stop_job"}
"""Records of one person: others of the team do not find them."""


def _job(world: World) -> str:
    if "job" not in world.made:
        world.made["job"] = Job.objects.create(
            kind="bench.trade", words="work", owner=world.people["clinician"], team=world.team
        )
    job: Any = world.made["job"]
    return str(job.pk)


IDS: dict[str, Callable[[World], str]] = {
    "client_id": lambda w: w.client.pk,
    "setup_id": lambda w: made(w).pk,
    "job_id": _job,
    "order_id": lambda w: in_status(w, "ordered").pk,
    "paper_name": lambda _w: "build-sheet",
}


def ids(each: Operation, world: World) -> dict[str, str]:
    """The ids of an operation's address, of records that are there."""
    made(world)
    return {name: IDS[name](world) for name in each.ids}


def address(each: Operation, named: dict[str, str]) -> str:
    return "/api/" + each.address.format(**named)


def body(each: Operation, world: World) -> str | None:
    return None if each.takes is None else json.dumps(BODIES[each.name](world))


def allowed(each: Operation) -> list[str]:
    if each.name in PERSONAL:
        return ["clinician"]
    return [role.value for role in Role if role in TABLE[each.action]]


def token(world: World, role: str, *, other: bool = False, reads_only: bool = False) -> str:
    """The text of a fresh token of a role."""
    person = (world.strangers if other else world.people)[role]
    return make_token(person, "tests", 1, reads_only=reads_only)[1]


def ask(each: Operation, world: World, text: str | None = None, **more: Any) -> Any:
    """Make a good call, by token or (text None) by nobody."""
    headers = {} if text is None else {"Authorization": f"Bearer {text}"}
    return send(Visitor(enforce_csrf_checks=True), each, world, headers=headers, **more)


def send(
    visitor: Visitor,
    each: Operation,
    world: World,
    *,
    headers: dict[str, str] | None = None,
    named: dict[str, str] | None = None,
    method: str = "",
    sent: str | bytes | None = None,
    kind: str = "application/json",
) -> Any:
    """Send a call as a visitor; what is not named is as it should be."""
    data = body(each, world) if sent is None else sent
    return visitor.generic(
        method or each.method,
        address(each, ids(each, world) if named is None else named),
        data or "",
        content_type=kind,
        headers=headers or {},
    )
