"""Pages for what goes wrong: what happened, what is kept, what to do. None needs the database."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from dataclasses import dataclass
from urllib.parse import urlencode, urlsplit

from django.conf import settings
from django.core.exceptions import RequestDataTooBig
from django.db import Error as DatabaseError
from django.http import HttpRequest, HttpResponse, HttpResponseNotAllowed, JsonResponse
from django.shortcuts import redirect, render
from django.urls import reverse

NOT_HELD = {"csrfmiddlewaretoken", "password", "old_password", "new_password", "new_password_again"}
MOST_HELD = 2000
SIGN_IN_AT = "X-Sign-In-At"
"""Header for the page's script: it sends the form it stands in, so that nothing typed is lost."""


@dataclass(frozen=True)
class Trouble:
    """One page of trouble.

    Parameters
    ----------
    status : int
        Of the answer.
    title, what, remedy : str
        Heading, what happened, what to do.
    """

    status: int
    title: str
    what: str
    remedy: str


NOT_UNDERSTOOD = Trouble(
    400,
    "This request could not be read",
    "Part of what the browser sent was missing or damaged.",
    "Go back, load the page again and send it once more.",
)
NOT_ALLOWED = Trouble(
    403,
    "Your role does not include this page",
    "You are signed in, but this page is for other roles.",
    "Ask an administrator of the desk when you need it for your work.",
)
FORM_REFUSED = Trouble(
    403,
    "This form could not be accepted",
    "It came from an old page, or from a page that is not part of the desk. Nothing was changed.",
    "Load the page again and send the form from there.",
)
NOT_FOUND = Trouble(
    404,
    "There is no such page",
    "The address does not exist, or the record belongs to another team.",
    "Check the address, or start from the list of clients.",
)
WRONG_METHOD = Trouble(
    405,
    "This address cannot be used in this way",
    "It was opened as a page where it takes a form, or the other way round. Nothing was changed.",
    "Go back and use the button on the page.",
)
TOO_LARGE = Trouble(
    413,
    "This file is too large",
    "The desk takes files of up to 50 MB. Nothing was changed.",
    "Make the picture or file smaller and send it again.",
)
WENT_WRONG = Trouble(
    500,
    "Something went wrong in the desk",
    "The fault lies in the program, not in what you did. What was saved before is safe.",
    "Send it again; when it happens twice, tell the person who looks after the desk.",
)
NO_STORE = Trouble(
    503,
    "The desk cannot save just now",
    "The database did not answer: the disk may be full, the folder may be read-only, or another "
    "program holds the file.",
    "Free some space or close the other program, then send it again. Your input is still here.",
)
SIGNED_OUT = Trouble(
    401,
    "You have been signed out",
    "Too much time has passed since your last page. Nothing was changed.",
    "Sign in again; your input is kept and will be in the form.",
)


def page_of(
    request: HttpRequest, trouble: Trouble, held: Iterable[tuple[str, str]] = ()
) -> HttpResponse:
    """Return the page of one trouble; JSON for the programs that ask under ``/api/``.

    Parameters
    ----------
    request : HttpRequest
        What was asked.
    trouble : Trouble
        What to say.
    held : iterable of (str, str)
        Names and values of a form, to be sent once more.
    """
    if request.path.startswith("/api/"):
        told = {"error": trouble.title, "what": trouble.what, "remedy": trouble.remedy}
        return JsonResponse({**told, "problems": []}, status=trouble.status)
    context = {"trouble": trouble, "held": list(held), "again": request.path}
    return render(request, "base/trouble.html", context, status=trouble.status)


def held_fields(request: HttpRequest) -> list[tuple[str, str]]:
    """Return the fields of a form that one of our own pages sent, without passwords."""
    if request.method != "POST" or not from_own_page(request):
        return []
    pairs = [(name, value) for name, values in request.POST.lists() for value in values]
    return [(name, str(value)) for name, value in pairs if name not in NOT_HELD][:MOST_HELD]


def from_own_page(request: HttpRequest) -> bool:
    """Return whether the browser says that the form stood on a page of this desk."""
    origin = request.headers.get("Origin", "")
    return bool(origin) and urlsplit(origin).netloc == request.get_host()


def sign_in_first(request: HttpRequest) -> HttpResponse:
    """Send a stranger to the sign-in page; a form that was sent is held there."""
    if request.path.startswith("/api/"):
        return page_of(request, SIGNED_OUT)
    address = reverse(settings.LOGIN_URL)
    if request.headers.get("HX-Request"):
        shown = urlsplit(request.headers.get("HX-Current-URL", "")).path or "/"
        response = HttpResponse(status=401)
        response.headers[SIGN_IN_AT] = f"{address}?{urlencode({'next': shown})}"
        return response
    if request.method != "POST":
        return redirect(f"{address}?{urlencode({'next': request.path})}")
    held = held_fields(request)
    shown = urlsplit(request.headers.get("Referer", "")).path or "/"
    context = {"trouble": SIGNED_OUT, "held": held, "next": shown}
    return render(request, "accounts/sign_in.html", context, status=401)


def not_understood(request: HttpRequest, exception: Exception) -> HttpResponse:
    """400, or 413 when the form holds more text than the desk takes."""
    large = isinstance(exception, RequestDataTooBig)
    return page_of(request, TOO_LARGE if large else NOT_UNDERSTOOD)


def not_allowed(request: HttpRequest, exception: Exception) -> HttpResponse:
    """403."""
    return page_of(request, NOT_ALLOWED)


def form_refused(request: HttpRequest, reason: str = "") -> HttpResponse:
    """403 of a form without this browser's mark; one of our own pages may send it once more."""
    return page_of(request, FORM_REFUSED, held_fields(request))


def not_found(request: HttpRequest, exception: Exception) -> HttpResponse:
    """404."""
    return page_of(request, NOT_FOUND)


def wrong_method(request: HttpRequest, refusal: HttpResponseNotAllowed) -> HttpResponse:
    """405, with the methods that are allowed."""
    response = page_of(request, WRONG_METHOD)
    response.headers["Allow"] = refusal.headers["Allow"]
    return response


def too_large(request: HttpRequest) -> HttpResponse:
    """413."""
    return page_of(request, TOO_LARGE)


def went_wrong(request: HttpRequest) -> HttpResponse:
    """500, or 503 with the form held when the database or the disk is at fault."""
    fault = sys.exc_info()[1]
    if isinstance(fault, DatabaseError | OSError):
        return page_of(request, NO_STORE, held_fields(request))
    return page_of(request, WENT_WRONG, held_fields(request))
