"""One view for each address: method, person, body, then the operation itself."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.core.exceptions import PermissionDenied
from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.csrf import csrf_exempt

from chairwright_desk.api import faults
from chairwright_desk.api.body import body_of, page_of
from chairwright_desk.api.bridge import InputError
from chairwright_desk.api.entry import let_in
from chairwright_desk.api.faults import Fault
from chairwright_desk.api.operations import JSON, Call, Operation
from chairwright_desk.base.access import View


def resource(known: Mapping[str, Operation]) -> View:
    """Return the view of one address.

    Parameters
    ----------
    known : mapping of str to Operation
        By method.

    Notes
    -----
    The view is exempt from Django's own check of forms because a token needs none;
    `chairwright_desk.api.entry` makes the same check for a session.
    """

    @csrf_exempt
    def view(request: HttpRequest, **ids: str) -> HttpResponse:
        try:
            return _answer(request, known, ids)
        except Fault as fault:
            return fault.response()
        except Http404:
            return faults.not_found().response()
        except PermissionDenied:
            return faults.not_allowed().response()
        except InputError as error:
            return faults.not_readable(error).response()

    view.operations = known  # type: ignore[attr-defined]
    return view


def _answer(
    request: HttpRequest, known: Mapping[str, Operation], ids: Mapping[str, str]
) -> HttpResponse:
    method = "GET" if request.method == "HEAD" else str(request.method)
    if method not in known:
        raise faults.wrong_method(method, {*known, *(["HEAD"] if "GET" in known else [])})
    operation = known[method]
    entered: Any = request
    entered.user = let_in(request, operation)
    entered.action = operation.action
    call = Call(entered, body_of(request, operation), page_of(request, operation))
    given = operation.handler(call, **ids)
    if isinstance(given, HttpResponse):
        return given
    return HttpResponse(given.model_dump_json(), content_type=JSON, status=operation.status)
