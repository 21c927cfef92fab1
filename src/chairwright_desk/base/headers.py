"""Headers of every answer: nothing from elsewhere, nothing inline, nothing framed."""

from __future__ import annotations

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse, HttpResponseNotAllowed

from chairwright_desk.base import errors

POLICY = "; ".join(
    [
        "default-src 'self'",
        "script-src 'self'",
        "style-src 'self'",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'self'",
        "frame-ancestors 'none'",
    ]
)
HEADERS = {
    "Content-Security-Policy": POLICY,
    "Referrer-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), microphone=(), geolocation=(), payment=(), usb=()",
}
Answer = Callable[[HttpRequest], HttpResponse]


def headers(get_response: Answer) -> Answer:
    """Middleware: add the headers; pages are not stored; a wrong method gets a readable page."""

    def answer(request: HttpRequest) -> HttpResponse:
        response = get_response(request)
        if isinstance(response, HttpResponseNotAllowed):
            response = errors.wrong_method(request, response)
        for name, value in HEADERS.items():
            response.headers.setdefault(name, value)
        if not request.path.startswith("/static/"):
            response.headers.setdefault("Cache-Control", "no-store")
        return response

    return answer
