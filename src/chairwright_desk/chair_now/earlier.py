"""The measures of the day when a set-up was made, where the desk holds them."""

from __future__ import annotations

from dataclasses import replace

from chairwright_desk.bench.models import Setup
from chairwright_desk.clients.models import Client
from chairwright_desk.measures.models import Measuring
from chairwright_desk.measures.record import parts_of
from chairwright_desk.measures.text import can_be_seated, written


def client_then(client: Client, setup: Setup, today: str) -> str:
    """Text of the client file with the measures of when a set-up was made.

    Parameters
    ----------
    client : Client
    setup : Setup
    today : str
        Text of today.

    Returns
    -------
    str
        Empty when no other measures than today's are known.
    """
    day = setup.created.date()
    then = Measuring.objects.filter(client=client, taken_on__lte=day).first()
    if then is None or not can_be_seated(then.fields):
        return ""
    text = written(replace(parts_of(client), body=then.fields)).text
    return "" if text == today else text
