"""What every page must stand: declared once an address, checked in test_standing.py and browser."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from django.urls import URLPattern, URLResolver, get_resolver, reverse
from django.urls.resolvers import URLPattern as Pattern

from chairwright_desk.accounts.roles import TABLE, Role
from chairwright_desk.base.access import Page

from .world import World


def no_arguments(_world: World) -> tuple[Any, ...]:
    return ()


def nothing(_world: World) -> dict[str, Any]:
    return {}


@dataclass(frozen=True)
class Standing:
    """One address of the desk.

    Parameters
    ----------
    view : str
        Its name: ``clients:show``.
    arguments : callable
        World to the arguments of the address; make there what must exist (a record of
        `world.team`, or of each person: then `personal`).
    data : callable
        World to the fields of a good form, when the view takes POST.
    posted : int
        Status of the answer to a good form.
    shared : bool
        The address has no record of a team (or its record belongs to all).
    look : bool
        It is a whole page, to be opened in the browser too.
    role : str
        Who opens it there.
    personal : bool
        The record belongs to one person (`role`); others of the team get 404 as well.
    status : int
        Of the answer to GET.
    """

    view: str
    arguments: Callable[[World], tuple[Any, ...]] = no_arguments
    data: Callable[[World], dict[str, Any]] = nothing
    posted: int = 302
    shared: bool = False
    look: bool = True
    role: str = "clinician"
    personal: bool = False
    status: int = 200

    def __str__(self) -> str:
        return self.view

    @property
    def page(self) -> Page:
        """What the view declares with `page` or `open_page`."""
        return PAGES[self.view]

    @property
    def reads(self) -> bool:
        return "GET" in self.page.methods

    @property
    def allowed(self) -> list[str]:
        """Roles that may do it, by the table."""
        return [role.value for role in Role if self.page.action and role in TABLE[self.page.action]]

    def address(self, world: World) -> str:
        return reverse(self.view, args=self.arguments(world))


def _views(patterns: list[Any], before: str = "") -> Iterator[tuple[str, Pattern]]:
    for each in patterns:
        if isinstance(each, URLResolver):
            space = f"{before}{each.namespace}:" if each.namespace else before
            yield from _views(each.url_patterns, space)
        elif isinstance(each, URLPattern):
            yield f"{before}{each.name}", each


VIEWS = {
    name: view
    for name, view in _views(get_resolver().url_patterns)
    if not hasattr(view.callback, "operations")
}
"""Every address but those of the API, which tests/desk/api checks operation by operation."""
PAGES: dict[str, Page] = {
    name: page
    for name, view in VIEWS.items()
    if (page := getattr(view.callback, "page", None)) is not None
}


def entries() -> list[Standing]:
    """Every entry of ``tests/desk/standing/*.py``."""
    package = importlib.import_module("tests.desk.standing")
    found: list[Standing] = []
    for module in pkgutil.iter_modules(package.__path__):
        found += importlib.import_module(f"tests.desk.standing.{module.name}").ENTRIES
    return found
