"""The chair as it stands: what there is of a client."""

from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import render

from chairwright_desk.audit.trail import note_read
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.chair_now.models import MeasuredChair, Study, Weighing
from chairwright_desk.chair_now.opened import Known, client_of, context_of, known_of, setups_of


@page("setup.see")
def show(request: Request, client_id: str) -> HttpResponse:
    """List weighings, measured chairs and studies of a client."""
    client = client_of(request, client_id)
    known = known_of(request, client)
    if not isinstance(known, Known):
        return known
    note_read(request, client)
    context = context_of(
        request,
        client,
        weighings=Weighing.objects.filter(client=client).order_by("-weighed_on", "-created"),
        chairs=MeasuredChair.objects.filter(client=client).order_by("-measured_on", "-created"),
        studies=Study.objects.filter(client=client).order_by("-created").defer("asked", "result"),
        setups=setups_of(client),
        known=known,
    )
    return render(request, "chair_now/show.html", context)
