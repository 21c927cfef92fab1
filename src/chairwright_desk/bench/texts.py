"""What the engineering reads of a client: the texts of a client file and a places file.

The apps that keep measures and surroundings hand their texts over here: a module ``texts`` with
``client_text(client)`` or ``places_text(client)``. Where they have none, a file that was brought
in counts.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from importlib.util import find_spec
from typing import Any

from django.apps import apps

from chairwright_desk.bench.bridge import SHIPPED, Bench, FileText
from chairwright_desk.bench.models import ClientFile
from chairwright_desk.clients.models import Client

Reader = Callable[..., Any]


@dataclass(frozen=True)
class Texts:
    """A client file and a places file; the latter is empty when no places are known."""

    client: str
    places: str


def texts_of(client: Client) -> Texts | None:
    """What is known of a client; None when there is nothing to seat in a chair yet.

    Parameters
    ----------
    client : Client
    """
    held = ClientFile.objects.filter(client=client).first()
    measured = _told("measures", "client_text", client)
    places = _told("surroundings", "places_text", client)
    text = measured or (held.client_text if held else "")
    if not text:
        return None
    return Texts(text, places or (held.places_text if held else ""))


def _told(app: str, function: str, client: Client) -> str:
    reader = _reader(app, function)
    return "" if reader is None else str(reader(client) or "")


@cache
def _reader(app: str, function: str) -> Reader | None:
    name = f"chairwright_desk.{app}"
    if not apps.is_installed(name) or find_spec(f"{name}.texts") is None:
        return None
    found: Reader | None = getattr(import_module(f"{name}.texts"), function, None)
    return found


def line_of(name: str) -> str | FileText:
    """The line that a set-up names: a shipped one, or one of the desk's own.

    Parameters
    ----------
    name : str
        A team's own line with its version, as `lines_known` gives it.
    """
    if name in SHIPPED:
        return name
    reader = _reader("lines", "line_text")
    text = "" if reader is None else reader(name)
    return FileText(name.partition("@")[0], text) if text else name


def as_weighed(client_id: str, bench: Bench) -> Bench:
    """A bench with the client as weighed; the same bench when no weighing counts.

    Parameters
    ----------
    client_id : str
    bench : Bench
    """
    weighed = _reader("chair_now", "weighed")
    found: Bench = bench if weighed is None else weighed(client_id, bench)
    return found


def lines_known(team_id: str = "") -> tuple[tuple[str, str], ...]:
    """Name and words of every line that a set-up can be made on.

    Parameters
    ----------
    team_id : str
        Whose own lines count as well.
    """
    shipped = tuple((name, name.replace("-", " ").capitalize()) for name in SHIPPED)
    known = _reader("lines", "lines_known")
    return shipped if known is None or not team_id else (*shipped, *known(team_id))
