"""The list of clients and the head of a client's file."""

from __future__ import annotations

from django.contrib import messages
from django.db import transaction
from django.db.models import Q
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse

from chairwright_desk.audit.trail import note_change, note_read
from chairwright_desk.base.access import find, page, visible
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions, save_revised
from chairwright_desk.clients.forms import ChangeForm, ClientForm
from chairwright_desk.clients.models import Client
from chairwright_desk.clients.who import found_by_name
from chairwright_desk.drafts.kept import drop, filled

NEW = "clients.new"
LABELS = {"reference": "Reference number", "keep_until": "Kept until"}


@page("client.see", "GET", "POST")
def clients(request: Request) -> HttpResponse:
    """List the clients of the visitor's teams; a search is sent, never written in the address."""
    asked = request.POST.get("search", "").replace("\0", "").strip()
    found = visible(request, Client.objects.select_related("team"))
    if asked:
        named = found_by_name(request, asked)
        found = found.filter(Q(reference__icontains=asked) | Q(pk__in=named))
    template = "clients/rows.html" if request.htmx else "clients/list.html"
    return render(request, template, {"clients": found, "asked": asked})


@page("client.change", "GET", "POST")
def new(request: Request) -> HttpResponse:
    """Make a client."""
    form = filled(request, NEW, ClientForm, user=request.user)
    if request.method == "POST" and form.is_valid():
        data = form.cleaned_data
        if Client.objects.filter(team=data["team"], reference=data["reference"]).exists():
            form.add_error("reference", "This team has a client with this number already.")
        else:
            with transaction.atomic():
                client = Client.objects.create(**data, changed_by=request.user)
                note_change(request, client, data)
            drop(request, NEW)
            return redirect("clients:show", client.pk)
    context = {"form": form}
    return render(request, "clients/new.html", context)


@page("client.see")
def show(request: Request, client_id: str) -> HttpResponse:
    """Show a client's file."""
    client = find(request, Client.objects.select_related("team", "changed_by"), client_id)
    note_read(request, client)
    return render(request, "clients/show.html", {"client": client})


@page("client.change", "GET", "POST")
def change(request: Request, client_id: str) -> HttpResponse:
    """Change a client's reference number and retention date."""
    client = find(request, Client.objects.all(), client_id)
    key = f"clients.change:{client.pk}"
    now = {"reference": client.reference, "keep_until": client.keep_until}
    form = filled(request, key, ChangeForm, initial={**now, "revision": client.revision})
    if request.method == "POST" and form.is_valid():
        values = dict(form.cleaned_data)
        try:
            save_revised(request, client, values.pop("revision"), values)
        except Overtaken as overtaken:
            back = reverse("clients:show", args=[client.pk])
            return both_versions(request, overtaken, LABELS, back)
        drop(request, key)
        messages.success(request, "Saved.")
        return redirect("clients:show", client.pk)
    context = {"client": client, "form": form, "form_key": key}
    return render(request, "clients/change.html", context)
