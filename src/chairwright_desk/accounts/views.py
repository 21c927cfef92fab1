"""Signing in and out."""

from __future__ import annotations

from django.contrib.auth import authenticate, login, logout
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.http import url_has_allowed_host_and_scheme

from chairwright_desk.accounts.forms import SignInForm
from chairwright_desk.accounts.links import good_link, use_link
from chairwright_desk.accounts.models import User
from chairwright_desk.accounts.throttle import forget, must_wait, note_failure
from chairwright_desk.audit.trail import note_sign_in
from chairwright_desk.base.access import open_page
from chairwright_desk.drafts.kept import keep_held

BACKEND = "django.contrib.auth.backends.ModelBackend"
WRONG = "This name and password do not open the desk. Check both and try again."
WAIT = "There were too many wrong tries. Wait 15 minutes, or ask for a sign-in link."
HELD = "held-"


def _next(request: HttpRequest) -> str:
    asked = request.POST.get("next") or request.GET.get("next") or "/"
    ours = url_has_allowed_host_and_scheme(asked, {request.get_host()})
    return asked if ours and asked.startswith("/") else "/"


def _held(request: HttpRequest) -> list[tuple[str, str]]:
    pairs = [(name, value) for name, values in request.POST.lists() for value in values]
    return [(n.removeprefix(HELD), str(v)) for n, v in pairs if n.startswith(HELD)]


@open_page("GET", "POST")
def sign_in(request: HttpRequest) -> HttpResponse:
    """Sign in with name and password; a form held from before is kept as a draft."""
    form = SignInForm(request.POST or None)
    status = 200
    if request.method == "POST" and form.is_valid():
        user, wrong = _checked(request, form.cleaned_data["name"], form.cleaned_data["password"])
        if user is not None:
            return _enter(request, user)
        form.add_error(None, wrong)
        status = 429 if wrong == WAIT else 200
    context = {"form": form, "next": _next(request), "held": _held(request)}
    return render(request, "accounts/sign_in.html", context, status=status)


def _checked(request: HttpRequest, name: str, password: str) -> tuple[User | None, str]:
    if must_wait(name):
        note_sign_in(request, None, "sign-in refused")
        return None, WAIT
    user = authenticate(request, username=name.strip().lower(), password=password)
    if user is None:
        note_failure(name)
        note_sign_in(request, None, "sign-in failed")
        return None, WRONG
    forget(name)
    assert isinstance(user, User)  # noqa: S101 - the only kind of user there is
    return user, ""


def _enter(request: HttpRequest, user: User) -> HttpResponse:
    login(request, user, backend=BACKEND)
    note_sign_in(request, user, "sign-in")
    keep_held(user, _held(request))
    return redirect(_next(request))


@open_page("GET", "POST")
def link(request: HttpRequest, token: str) -> HttpResponse:
    """Open the desk by a sign-in link: a look uses nothing up, the button does."""
    if request.method == "POST":
        user = use_link(token)
        if user is not None:
            return _enter(request, user)
    good = good_link(token) is not None
    return render(request, "accounts/link.html", {"good": good}, status=200 if good else 404)


@open_page("POST")
def sign_out(request: HttpRequest) -> HttpResponse:
    """Sign out and go to the sign-in page."""
    if request.user.is_authenticated:
        note_sign_in(request, request.user, "sign-out")
    logout(request)
    return redirect("accounts:sign-in")
