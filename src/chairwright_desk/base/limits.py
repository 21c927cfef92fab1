"""The largest upload: told on a page, before the body is looked at."""

from __future__ import annotations

from django.conf import settings
from django.http import HttpRequest, HttpResponse

from chairwright_desk.base import errors
from chairwright_desk.base.headers import Answer


def limits(get_response: Answer) -> Answer:
    """Middleware: refuse a body above the limit with a page that says so."""

    def answer(request: HttpRequest) -> HttpResponse:
        if _length(request) > settings.MOST_UPLOAD_BYTES:
            return errors.too_large(request)
        return get_response(request)

    return answer


def _length(request: HttpRequest) -> int:
    try:
        return int(request.META.get("CONTENT_LENGTH") or 0)
    except ValueError:
        return 0
