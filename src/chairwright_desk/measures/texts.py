"""The client file that the engineering reads, made of what was typed here."""

from __future__ import annotations

from chairwright_desk.clients.models import Client
from chairwright_desk.measures.record import parts_of
from chairwright_desk.measures.text import can_be_seated, written


def client_text(client: Client) -> str | None:
    """Return the client file of a client; None until sex, mass and height are known.

    Parameters
    ----------
    client : Client
    """
    parts = parts_of(client)
    return written(parts).text if can_be_seated(parts.body) else None
