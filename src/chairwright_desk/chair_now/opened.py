"""The client of an address with what is known, and records under it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, TypeVar

from django.http import Http404, HttpResponse
from django.shortcuts import render

from chairwright_desk.base.access import find
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Revised
from chairwright_desk.bench.bridge import Bench, open_bench
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.shown import units_of
from chairwright_desk.bench.texts import Texts, texts_of
from chairwright_desk.chair_now.bridge import InputError
from chairwright_desk.chair_now.known import weighed_or_not
from chairwright_desk.chair_now.models import Weighing
from chairwright_desk.clients.models import Client
from chairwright_desk.measures.typed import Alone

Record = TypeVar("Record", bound=Revised)


@dataclass(frozen=True)
class Known:
    """A client whose measures can be read.

    Parameters
    ----------
    client : Client
    texts : Texts
    bench : Bench
        On the everyday line, without places; the client as weighed, where a weighing counts.
    weighing : Weighing or None
        The one that counts.
    refused : str
        Why the one in use does not count; empty when it does.
    """

    client: Client
    texts: Texts
    bench: Bench
    weighing: Weighing | None
    refused: str

    @property
    def reference(self) -> str:
        """As the client file writes it."""
        return self.bench.person.client.reference


def client_of(request: Request, client_id: str) -> Client:
    """The client of an address.

    Parameters
    ----------
    request : Request
    client_id : str
    """
    return find(request, Client.objects.select_related("team"), client_id)


def known_of(request: Request, client: Client) -> Known | HttpResponse:
    """What is known of a client; the page that says what is missing when it is too little.

    Parameters
    ----------
    request : Request
    client : Client
    """
    texts, trouble = texts_of(client), []
    if texts is not None:
        try:
            bench = open_bench(texts.client, "everyday")
            return Known(client, texts, *weighed_or_not(client, bench))
        except InputError as error:
            trouble = [str(each) for each in error.problems]
    context = {"client": client, "trouble": trouble}
    return render(request, "chair_now/missing.html", context)


def record_of(model: type[Record], client: Client, key: str) -> Record:
    """A record of this client; 404 when there is none.

    Parameters
    ----------
    model : type
    client : Client
        Found by `client_of`: whoever may see it may see its records.
    key : str
    """
    found = model._default_manager.filter(client=client, pk=key).first()
    if found is None:
        raise Http404
    return found


def setups_of(client: Client) -> list[Setup]:
    """The client's set-ups, the present one first.

    Parameters
    ----------
    client : Client
    """
    return list(Setup.objects.filter(client=client))


def alone_of(request: Request) -> Alone:
    """What a number without a unit means to the person.

    Parameters
    ----------
    request : Request
    """
    return units_of(request)


def context_of(request: Request, client: Client, **more: Any) -> dict[str, Any]:
    """What every page needs.

    Parameters
    ----------
    request : Request
    client : Client
    **more : object
        Added as it is.
    """
    may_change = request.user.may("setup.change", client.team_id)
    return {"client": client, "may_change": may_change, **more}
