"""How a client moves and what goes along; files that are brought in and taken out."""

from __future__ import annotations

from django.contrib import messages
from django.db import transaction
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone

from chairwright_desk.audit.trail import note_change, note_export
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions, save_revised
from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.kept import drop, filled
from chairwright_desk.measures.bridge.brought import Brought, brought_in
from chairwright_desk.measures.codes import known_codes
from chairwright_desk.measures.forms import AbilitiesForm, BroughtForm
from chairwright_desk.measures.models import Abilities, Measuring
from chairwright_desk.measures.record import (
    abilities_of,
    differing,
    make_once,
    newest,
    opened,
    parts_of,
    without_wishes,
)
from chairwright_desk.measures.text import can_be_seated, safe_reference, written
from chairwright_desk.measures.views import client_of
from chairwright_desk.targets.models import OwnTarget, RuleChoice, TargetChange

LARGEST_FILE = 5_000_000


@page("measures.change", "GET", "POST")
def abilities(request: Request, client_id: str) -> HttpResponse:
    """Say how a client moves, what goes along, what is settled and what is expected."""
    client = client_of(request, client_id)
    held, key = abilities_of(client), f"measures.abilities:{client.pk}"
    parts = without_wishes(parts_of(client))
    alone = "in" if request.user.units == "inch" else "mm"
    initial = {
        "alone": alone,
        **(held.fields if held else {}),
        "revision": held.revision if held else 0,
    }
    form = filled(request, key, AbilitiesForm, initial=initial, parts=parts)
    if request.method == "POST" and form.is_valid():
        try:
            _keep_abilities(request, client, held, form)
        except Overtaken as error:
            labels = {name: str(field.label or name) for name, field in form.fields.items()}
            back = reverse("measures:show", args=[client.pk])
            return both_versions(request, opened(error), differing(error, labels), back)
        drop(request, key)
        messages.success(request, "Saved.")
        return redirect("measures:show", client.pk)
    known = known_codes(client.team_id)
    context = {"client": client, "form": form, "form_key": key, "known": known}
    return render(request, "measures/abilities.html", context)


def _keep_abilities(
    request: Request, client: Client, held: Abilities | None, form: AbilitiesForm
) -> None:
    fields = form.typed()
    if held is not None:
        save_revised(request, held, form.cleaned_data["revision"] or 0, {"fields": fields})
        return
    make_once(request, Abilities, client, {"fields": fields})


@page("client.export")
def file(request: Request, client_id: str) -> HttpResponse:
    """Hand the client file out as a text."""
    client = client_of(request, client_id)
    parts = parts_of(client)
    if not can_be_seated(parts.body):
        messages.error(
            request, "There is no client file yet: measure sex, mass and a height first."
        )
        return redirect("measures:show", client.pk)
    note_export(request, client, ["client file"])
    answer = HttpResponse(written(parts).text, content_type="text/yaml; charset=utf-8")
    name = safe_reference(client.reference).lower()
    answer["Content-Disposition"] = f'attachment; filename="{name}.yaml"'
    return answer


@page("measures.change", "GET", "POST")
def bring(request: Request, client_id: str) -> HttpResponse:
    """Take measures from a file: a client file, a health record, or a table."""
    client = client_of(request, client_id)
    form = BroughtForm(request.POST or None, request.FILES or None)
    if request.method == "POST" and form.is_valid():
        upload = form.cleaned_data["file"]
        if upload.size > LARGEST_FILE:
            form.add_error("file", "The file is larger than 5 MB: such a file is a few pages.")
        else:
            found = brought_in(upload.read())
            for each in found.troubles:
                form.add_error("file", each)
            if not found.troubles:
                for each in take_set(request, client, found):
                    messages.info(request, each)
                messages.success(request, "The file is read. Look at every value before it counts.")
                return redirect("measures:show", client.pk)
    return render(request, "measures/bring.html", {"client": client, "form": form})


def take_set(request: Request, client: Client, found: Brought) -> list[str]:
    """Keep what was in a file; return what was left out."""
    said = list(found.remarks)
    now = newest(client)
    body = {**(now.fields if now and not found.whole else {}), **found.body}
    with transaction.atomic():
        made = Measuring.objects.create(
            client=client,
            taken_on=found.taken_on or timezone.localdate(),
            fields=body,
            changed_by=request.user,
        )
        note_change(request, made, body)
        if found.whole:
            said += _take_rest(request, client, found)
    return said


def _take_rest(request: Request, client: Client, found: Brought) -> list[str]:
    said = []
    if abilities_of(client) is None:
        able = Abilities.objects.create(
            client=client, fields=found.abilities, changed_by=request.user
        )
        note_change(request, able, found.abilities)
    else:
        said.append("How the client moves was here already and stays as it is.")
    if OwnTarget.objects.filter(client=client).exists():
        said.append("There are own targets here already: those of the file were left out.")
        return said
    for fields in found.targets:
        OwnTarget.objects.create(client=client, changed_by=request.user, **fields)
        TargetChange.objects.create(
            client=client,
            figure=fields["figure"],
            words="brought in with a client file",
            reason=fields["reason"],
            by=request.user,
        )
    if found.rule_set:
        RuleChoice.objects.update_or_create(client=client, defaults={"rule_set": found.rule_set})
    return said
