"""Reading a call's body and query: JSON only, every field known, every problem named."""

from __future__ import annotations

import json
from typing import Any

from django.conf import settings
from django.core.exceptions import RequestDataTooBig
from django.http import HttpRequest
from pydantic import BaseModel, ValidationError

from chairwright_desk.api import faults
from chairwright_desk.api.faults import Wrong
from chairwright_desk.api.operations import JSON, Operation

LONGEST_PAGE = 6
MOST_PROBLEMS = 20
REMEDIES = {
    "extra_forbidden": ("must not be there", "Leave it out; see /api/openapi.json."),
    "missing": ("must be there", "Add it."),
}


def body_of(request: HttpRequest, operation: Operation) -> BaseModel | None:
    """Return what was sent, read into its shape.

    Parameters
    ----------
    request : HttpRequest
    operation : Operation

    Raises
    ------
    Fault
        400, 413, 415 or 422.
    """
    if operation.takes is None:
        return None
    if request.content_type != JSON or _charset(request) not in ("utf-8", "utf8"):
        raise faults.not_json(request.headers.get("Content-Type", ""))
    try:
        raw = request.body
    except RequestDataTooBig:
        raise faults.too_large(settings.DATA_UPLOAD_MAX_MEMORY_SIZE) from None
    sent = _object(raw)
    try:
        return operation.takes.model_validate_json(raw)
    except ValidationError as error:
        raise _told(error, sent) from None


def _charset(request: HttpRequest) -> str:
    return str((request.content_params or {}).get("charset", "utf-8")).lower()


def _object(raw: bytes) -> Any:
    try:
        return json.loads(raw.decode("utf-8"), object_pairs_hook=_once, parse_constant=_refused)
    except (UnicodeDecodeError, json.JSONDecodeError):
        msg = "The body is not JSON in UTF-8."
        raise faults.broken_json(msg) from None
    except (RecursionError, ValueError) as error:
        msg = f"The body is not JSON as it must be: {error}."
        raise faults.broken_json(msg) from None


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        msg = "a name stands twice in one object"
        raise ValueError(msg)
    return found


def _refused(_: str) -> Any:
    msg = "NaN and Infinity are no JSON"
    raise ValueError(msg)


def _told(error: ValidationError, sent: Any) -> faults.Fault:
    every = error.errors(include_url=False, include_context=False)
    if any(each["type"] == "json_invalid" for each in every):
        return faults.broken_json("The body is not JSON in UTF-8.")
    return faults.not_good(*(_wrong(each) for each in every[:MOST_PROBLEMS]))


def _wrong(each: Any) -> Wrong:
    must, remedy = REMEDIES.get(each["type"], ("", ""))
    words = str(each["msg"]).removeprefix("Value error, ")
    got = "nothing" if each["type"] == "missing" else repr(each["input"])[:80]
    where = ".".join(str(step) for step in each["loc"]) or "the body"
    return Wrong(where, must or words, got, remedy or "Mend it; see /api/openapi.json.")


def page_of(request: HttpRequest, operation: Operation) -> int:
    """Return the page that is asked for, and refuse every query that is not known.

    Parameters
    ----------
    request : HttpRequest
    operation : Operation
    """
    known = {"page"} if operation.paged else set()
    extra = [name for name in request.GET if name not in known]
    typed = request.GET.getlist("page") or ["1"]
    wrong = [Wrong(n[:40], "must not be there", "a query", "Leave it out.") for n in extra]
    if len(typed) > 1 or not _counts(typed[0]):
        must = "must be a whole number from 1, once"
        wrong.append(Wrong("page", must, repr(typed)[:80], "Send ?page=1."))
    if wrong:
        raise faults.not_good(*wrong)
    return int(typed[0])


def _counts(typed: str) -> bool:
    plain = typed.isascii() and typed.isdigit() and len(typed) <= LONGEST_PAGE
    return plain and int(typed) >= 1
