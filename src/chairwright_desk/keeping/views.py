"""Export, removal and dates."""

from __future__ import annotations

from django.contrib import messages
from django.db import transaction
from django.http import HttpResponse
from django.shortcuts import redirect, render

from chairwright_desk.audit.trail import note_export
from chairwright_desk.base.access import find, page
from chairwright_desk.base.requests import Request
from chairwright_desk.clients.models import Client
from chairwright_desk.keeping.dates import past_their_date
from chairwright_desk.keeping.export import zipped
from chairwright_desk.keeping.forms import RemoveForm
from chairwright_desk.keeping.removal import counted, remove

MOST = 500


@page("client.export")
def show(request: Request, client_id: str) -> HttpResponse:
    """Show what can be taken out and taken away."""
    client = find(request, Client.objects.select_related("team"), client_id)
    context = {
        "client": client,
        "counts": counted(client),
        "may_remove": request.user.may("client.remove", client.team_id),
    }
    return render(request, "keeping/show.html", context)


@page("client.export", "POST")
def export(request: Request, client_id: str) -> HttpResponse:
    """Hand everything out."""
    client = find(request, Client.objects.all(), client_id)
    with transaction.atomic():
        note_export(request, client, ["everything", "identity"])
        content = zipped(client, request.user)
    name = f'attachment; filename="client-{client.pk}.zip"'
    headers = {"Content-Disposition": name}
    return HttpResponse(content, content_type="application/zip", headers=headers)


@page("client.remove", "GET", "POST")
def removal(request: Request, client_id: str) -> HttpResponse:
    """Remove everything, when the reference is typed."""
    client = find(request, Client.objects.select_related("team"), client_id)
    form = RemoveForm(request.POST or None, client=client)
    if request.method == "POST" and form.is_valid():
        remove(request, client)
        messages.success(request, "The client is removed, with everything that belonged to it.")
        return redirect("clients:list")
    context = {"client": client, "form": form, "counts": counted(client)}
    return render(request, "keeping/remove.html", context)


@page("retention.see")
def past(request: Request) -> HttpResponse:
    """List the clients whose date is over."""
    context = {"clients": past_their_date(request.user)[:MOST]}
    return render(request, "keeping/past.html", context)
