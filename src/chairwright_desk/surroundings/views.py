"""The places of a client: the list with its pictures, one place, who helps, a file."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from django.contrib import messages
from django.db import transaction
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.safestring import SafeString, mark_safe

from chairwright_desk.audit.trail import note_change, note_export, note_read, note_removal
from chairwright_desk.base.access import find, page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions, save_revised
from chairwright_desk.bench.texts import texts_of
from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.kept import drop, filled, forget_record
from chairwright_desk.measures.record import differing, make_once, opened
from chairwright_desk.measures.text import safe_reference
from chairwright_desk.surroundings.bridge import KIND_WORDS, asked_of, in_words, picture_of
from chairwright_desk.surroundings.bridge.brought import places_brought
from chairwright_desk.surroundings.chair import chair_in
from chairwright_desk.surroundings.forms import FileForm, HelpersForm, SpotForm
from chairwright_desk.surroundings.models import Helpers, Spot
from chairwright_desk.surroundings.text import units_written, written
from chairwright_desk.surroundings.texts import around_of, places_text, text_of_spot

MOST_PLACES = 200
LARGEST_FILE = 200_000


@dataclass(frozen=True)
class Card:
    """One place in the list."""

    spot: Spot
    kind: str
    wish: bool
    picture: SafeString
    words: list[tuple[str, str]]
    asks: list[str]


def client_of(request: Request, client_id: str) -> Client:
    """Return the client of a page."""
    return find(request, Client.objects.select_related("team"), client_id)


def _units(request: Request) -> Any:
    return "in" if request.user.units == "inch" else "mm"


def _safe(svg: str) -> SafeString:
    """A drawing made here of numbers and known words."""
    return mark_safe(svg)  # noqa: S308


@page("surroundings.see")
def show(request: Request, client_id: str) -> HttpResponse:
    """List the places, each with a small picture and what it asks."""
    client = client_of(request, client_id)
    note_read(request, client, ["places"])
    texts = texts_of(client)
    asks = asked_of(texts.client, places_text(client) or "") if texts else {}
    cards = [_card(request, client, spot, asks) for spot in Spot.objects.filter(client=client)]
    around = around_of(client)
    context = {
        "client": client,
        "cards": cards,
        "kinds": KIND_WORDS.items(),
        "around": around,
        "helped": around.get("helper") == "yes",
    }
    return render(request, "surroundings/show.html", context)


def _card(request: Request, client: Client, spot: Spot, asks: dict[str, list[str]]) -> Card:
    text = text_of_spot(client, spot.kind, spot.name, spot.fields)
    picture = _safe(picture_of(text, _units(request), f"place-{spot.pk}"))
    wish = spot.fields.get("must") == "false"
    kind = KIND_WORDS.get(spot.kind, spot.kind)
    return Card(spot, kind, wish, picture, in_words(text), asks.get(spot.name, []))


@page("surroundings.change", "GET", "POST")
def new(request: Request, client_id: str, kind: str) -> HttpResponse:
    """Add a place of one kind."""
    client = client_of(request, client_id)
    if kind not in KIND_WORDS:
        raise Http404
    key = f"surroundings.{kind}:{client.pk}"
    form = filled(request, key, SpotForm, initial=_usual(request), client=client, kind=kind)
    if request.method == "POST" and form.is_valid():
        if Spot.objects.filter(client=client).count() >= MOST_PLACES:
            form.add_error(None, f"There are {MOST_PLACES} places: take out what is never met.")
        else:
            with transaction.atomic():
                spot = Spot.objects.create(
                    client=client,
                    kind=kind,
                    name=form.cleaned_data["name"].strip(),
                    fields=form.typed(),
                    changed_by=request.user,
                )
                note_change(request, spot, ["name", *spot.fields])
            drop(request, key)
            messages.success(request, f"{spot.name} is added.")
            return redirect("surroundings:show", client.pk)
    return _form(request, client, form, key)


@page("surroundings.change", "GET", "POST")
def change(request: Request, client_id: str, spot_id: str) -> HttpResponse:
    """Change a place."""
    client = client_of(request, client_id)
    spot = find(request, Spot.objects.filter(client=client), spot_id)
    key = f"surroundings.place:{spot.pk}"
    initial = {**_usual(request), **spot.fields, "name": spot.name, "revision": spot.revision}
    form = filled(request, key, SpotForm, initial=initial, client=client, kind=spot.kind, spot=spot)
    if request.method == "POST" and form.is_valid():
        values = {"name": form.cleaned_data["name"].strip(), "fields": form.typed()}
        try:
            save_revised(request, spot, form.cleaned_data["revision"] or 0, values)
        except Overtaken as error:
            labels = {n: str(f.label or n) for n, f in form.fields.items()}
            back = reverse("surroundings:show", args=[client.pk])
            shown = {"name": labels["name"], **differing(error, labels)}
            return both_versions(request, opened(error), shown, back)
        drop(request, key)
        messages.success(request, f"{spot.name} is saved.")
        return redirect("surroundings:show", client.pk)
    return _form(request, client, form, key)


def _usual(request: Request) -> dict[str, Any]:
    return {"alone": "in" if request.user.units == "inch" else "mm"}


def _form(request: Request, client: Client, form: SpotForm, key: str) -> HttpResponse:
    context = {
        "client": client,
        "form": form,
        "form_key": key,
        "kind": form.kind,
        "kind_words": KIND_WORDS[form.kind],
        "spot": form.spot,
        "picture": _drawn(request, client, form),
    }
    if form.spot is not None:
        spot = form.spot
        text = text_of_spot(client, spot.kind, spot.name, spot.fields)
        context["chair"] = chair_in(request, client, text)
    return render(request, "surroundings/form.html", context)


def _drawn(request: Request, client: Client, form: SpotForm) -> SafeString:
    plain = {name: str(form[name].value() or "") for name in form.fields}
    return _picture(request, client, form, plain)


def _picture(request: Request, client: Client, form: SpotForm, plain: dict[str, str]) -> SafeString:
    fields = units_written(form.keys, plain, plain.get("alone") or "mm")
    text = written("X-1", {**around_of(client), "helper": "yes"}, [(form.kind, "place", fields)])
    return _safe(picture_of(text.text, _units(request), "typed"))


@page("surroundings.change", "POST")
def live(request: Request, client_id: str, kind: str) -> HttpResponse:
    """Draw a place as it is typed."""
    client = client_of(request, client_id)
    if kind not in KIND_WORDS:
        raise Http404
    form = SpotForm(client=client, kind=kind)
    plain = {name: request.POST.get(name, "") for name in form.fields}
    context = {"picture": _picture(request, client, form, plain)}
    return render(request, "surroundings/picture.html", context)


@page("surroundings.change", "POST")
def remove(request: Request, client_id: str, spot_id: str) -> HttpResponse:
    """Remove a place."""
    client = client_of(request, client_id)
    spot = find(request, Spot.objects.filter(client=client), spot_id)
    with transaction.atomic():
        note_removal(request, spot)
        forget_record(spot.pk)
        spot.delete()
    messages.success(request, f"{spot.name} is removed.")
    return redirect("surroundings:show", client.pk)


@page("surroundings.change", "GET", "POST")
def helpers(request: Request, client_id: str) -> HttpResponse:
    """Say who helps, what the client manages alone, and which codes are shown."""
    client, key = client_of(request, client_id), f"surroundings.helpers:{client_id}"
    held = Helpers.objects.filter(client=client).first()
    fields = held.fields if held else {}
    initial = {
        **_usual(request),
        **fields,
        "codes": fields.get("codes", "").split(),
        "revision": held.revision if held else 0,
    }
    form = filled(request, key, HelpersForm, initial=initial)
    if request.method == "POST" and form.is_valid():
        try:
            _keep_helpers(request, client, held, form)
        except Overtaken as error:
            labels = {n: str(f.label or n) for n, f in form.fields.items()}
            back = reverse("surroundings:show", args=[client.pk])
            return both_versions(request, opened(error), differing(error, labels), back)
        drop(request, key)
        messages.success(request, "Saved.")
        return redirect("surroundings:show", client.pk)
    context = {"client": client, "form": form, "form_key": key}
    return render(request, "surroundings/helpers.html", context)


def _keep_helpers(
    request: Request, client: Client, held: Helpers | None, form: HelpersForm
) -> None:
    fields = form.typed()
    if held is not None:
        save_revised(request, held, form.cleaned_data["revision"] or 0, {"fields": fields})
        return
    make_once(request, Helpers, client, {"fields": fields})


@page("client.export")
def file(request: Request, client_id: str) -> HttpResponse:
    """Hand the places file out as a text."""
    client = client_of(request, client_id)
    text = places_text(client)
    if text is None:
        messages.error(request, "There is no place yet.")
        return redirect("surroundings:show", client.pk)
    note_export(request, client, ["places file"])
    answer = HttpResponse(text, content_type="text/yaml; charset=utf-8")
    name = safe_reference(client.reference).lower()
    answer["Content-Disposition"] = f'attachment; filename="{name}-places.yaml"'
    return answer


@page("surroundings.change", "GET", "POST")
def bring(request: Request, client_id: str) -> HttpResponse:
    """Add the places of a places file."""
    client = client_of(request, client_id)
    form = FileForm(request.POST or None, request.FILES or None)
    if request.method == "POST" and form.is_valid():
        upload = form.cleaned_data["file"]
        if upload.size > LARGEST_FILE:
            form.add_error("file", "A places file is at most 200 kB.")
        else:
            around, spots, troubles = places_brought(upload.read())
            for each in troubles:
                form.add_error("file", each)
            if not troubles:
                _take(request, client, around, spots)
                return redirect("surroundings:show", client.pk)
    return render(request, "surroundings/bring.html", {"client": client, "form": form})


def _take(
    request: Request, client: Client, around: dict[str, str], spots: list[tuple[str, str, Any]]
) -> None:
    taken = set(Spot.objects.filter(client=client).values_list("name", flat=True))
    fresh = [each for each in spots if each[1] not in taken]
    with transaction.atomic():
        if not Helpers.objects.filter(client=client).exists():
            made = Helpers.objects.create(client=client, fields=around, changed_by=request.user)
            note_change(request, made, around)
        for kind, name, fields in fresh:
            spot = Spot.objects.create(
                client=client, kind=kind, name=name, fields=fields, changed_by=request.user
            )
            note_change(request, spot, ["name", *fields])
    messages.success(request, f"{len(fresh)} places are added.")
    if len(fresh) < len(spots):
        left = len(spots) - len(fresh)
        messages.info(request, f"{left} have a name that is here already: they were left out.")
