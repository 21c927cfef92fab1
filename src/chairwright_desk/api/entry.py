"""Who asks: a token, or a browser's session with the mark of one of our pages."""

from __future__ import annotations

import time

from django.conf import settings
from django.core.cache import cache
from django.http import HttpRequest, HttpResponse
from django.middleware.csrf import CsrfViewMiddleware

from chairwright_desk.accounts.links import hashed
from chairwright_desk.accounts.models import User
from chairwright_desk.api import faults
from chairwright_desk.api.operations import Operation
from chairwright_desk.api.tokens import token_of

CALLS_A_MINUTE = 600
WRONG_A_MINUTE = 30
BEARER = "bearer "


class _Mark(CsrfViewMiddleware):
    """Django's check of a form's mark, told as a fault."""

    def _reject(self, request: HttpRequest, reason: str) -> HttpResponse:
        raise faults.cross_site()


def _nothing(_request: HttpRequest) -> HttpResponse:
    return HttpResponse()


def let_in(request: HttpRequest, operation: Operation) -> User:
    """Return who asks, if he or she may ask this.

    Parameters
    ----------
    request : HttpRequest
    operation : Operation

    Raises
    ------
    Fault
        401, 403 or 429.
    """
    header = request.headers.get("Authorization")
    user = _by_session(request) if header is None else _by_token(request, header, operation)
    _count(f"calls.{user.pk}", getattr(settings, "API_CALLS_A_MINUTE", CALLS_A_MINUTE))
    if not user.may(operation.action):
        raise faults.not_allowed()
    return user


def _by_session(request: HttpRequest) -> User:
    if not request.user.is_authenticated:
        raise faults.stranger()
    _Mark(_nothing).process_view(request, _nothing, (), {})
    return request.user


def _by_token(request: HttpRequest, header: str, operation: Operation) -> User:
    text = header[len(BEARER) :].strip() if header.lower().startswith(BEARER) else ""
    token = token_of(text) if text else None
    if token is None:
        here = hashed(str(request.META.get("REMOTE_ADDR", "")))
        _count(f"wrong.{here}", getattr(settings, "API_WRONG_A_MINUTE", WRONG_A_MINUTE))
        msg = "The token is unknown, has ended, or was revoked."
        raise faults.stranger(msg)
    if token.reads_only and operation.changes:
        raise faults.reads_only()
    return token.user


def _count(name: str, most: int) -> None:
    now = time.time()
    key = f"api.{name}.{int(now // 60)}"
    cache.add(key, 0, timeout=120)
    if cache.incr(key) > most:
        raise faults.too_many(60 - int(now % 60))
