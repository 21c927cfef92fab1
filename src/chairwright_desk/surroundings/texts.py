"""The places file that the engineering reads, made of what was typed here."""

from __future__ import annotations

from chairwright_desk.clients.models import Client
from chairwright_desk.surroundings.models import Helpers, Spot
from chairwright_desk.surroundings.text import Fields, written


def around_of(client: Client) -> Fields:
    """Return what holds for every place of a client."""
    held = Helpers.objects.filter(client=client).first()
    return held.fields if held else {}


def places_text(client: Client) -> str | None:
    """Return the places file of a client; None while no place is known.

    Parameters
    ----------
    client : Client
    """
    spots = list(Spot.objects.filter(client=client))
    if not spots:
        return None
    told = ((each.kind, each.name, each.fields) for each in spots)
    return written(client.reference, around_of(client), told).text


def text_of_spot(client: Client, kind: str, name: str, fields: Fields) -> str:
    """Return a places file with one place only.

    Parameters
    ----------
    client : Client
    kind, name : str
    fields : mapping of str to str
    """
    return written(client.reference, around_of(client), [(kind, name, fields)]).text
