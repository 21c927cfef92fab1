"""The places to go from the head of every page, and what each template may use."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from django.http import HttpRequest


@dataclass(frozen=True)
class Place:
    """One place in the head of the page.

    Parameters
    ----------
    words : str
        As shown.
    view : str
        Name of the address.
    action : str
        Shown to those who may do it.
    """

    words: str
    view: str
    action: str


PLACES = (
    Place("Clients", "clients:list", "client.see"),
    Place("Work under way", "jobs:list", "job.own"),
    Place("People", "accounts:people", "people.change"),
    Place("Trail", "audit:list", "trail.see"),
)


def desk(request: HttpRequest) -> dict[str, Any]:
    """Return `places` and `units` for the templates; nothing of it is read before it is used."""

    def places() -> list[Place]:
        user = request.user
        return [each for each in PLACES if user.is_authenticated and user.may(each.action)]

    def units() -> str:
        return request.user.units if request.user.is_authenticated else "mm"

    return {"places": places, "units": units}
