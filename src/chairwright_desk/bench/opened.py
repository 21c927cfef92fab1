"""A set-up found for a page, with its client, its texts and its bench."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import cast

from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render

from chairwright_desk.base.access import find
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Revised
from chairwright_desk.bench.bridge import Bench, InputError
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.shown import bench_of
from chairwright_desk.bench.texts import texts_of
from chairwright_desk.clients.models import Client


@dataclass(frozen=True)
class Opened:
    """One set-up on its bench.

    Parameters
    ----------
    client : Client
    setup : Setup
    bench : Bench or None
        None when nothing is known of the client yet, or what is known cannot be read.
    trouble : tuple of str
        What cannot be read.
    """

    client: Client
    setup: Setup
    bench: Bench | None
    trouble: tuple[str, ...] = ()

    def now(self, setup: Revised) -> Opened:
        """The same with the set-up as saved meanwhile."""
        return replace(self, setup=cast(Setup, setup))

    def redirect(self) -> HttpResponse:
        """Back to the bench."""
        return redirect("bench:show", self.client.pk, self.setup.pk)


def client_of(request: Request, client_id: str) -> Client:
    """The client of an address.

    Parameters
    ----------
    request : Request
    client_id : str
    """
    return find(request, Client.objects.select_related("team"), client_id)


def open_setup(request: Request, client_id: str, setup_id: str) -> Opened:
    """The set-up of an address, with its bench.

    Parameters
    ----------
    request : Request
    client_id, setup_id : str

    Raises
    ------
    Http404
        When the client has no such set-up.
    """
    client = client_of(request, client_id)
    setup = Setup.objects.filter(client=client, pk=setup_id).first()
    if setup is None:
        raise Http404
    texts = texts_of(client)
    if texts is None:
        return Opened(client, setup, None)
    try:
        return Opened(client, setup, bench_of(setup, texts))
    except InputError as error:
        return Opened(client, setup, None, tuple(str(each) for each in error.problems))


def texts_missing(request: Request, opened: Opened) -> HttpResponse:
    """Say what is missing before a set-up can be drawn.

    Parameters
    ----------
    request : Request
    opened : Opened
        Without a bench.
    """
    context = {"client": opened.client, "setup": opened.setup, "trouble": opened.trouble}
    return render(request, "bench/missing.html", context, status=409 if request.htmx else 200)
