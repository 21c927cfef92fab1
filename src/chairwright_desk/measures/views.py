"""The measures of a client: what is in use, a set of a day, and the figure while it is typed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.contrib import messages
from django.db import transaction
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.safestring import SafeString, mark_safe

from chairwright_desk.audit.trail import note_change, note_read, note_removal
from chairwright_desk.base.access import find, page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions, save_revised
from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.kept import drop, filled, forget_record
from chairwright_desk.measures.bridge import LIMBS, Understood, kinds, understand
from chairwright_desk.measures.bridge.figure import figure_svg
from chairwright_desk.measures.compared import columns_of, rows_of
from chairwright_desk.measures.facts import facts_of
from chairwright_desk.measures.forms import MeasuringForm
from chairwright_desk.measures.models import Measuring
from chairwright_desk.measures.record import abilities_of, differing, newest, opened
from chairwright_desk.measures.text import body_written, can_be_seated, units_written

BODY = ("sex", "age", "leg_mass_factor")
"""What a new set takes over from the one before, besides lost limbs."""


def client_of(request: Request, client_id: str) -> Client:
    """Return the client of a page."""
    return find(request, Client.objects.select_related("team"), client_id)


def units_of(request: Request) -> Any:
    """Return the units in which estimates are shown."""
    return "in" if request.user.units == "inch" else "mm"


def understood(request: Request, body: Mapping[str, str]) -> Understood:
    """Return what the engineering makes of a set of measures."""
    to = body_written(body)
    return understand(to.text, to.field_at, body.get("sex", ""), units_of(request))


def drawn(told: Understood, request: Request) -> SafeString:
    """Return the figure; it is made of numbers and known words only."""
    return mark_safe(figure_svg(told, units_of(request)))  # noqa: S308


@page("measures.see")
def show(request: Request, client_id: str) -> HttpResponse:
    """Show the measures in use, estimates among them, beside those of earlier days."""
    client = client_of(request, client_id)
    sets = list(Measuring.objects.filter(client=client).select_related("changed_by")[:6])
    able = abilities_of(client)
    moving = able.fields if able else {}
    facts = facts_of(sets[0].fields if sets else {}, moving)
    note = moving.get("note", "")
    context: dict[str, Any] = {"client": client, "sets": sets, "facts": facts, "note": note}
    if sets:
        note_read(request, sets[0])
        told = understood(request, sets[0].fields)
        context |= {
            "told": told,
            "figure": drawn(told, request),
            "columns": columns_of(sets),
            "rows": rows_of(sets, told, units_of(request)),
            "seated": can_be_seated(sets[0].fields),
        }
    return render(request, "measures/show.html", context)


@page("measures.change", "GET", "POST")
def new(request: Request, client_id: str) -> HttpResponse:
    """Begin a set of measures."""
    client = client_of(request, client_id)
    before = newest(client)
    kept = before.fields if before else {}
    carried = {n: v for n, v in kept.items() if n in BODY or n.startswith(LIMBS)}
    form = filled(
        request, f"measures.new:{client.pk}", MeasuringForm, initial=_usual(request, carried)
    )
    if request.method == "POST" and form.is_valid():
        with transaction.atomic():
            made = Measuring.objects.create(
                client=client,
                taken_on=form.cleaned_data["taken_on"],
                fields=form.typed(),
                changed_by=request.user,
            )
            note_change(request, made, made.fields)
        drop(request, f"measures.new:{client.pk}")
        return _saved(request, made)
    return _form(request, client, form, f"measures.new:{client.pk}", before, None)


@page("measures.change", "GET", "POST")
def change(request: Request, client_id: str, measuring_id: str) -> HttpResponse:
    """Correct a set of measures."""
    client, measuring = client_of(request, client_id), _measuring(request, client_id, measuring_id)
    key = f"measures.set:{measuring.pk}"
    initial = {**measuring.fields, "taken_on": measuring.taken_on, "revision": measuring.revision}
    form = filled(request, key, MeasuringForm, initial=_usual(request, initial))
    if request.method == "POST" and form.is_valid():
        values = {"taken_on": form.cleaned_data["taken_on"], "fields": form.typed()}
        try:
            save_revised(request, measuring, form.cleaned_data["revision"] or 0, values)
        except Overtaken as error:
            named = {name: str(field.label or name) for name, field in form.fields.items()}
            labels = {"taken_on": "Measured on", **named}
            back = reverse("measures:show", args=[client.pk])
            return both_versions(request, opened(error), differing(error, labels), back)
        drop(request, key)
        return _saved(request, measuring)
    earlier = Measuring.objects.filter(client=client).exclude(pk=measuring.pk).first()
    return _form(request, client, form, key, earlier, measuring)


def _usual(request: Request, initial: Mapping[str, Any]) -> dict[str, Any]:
    alone = "in" if request.user.units == "inch" else "mm"
    return {"alone": alone, **initial}


def _measuring(request: Request, client_id: str, measuring_id: str) -> Measuring:
    return find(request, Measuring.objects.filter(client=client_id), measuring_id)


def _saved(request: Request, measuring: Measuring) -> HttpResponse:
    if can_be_seated(measuring.fields):
        messages.success(request, "The measures are saved.")
    else:
        words = "Saved. Sex, body mass and a height are still needed before a chair can be fitted."
        messages.warning(request, words)
    return redirect("measures:show", measuring.client_id)


def _form(
    request: Request,
    client: Client,
    form: MeasuringForm,
    key: str,
    before: Measuring | None,
    measuring: Measuring | None,
) -> HttpResponse:
    body = _standing(form)
    told = understood(request, body)
    context = {
        "client": client,
        "form": form,
        "form_key": key,
        "told": told,
        "figure": drawn(told, request),
        "before": before,
        "measuring": measuring,
        "enough": can_be_seated(body),
        "shown": request.POST.get("show") == "yes",
    }
    return render(request, "measures/form.html", context)


def _standing(form: MeasuringForm) -> dict[str, str]:
    """What stands in the form, saved or not."""
    plain = {name: str(form[name].value() or "") for name in form.fields}
    return units_written(plain, plain.get("alone") or "mm")


@page("measures.change", "POST")
def live(request: Request, client_id: str) -> HttpResponse:
    """Draw the figure to what is typed, and say what is estimated and what looks doubtful."""
    client = client_of(request, client_id)
    plain = {name: request.POST.get(name, "") for name in MeasuringForm().fields}
    body = units_written(plain, plain.get("alone") or "mm")
    told = understood(request, body)
    context = {
        "client": client,
        "told": told,
        "figure": drawn(told, request),
        "kinds": kinds().values(),
        "enough": can_be_seated(body),
    }
    return render(request, "measures/live.html", context)


@page("measures.change", "POST")
def remove(request: Request, client_id: str, measuring_id: str) -> HttpResponse:
    """Remove a set of measures."""
    measuring = _measuring(request, client_id, measuring_id)
    with transaction.atomic():
        note_removal(request, measuring)
        forget_record(measuring.pk)
        measuring.delete()
    messages.success(request, "The set of measures is removed.")
    return redirect("measures:show", client_id)
