"""Who may open which page and which record: the two doors that every view goes through."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import wraps
from typing import Any, TypeVar, cast

from django.contrib.auth.models import AnonymousUser
from django.core.exceptions import PermissionDenied
from django.db.models import Model, QuerySet
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseNotAllowed

from chairwright_desk.accounts.roles import TABLE
from chairwright_desk.base import errors
from chairwright_desk.base.requests import Request

Record = TypeVar("Record", bound=Model)
View = Callable[..., HttpResponse]


@dataclass(frozen=True)
class Page:
    """What a view asks of its visitor.

    Parameters
    ----------
    action : str or None
        Row of the table of roles; None when strangers may come (signing in).
    methods : tuple of str
        Methods that the view answers.
    """

    action: str | None
    methods: tuple[str, ...]


def page(action: str, *methods: str) -> Callable[[View], View]:
    """Mark a view as a page for those who may do `action`.

    Parameters
    ----------
    action : str
        Row of `chairwright_desk.accounts.roles.TABLE`.
    *methods : str
        Methods that it answers; GET when none is named (HEAD comes with GET).

    Notes
    -----
    A wrong method is answered with 405, a stranger is sent to sign in (what a form held is kept),
    a person whose roles do not allow the action gets 403.
    """
    if action not in TABLE:
        raise KeyError(action)
    about = Page(action, methods or ("GET",))

    def decorate(view: View) -> View:
        @wraps(view)
        def guarded(request: Request, *args: Any, **kwargs: Any) -> HttpResponse:
            refusal = _wrong_method(request, about)
            if refusal is None and isinstance(request.user, AnonymousUser):
                refusal = errors.sign_in_first(request)
            if refusal is not None:
                return refusal
            if not request.user.may(action):
                raise PermissionDenied
            request.action = action
            return view(request, *args, **kwargs)

        return _marked(guarded, about)

    return decorate


def open_page(*methods: str) -> Callable[[View], View]:
    """Mark a view that strangers may open.

    Parameters
    ----------
    *methods : str
        Methods that it answers; GET when none is named.
    """
    about = Page(None, methods or ("GET",))

    def decorate(view: View) -> View:
        @wraps(view)
        def guarded(request: HttpRequest, *args: Any, **kwargs: Any) -> HttpResponse:
            return _wrong_method(request, about) or view(request, *args, **kwargs)

        return _marked(guarded, about)

    return decorate


def _marked(view: View, about: Page) -> View:
    view.page = about  # type: ignore[attr-defined]
    return view


def _wrong_method(request: HttpRequest, about: Page) -> HttpResponse | None:
    allowed = {*about.methods, "HEAD"} if "GET" in about.methods else set(about.methods)
    if request.method in allowed:
        return None
    return HttpResponseNotAllowed(sorted(allowed))


def team_path(model: type[Model]) -> str:
    """Return the way from a model to its team, as a query writes it (``TEAM_PATH``)."""
    return cast(str, getattr(model, "TEAM_PATH", "team"))


def visible(request: Request, records: QuerySet[Record]) -> QuerySet[Record]:
    """Return the records of the teams in which the visitor may do what the page does."""
    teams = request.user.teams_for(request.action)
    return records.filter(**{f"{team_path(records.model)}__in": teams})


def find(request: Request, records: QuerySet[Record], key: str) -> Record:
    """Return one record by its id.

    Parameters
    ----------
    request : Request
        Of a view marked with `page`.
    records : QuerySet
        Where to look.
    key : str
        The record's id.

    Raises
    ------
    Http404
        No such record, or one of a team of which the visitor is no member.
    PermissionDenied
        A record of the visitor's team that the visitor's role there does not allow.
    """
    if "\0" in key:  # PostgreSQL refuses to compare it
        raise Http404
    way = team_path(records.model)
    found = records.filter(pk=key, **{f"{way}__in": list(request.user.grants)}).first()
    if found is None:
        raise Http404
    team: Any = found
    for step in way.split("__"):
        team = getattr(team, step)
    if team.pk not in request.user.teams_for(request.action):
        raise PermissionDenied
    return found
