"""The client file that the engineering reads, made of what was typed here."""

from __future__ import annotations

from dataclasses import dataclass

from django.urls import reverse

from chairwright_desk.clients.models import Client
from chairwright_desk.measures.forms import AbilitiesForm, MeasuringForm
from chairwright_desk.measures.record import newest, parts_of
from chairwright_desk.measures.text import can_be_seated, written


def client_text(client: Client) -> str | None:
    """Return the client file of a client; None until sex, mass and height are known.

    Parameters
    ----------
    client : Client
    """
    parts = parts_of(client)
    return written(parts).text if can_be_seated(parts.body) else None


@dataclass(frozen=True)
class Cause:
    """The field that a message of the engineering is about: what it is called, and its page."""

    words: str
    address: str


def cause_of(client: Client, where: str) -> Cause | None:
    """Find the field behind ``client:12: choices.cushion``; None when it is about no field.

    Parameters
    ----------
    client : Client
    where : str
        As the engineering's message begins, for the text of `client_text`.
    """
    parts = parts_of(client)
    name = written(parts).field_at(where)
    if name.startswith(("target:", "weight:", "rule_set")):
        return Cause("the targets", reverse("targets:show", args=[client.pk]))
    moving = AbilitiesForm(parts=parts).fields
    if name in moving:
        words = str(moving[name].label or name)
        return Cause(words, reverse("measures:abilities", args=[client.pk]) + f"#id_{name}")
    measured, form = newest(client), MeasuringForm().fields
    if name in form and measured is not None:
        address = reverse("measures:change", args=[client.pk, measured.pk])
        return Cause(str(form[name].label or name), f"{address}#id_{name}")
    return None
