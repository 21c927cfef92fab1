"""Set-ups of AVG-001 for tests of pages, and how they are stepped."""

from __future__ import annotations

from typing import Any

from django.http import HttpResponse
from django.test import Client as Visitor
from django.urls import reverse

from chairwright_desk.bench.models import Setup

from ..kit.world import World
from ..standing.bench import made

__all__ = ["address", "field_of_lists", "fresh", "made", "step"]


def address(setup: Setup, view: str = "show", *more: str) -> str:
    """Address of a set-up's page."""
    return reverse(f"bench:{view}", args=[setup.client_id, setup.pk, *more])


def fresh(setup: Setup) -> Setup:
    """The set-up as saved now."""
    return Setup.objects.get(pk=setup.pk)


def step(
    visitor: Visitor, setup: Setup, *, script: bool = True, view: str = "step", **fields: Any
) -> HttpResponse:
    """Send one step, as the page sends it with or without JavaScript."""
    data = {"revision": fresh(setup).revision, **fields}
    headers = {"HX-Request": "true"} if script else {}
    return visitor.post(address(setup, view), data, headers=headers)  # type: ignore[return-value]


def field_of_lists(setup: Setup) -> dict[str, str]:
    """Every list of the form as the page shows it."""
    return dict(fresh(setup).codes)


def setup_of(world: World) -> Setup:
    """The set-up of the tests, fresh."""
    return fresh(made(world))
