"""The whole API from its own OpenAPI document: made-up calls, good and bad, by schemathesis."""

from __future__ import annotations

import json
import re
import time
from collections.abc import Iterator
from typing import Any

import pytest
import schemathesis
from django.core.cache import cache
from django.core.signals import request_finished, request_started
from django.core.wsgi import get_wsgi_application
from django.db import close_old_connections
from hypothesis import HealthCheck, Phase, given, settings
from schemathesis import GenerationMode
from schemathesis.checks import CHECKS
from schemathesis.config import GenerationConfig, ProjectConfig, ProjectsConfig, SchemathesisConfig

from chairwright_desk.api.document import document

from ..kit.world import World
from .samples import OPERATIONS, ids, token

EXAMPLES = 12
LONGEST_S = 90
ID = re.compile("[2-9a-z]{16}")
BY_CONTENT = {
    "put_identity",
    "put_measures",
    "put_surroundings",
    "new_setup",
    "change_setup",
    "judge_setup",
    "best_setup",
    "new_order",
    "step_order",
}
"""Calls whose body can be refused for what its text, day or codes say, which no shape tells."""


@pytest.fixture
def schema(world: World, settings: Any) -> Iterator[Any]:
    """The document as it is served, with ids that are there in place of most made-up ones."""
    settings.API_CALLS_A_MINUTE = settings.API_WRONG_A_MINUTE = 1_000_000
    cache.clear()
    every = OPERATIONS.values()
    known = {name: value for each in every for name, value in ids(each, world).items()}

    # After the ids are made: the test client that makes them connects these again.
    for signal in (request_started, request_finished):
        signal.disconnect(close_old_connections)
    project = ProjectConfig(
        generation=GenerationConfig(
            deterministic=True, database="none", with_security_parameters=False
        )
    )
    config = SchemathesisConfig(projects=ProjectsConfig(default=project))
    schema = schemathesis.openapi.from_wsgi(
        "/api/openapi.json", get_wsgi_application(), config=config
    )

    @schema.hook
    def map_path_parameters(_context: Any, path_parameters: Any) -> Any:
        """Put ids that are there, but for some."""
        for name, value in (path_parameters or {}).items():
            if ID.fullmatch(str(value)) and value[0] not in "23":
                path_parameters[name] = known[name]
        return path_parameters

    @schema.hook
    def map_body(_context: Any, body: Any) -> Any:
        """Put the team, the client and the set-up that are there, and a revision that is near."""
        for name, value in known.items() | {("team_id", world.team.pk)}:
            short = name.removesuffix("_id")
            if isinstance(body, dict) and ID.fullmatch(str(body.get(short))):
                body[short] = value
        if isinstance(body, dict) and type(body.get("revision")) is int and body["revision"] >= 0:
            world.client.refresh_from_db()
            body["revision"] = world.client.revision + body["revision"] % 2
        return body

    yield schema
    for signal in (request_started, request_finished):
        signal.connect(close_old_connections)
    cache.clear()


def _try(each: Any, mode: GenerationMode, text: str, tried: set[int]) -> None:
    """Make calls of one operation and hold each answer to the document."""
    name = each.definition.raw["operationId"]
    left_out = ["positive_data_acceptance"] if name in BY_CONTENT else []
    checks = [CHECKS.get_one(n) for n in CHECKS.get_all_names() if n not in left_out]

    @given(case=each.as_strategy(generation_mode=mode))
    @settings(
        max_examples=EXAMPLES,
        deadline=None,
        derandomize=True,
        database=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    def run(case: Any) -> None:
        headers = {"Authorization": f"Bearer {text}"}
        tried.add(case.call_and_validate(headers=headers, checks=checks).status_code)

    run()


def test_every_call_of_the_document_is_answered_as_it_says(schema: Any, world: World) -> None:
    began = time.monotonic()
    text = token(world, "clinician")
    tried: dict[str, set[int]] = {name: set() for name in OPERATIONS}
    for found in schema.get_all_operations():
        each = found.ok()
        for mode in (GenerationMode.POSITIVE, GenerationMode.NEGATIVE):
            if mode is GenerationMode.POSITIVE or each.body or list(each.iter_parameters()):
                _try(each, mode, text, tried[each.definition.raw["operationId"]])
    for name, statuses in tried.items():
        assert min(statuses) < 300 or name in BY_CONTENT, (name, statuses)
    assert time.monotonic() - began < LONGEST_S


def test_the_document_holds_to_openapi_3_1() -> None:
    told = json.loads(json.dumps(document()))
    assert told["openapi"] == "3.1.0"
    operations = [o for path in told["paths"].values() for o in path.values()]
    assert {o["operationId"] for o in operations} == set(OPERATIONS)
    shapes = told["components"]["schemas"]
    assert shapes["ClientChange"]["additionalProperties"] is False
    for shape in shapes.values():
        assert shape.get("additionalProperties", False) is False
