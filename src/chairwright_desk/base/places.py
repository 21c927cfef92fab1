"""The places to go from the head of every page, and what each template may use."""

from __future__ import annotations

from functools import cache
from typing import Any

from django.apps import apps
from django.http import HttpRequest

from chairwright_desk.base.app import DeskApp, Place, Tab


def desk_apps() -> list[DeskApp]:
    """Return the desk's own apps."""
    return [app for app in apps.get_app_configs() if isinstance(app, DeskApp)]


@cache
def all_places() -> tuple[Place, ...]:
    """Return every place, in order."""
    found = [place for app in desk_apps() for place in app.places]
    return tuple(sorted(found, key=lambda place: place.order))


@cache
def all_tabs() -> tuple[Tab, ...]:
    """Return every part of a client's file, in order."""
    found = [tab for app in desk_apps() for tab in app.client_tabs]
    return tuple(sorted(found, key=lambda tab: tab.order))


def desk(request: HttpRequest) -> dict[str, Any]:
    """Return `places` and `units` for the templates; nothing of it is read before it is used."""

    def places() -> list[Place]:
        user = request.user
        return [each for each in all_places() if user.is_authenticated and user.may(each.action)]

    def units() -> str:
        return request.user.units if request.user.is_authenticated else "mm"

    return {"places": places, "units": units}
