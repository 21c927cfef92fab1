"""Everything that belongs to one client, found through the models themselves.

A record belongs to a client when links lead from it to the client. So what an app adds later is
exported and removed without a word here; what is held in any other way must be said in `LOOSE` or
`APART`, else `troubles` names it and a test fails.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from django.apps import apps
from django.db.models import CASCADE, FileField, Model
from django.db.models.fields.reverse_related import ForeignObjectRel

from chairwright_desk.clients.models import Client

OURS = "chairwright_desk."
LOOSE: dict[str, str] = {
    "jobs.job": "about a record by its id",
    "drafts.draft": "about a record by its id, after the colons of its key",
    "audit.entry": "about a record by its id; no value stands in it, so it stays",
}
"""Models that name a record of a client without a link, and how."""
APART: dict[str, str] = {
    "accounts.team": "people of the desk",
    "accounts.user": "people of the desk",
    "accounts.membership": "people of the desk",
    "accounts.signinlink": "people of the desk",
    "accounts.failedsignin": "people of the desk",
    "api.token": "people of the desk",
    "lines.ownline": "a product line of a team",
    "lines.version": "a product line of a team",
    "orders.pricetext": "a price list of a team",
}
"""Models that hold nothing of one client, and what they are."""


def links(model: type[Model]) -> Iterable[ForeignObjectRel]:
    """Return the links that lead to a model, those without a name of their own among them.

    Parameters
    ----------
    model : type
    """
    for field in model._meta.get_fields(include_hidden=True):
        if isinstance(field, ForeignObjectRel) and (field.one_to_many or field.one_to_one):
            yield field


def holders() -> dict[type[Model], tuple[str, ...]]:
    """Return every model that belongs to a client, with the ways of its links to the client.

    The ways are written as a query writes them (``order__client``); the client's own is ``pk``.
    """
    found: dict[type[Model], tuple[str, ...]] = {Client: ("pk",)}
    waiting: list[tuple[type[Model], str]] = [(Client, "")]
    while waiting:
        model, way = waiting.pop(0)
        for link in links(model):
            child: Any = link.related_model
            step = f"{link.field.name}__{way}".removesuffix("__")
            if child not in found or (step not in found[child] and child is not model):
                found[child] = (*found.get(child, ()), step)
                waiting.append((child, step))
    return found


def models_of_the_desk() -> list[type[Model]]:
    """Return every model of ours."""
    return [each for each in apps.get_models() if each.__module__.startswith(OURS)]


def troubles(models: Iterable[type[Model]] | None = None) -> list[str]:
    """Return what would be missing in an export, or would stay after a removal.

    Parameters
    ----------
    models : iterable of type, optional
        By default every model of the desk.
    """
    belong, said = holders(), []
    for model in models_of_the_desk() if models is None else models:
        label = model._meta.label_lower
        if model in belong:
            said += [f"{label}.{name}" for name in _files(model)]
        elif label not in LOOSE and label not in APART:
            said.append(f"{label}: no link leads to a client, and nothing says why")
    return said + [each for model in belong for each in _staying(model)]


def _files(model: type[Model]) -> list[str]:
    files = [f.name for f in model._meta.get_fields() if isinstance(f, FileField)]
    return [
        f"{name}: a file beside the database would stay; keep its bytes in it" for name in files
    ]


def _staying(model: type[Model]) -> list[str]:
    return [
        f"{link.related_model._meta.label_lower}.{link.field.name}: must go with its record"
        for link in links(model)
        if link.on_delete is not CASCADE
    ]
