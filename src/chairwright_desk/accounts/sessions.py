"""How long a sign-in lasts: a while without a page, and a day's work in all."""

from __future__ import annotations

import time

from django.conf import settings
from django.contrib.auth import logout
from django.contrib.auth.signals import user_logged_in
from django.contrib.sessions.exceptions import SessionInterrupted
from django.contrib.sessions.middleware import SessionMiddleware
from django.dispatch import receiver
from django.http import HttpRequest, HttpResponse
from django.utils import translation

from chairwright_desk.base.headers import Answer

BEGAN, SEEN = "began", "seen"
STEP_S = 60
"""The last page is noted once a minute, not at each request."""


class Sessions(SessionMiddleware):
    """Django's sessions; a page that was made is shown even if its minute cannot be noted."""

    def process_response(self, request: HttpRequest, response: HttpResponse) -> HttpResponse:
        """Save the session; leave it when the database does not take it just now."""
        try:
            return super().process_response(request, response)
        except SessionInterrupted:
            return response


@receiver(user_logged_in)
def note_beginning(request: HttpRequest, **_: object) -> None:
    """Note when a session begins."""
    if hasattr(request, "session"):
        request.session[BEGAN] = request.session[SEEN] = int(time.time())


def session_limits(get_response: Answer) -> Answer:
    """Middleware: end a session that is idle or old; use the person's language."""

    def answer(request: HttpRequest) -> HttpResponse:
        if not request.user.is_authenticated:
            return get_response(request)
        now = int(time.time())
        began = request.session.setdefault(BEGAN, now)
        seen = request.session.setdefault(SEEN, now)
        if now - seen > settings.SESSION_IDLE_S or now - began > settings.SESSION_LONGEST_S:
            logout(request)
            return get_response(request)
        if now - seen >= STEP_S:
            request.session[SEEN] = now
        with translation.override(request.user.language):
            return get_response(request)

    return answer
