"""The client's newest set-up in a place, where both are known."""

from __future__ import annotations

from django.utils.safestring import SafeString, mark_safe

from chairwright_desk.base.requests import Request
from chairwright_desk.bench.bridge import InputError, state_of
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.shown import bench_of
from chairwright_desk.bench.texts import texts_of
from chairwright_desk.clients.models import Client
from chairwright_desk.surroundings.bridge import with_chair


def chair_in(request: Request, client: Client, text: str) -> SafeString:
    """Draw the newest set-up in the one place of a text; empty where there is no such drawing.

    Parameters
    ----------
    request : Request
    client : Client
    text : str
    """
    setup = Setup.objects.filter(client=client).order_by("-created").first()
    texts = texts_of(client)
    if setup is None or texts is None or not request.user.may("setup.see", client.team_id):
        return mark_safe("")
    try:
        state = state_of(bench_of(setup, texts), setup.codes)
    except InputError:
        return mark_safe("")
    if state.setup is None:
        return mark_safe("")
    units = "in" if request.user.units == "inch" else "mm"
    return mark_safe(with_chair(text, state.setup, units, "chair"))  # type: ignore[arg-type]  # noqa: S308
