"""The part "Who this is" of a client's file, for those who may see it."""

from __future__ import annotations

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse

from chairwright_desk.base.access import find, page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions
from chairwright_desk.clients.forms import IdentityForm
from chairwright_desk.clients.models import Client
from chairwright_desk.clients.who import (
    CHANGE,
    FIELDS,
    draft_key,
    identity_of,
    note_seen,
    save_identity,
)
from chairwright_desk.drafts.kept import drop, filled

LABELS = {name: str(IdentityForm.base_fields[name].label) for name in FIELDS}


@page("identity.see")
def who(request: Request, client_id: str) -> HttpResponse:
    """Show name, date of birth and diagnosis."""
    client = find(request, Client.objects.select_related("team"), client_id)
    note_seen(request, client)
    held = identity_of(client)
    context = {
        "client": client,
        "held": held,
        "entered": any(getattr(held, name) for name in FIELDS),
        "may_change": request.user.may(CHANGE, client.team_id),
    }
    return render(request, "clients/who.html", context)


@page("identity.change", "GET", "POST")
def change_who(request: Request, client_id: str) -> HttpResponse:
    """Enter, change or empty it."""
    client = find(request, Client.objects.select_related("team"), client_id)
    held, key = identity_of(client), draft_key(client)
    now = {name: getattr(held, name) for name in FIELDS}
    form = filled(request, key, IdentityForm, initial={**now, "revision": held.revision})
    if request.method == "POST" and form.is_valid():
        values = dict(form.cleaned_data)
        try:
            save_identity(request, client, values.pop("revision"), values)
        except Overtaken as overtaken:
            note_seen(request, client)
            back = reverse("clients:who", args=[client.pk])
            return both_versions(request, overtaken, LABELS, back)
        drop(request, key)
        messages.success(request, "Saved.")
        return redirect("clients:who", client.pk)
    note_seen(request, client)
    context = {"client": client, "form": form, "form_key": key}
    return render(request, "clients/change_who.html", context)
