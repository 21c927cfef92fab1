"""The OpenAPI 3.1 document, made from the table of operations and the shapes."""

from __future__ import annotations

from functools import cache
from http import HTTPStatus
from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import models_json_schema

from chairwright_desk.accounts.roles import TABLE
from chairwright_desk.api.operations import JSON, Operation, by_address, operations
from chairwright_desk.api.shapes.base import FaultGiven, OvertakenGiven
from chairwright_desk.orders.bridge import WORDS

VERSION = "1"
ALWAYS = (401, 403, 429)
WITH_BODY = (400, 413, 415, 422)
SAYS = (
    "The same records, roles and teams as the pages of the desk. Name, birth and diagnosis of a "
    "client stand in a call of their own, for those who may see them. Come with a token of your "
    "account page, or with the session of a browser and the mark of one of our pages. Lengths "
    "are in mm, masses in kg, angles in deg."
)
IDS = {"type": "string", "pattern": "^[2-9a-z]{16}$"}
PAGE = {
    "name": "page",
    "in": "query",
    "required": False,
    "schema": {"type": "integer", "minimum": 1, "maximum": 999_999, "default": 1},
}
SECURITY = {
    "token": {"type": "http", "scheme": "bearer"},
    "session": {"type": "apiKey", "in": "cookie", "name": "desk_session"},
}


@cache
def document() -> dict[str, Any]:
    """Return the whole document."""
    paths: dict[str, Any] = {}
    for address, known in by_address().items():
        paths[f"/api/{address}"] = {m.lower(): _operation(o) for m, o in known.items()}
    return {
        "openapi": "3.1.0",
        "info": {"title": "chairwright desk", "version": VERSION, "description": SAYS},
        "servers": [{"url": "/"}],
        "security": [{"token": []}, {"session": []}],
        "paths": paths,
        "components": {"schemas": _shapes(), "securitySchemes": SECURITY},
    }


def _shapes() -> dict[str, Any]:
    taken = {each.takes for each in operations() if each.takes}
    given = {each.gives for each in operations() if each.gives}
    named: list[Any] = [(shape, "validation") for shape in taken]
    named += [(s, "serialization") for s in {*given, FaultGiven, OvertakenGiven}]
    named.sort(key=lambda pair: pair[0].__name__)
    _, made = models_json_schema(named, ref_template="#/components/schemas/{model}")
    return dict(made["$defs"])


def _of(shape: type[BaseModel]) -> dict[str, Any]:
    return {JSON: {"schema": {"$ref": f"#/components/schemas/{shape.__name__}"}}}


def _operation(each: Operation) -> dict[str, Any]:
    roles = ", ".join(sorted(role.label for role in TABLE[each.action]))
    told: dict[str, Any] = {
        "operationId": each.name,
        "tags": [each.address.partition("/")[0]],
        "summary": each.words,
        "description": f"For: {roles}.",
        "responses": _answers(each),
    }
    shapes = {"paper_name": {"type": "string", "enum": list(WORDS)}}
    parameters = [
        {"name": i, "in": "path", "required": True, "schema": shapes.get(i, IDS)} for i in each.ids
    ]
    if parameters or each.paged:
        told["parameters"] = [*parameters, *([PAGE] if each.paged else [])]
    if each.takes:
        told["requestBody"] = {"required": True, "content": _of(each.takes)}
    return told


def _answers(each: Operation) -> dict[str, Any]:
    content = _of(each.gives) if each.gives else {each.media: {}}
    good = {"description": "Done.", "content": content}
    faults = {*ALWAYS, 422, *each.faults, *(WITH_BODY if each.takes else ())}
    faults |= {404} if each.ids else set()
    return {str(each.status): good} | {str(s): _fault(s) for s in sorted(faults)}


def _fault(status: int) -> dict[str, Any]:
    shape = OvertakenGiven if status == HTTPStatus.CONFLICT else FaultGiven
    return {"description": HTTPStatus(status).phrase, "content": _of(shape)}
