"""Every operation, and what it answers to everybody: strangers, other teams, each role."""

from __future__ import annotations

import io
from typing import Any

import pytest
from django.urls import get_resolver
from pypdf import PdfReader

from chairwright_desk.accounts.roles import Role
from chairwright_desk.api.operations import Operation

from ..kit.standing import _views
from ..kit.world import UNKNOWN, WHO, World
from .samples import BODIES, OPERATIONS, PERSONAL, allowed, ask, ids, send, token

ELSEWHERE = {"Origin": "https://elsewhere.example"}
ONCE = {"new_client"}
"""A second good call of the same is another thing: the first has changed what it begins from."""
METHODS = {"GET", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE"}
SAID = {"error", "what", "remedy", "problems"}

EVERY = list(OPERATIONS.values())
each_operation = pytest.mark.parametrize("each", EVERY, ids=lambda each: each.name)
each_with_body = pytest.mark.parametrize(
    "each", [each for each in EVERY if each.takes], ids=lambda each: each.name
)
each_of_a_record = pytest.mark.parametrize(
    "each", [each for each in EVERY if each.ids], ids=lambda each: each.name
)


def refused(answer: Any, status: int) -> dict[str, Any]:
    """A refusal, which is JSON that says what and what to do."""
    assert answer.status_code == status, answer.content
    assert answer.headers["Content-Type"] == "application/json"
    told: dict[str, Any] = answer.json()
    assert told.keys() >= SAID
    assert told["error"]
    assert told["what"]
    assert told["remedy"]
    return told


def test_every_operation_has_a_sample_and_an_address_of_its_own() -> None:
    assert {each.name for each in EVERY if each.takes} == set(BODIES)
    served = {
        operation.name
        for _, view in _views(get_resolver().url_patterns)
        for operation in getattr(view.callback, "operations", {}).values()
    }
    assert served == set(OPERATIONS)
    assert len({(each.method, each.address) for each in EVERY}) == len(OPERATIONS)


@each_operation
def test_it_works_for_each_role_of_the_table(each: Operation, world: World) -> None:
    for role in allowed(each):
        if each.name in ONCE and role != "clinician":
            continue
        answer = ask(each, world, token(world, role))
        assert answer.status_code == each.status, (role, answer.content)
        if each.gives:
            each.gives.model_validate_json(answer.content)


@each_operation
def test_it_works_with_a_session_too(each: Operation, world: World) -> None:
    answer = send(world.visitor(allowed(each)[0]), each, world)
    assert answer.status_code == each.status, answer.content
    assert answer.headers["Cache-Control"] == "no-store"


@each_operation
def test_other_roles_may_not(each: Operation, world: World) -> None:
    for role in set(Role.values) - set(allowed(each)):
        status = 404 if each.name in PERSONAL and role != "administrator" else 403
        refused(ask(each, world, token(world, role)), status)


@each_operation
def test_a_stranger_is_refused(each: Operation, world: World) -> None:
    answer = ask(each, world)
    refused(answer, 401)
    assert answer.headers["WWW-Authenticate"].startswith("Bearer")
    refused(ask(each, world, "desk_wrong"), 401)


@each_of_a_record
def test_another_team_finds_nothing(each: Operation, world: World) -> None:
    for role in allowed(each):
        refused(ask(each, world, token(world, role, other=True)), 404)


@each_of_a_record
def test_an_unknown_id_is_not_found(each: Operation, world: World) -> None:
    good, text = ids(each, world), token(world, allowed(each)[0])
    for name in good:
        for wrong in (UNKNOWN, "%00", "..%2F", "é" * 40):
            refused(ask(each, world, text, named={**good, name: wrong}), 404)


@each_operation
def test_a_wrong_method_is_refused(each: Operation, world: World) -> None:
    address = [other for other in EVERY if other.address == each.address]
    known = {other.method for other in address}
    for method in METHODS - known:
        answer = ask(each, world, token(world, allowed(each)[0]), method=method)
        refused(answer, 405)
        assert set(answer.headers["Allow"].split(", ")) - {"HEAD"} == known


@each_operation
def test_a_session_from_elsewhere_is_refused_where_it_could_change(
    each: Operation, world: World
) -> None:
    visitor = world.visitor(allowed(each)[0], checks=True)
    if each.method != "GET":
        refused(send(visitor, each, world, headers=ELSEWHERE), 403)
        refused(send(visitor, each, world), 403)


@each_operation
def test_a_token_that_may_only_read_changes_nothing(each: Operation, world: World) -> None:
    answer = ask(each, world, token(world, allowed(each)[0], reads_only=True))
    if each.changes:
        assert "only read" in refused(answer, 403)["what"]
    else:
        assert answer.status_code == each.status


@each_with_body
def test_only_json_is_taken(each: Operation, world: World) -> None:
    text = token(world, allowed(each)[0])
    for kind in ("text/plain", "multipart/form-data; boundary=x", "application/xml", ""):
        refused(ask(each, world, text, kind=kind), 415)
    refused(ask(each, world, text, kind="application/json; charset=utf-16"), 415)


@each_with_body
def test_broken_json_is_told(each: Operation, world: World) -> None:
    text = token(world, allowed(each)[0])
    for sent in (b"{", b"\xff", b'{"a": NaN}', b'{"a": 1, "a": 2}', b"[" * 100_000):
        refused(ask(each, world, text, sent=sent), 400)


@each_with_body
def test_unknown_fields_are_refused_by_name(each: Operation, world: World) -> None:
    sent = body_with(each, world, surprise=1)
    told = refused(ask(each, world, token(world, allowed(each)[0]), sent=sent), 422)
    assert told["problems"] == [
        {
            "where": "surprise",
            "must": "must not be there",
            "got": "1",
            "remedy": "Leave it out; see /api/openapi.json.",
        }
    ]


@each_with_body
def test_no_object_is_no_body(each: Operation, world: World) -> None:
    for sent in (b"[]", b"3", b'"a"', b"null"):
        refused(ask(each, world, token(world, allowed(each)[0]), sent=sent), 422)


@each_with_body
def test_a_large_body_is_refused(each: Operation, world: World) -> None:
    sent = b'"' + b"a" * 5_000_001 + b'"'
    refused(ask(each, world, token(world, allowed(each)[0]), sent=sent), 413)


@pytest.mark.parametrize(
    "each", [each for each in EVERY if each.action != "identity.see"], ids=lambda each: each.name
)
def test_no_other_answer_says_who_a_client_is(each: Operation, world: World) -> None:
    answer = ask(each, world, token(world, allowed(each)[0]))
    if each.media == "application/pdf":
        pages = PdfReader(io.BytesIO(answer.content)).pages
        told = "".join(page.extract_text() for page in pages)
        assert world.client.reference in told
    else:
        told = answer.content.decode()
    assert [words for words in WHO if words in told] == []


def body_with(each: Operation, world: World, **more: object) -> str:
    import json

    return json.dumps({**BODIES[each.name](world), **more})
