"""The set-ups of a client: the list, a new one, names, copies, and a client file brought in."""

from __future__ import annotations

from dataclasses import dataclass

from django.contrib import messages
from django.db import transaction
from django.http import HttpResponse
from django.shortcuts import redirect, render

from chairwright_desk.audit.trail import note_change, note_removal
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions, save_revised
from chairwright_desk.bench.bridge import (
    Follows,
    InputError,
    extras_of,
    first_codes,
    follows_of,
    open_bench,
    sketch_of,
)
from chairwright_desk.bench.forms import FileForm, NameForm, NewForm
from chairwright_desk.bench.models import ClientFile, Setup
from chairwright_desk.bench.opened import client_of, open_setup
from chairwright_desk.bench.shown import bench_of, units_of
from chairwright_desk.bench.texts import Texts, line_of, texts_of
from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.kept import drop, filled, forget_record

LABELS = {
    "name": "Name",
    "present": "The chair that the client has now",
    "extras": "Accessories",
}


@dataclass(frozen=True)
class Row:
    """One set-up in the list."""

    setup: Setup
    follows: Follows | None


@page("setup.see")
def setups(request: Request, client_id: str) -> HttpResponse:
    """List the set-ups of a client."""
    client = client_of(request, client_id)
    texts = texts_of(client)
    rows = [Row(each, _follows(request, each, texts)) for each in _setups(client)]
    may_change = request.user.may("setup.change", client.team_id)
    context = {"client": client, "rows": rows, "texts": texts, "may_change": may_change}
    return render(request, "bench/list.html", context)


def _setups(client: Client) -> list[Setup]:
    return list(Setup.objects.filter(client=client).select_related("changed_by"))


def _follows(request: Request, setup: Setup, texts: Texts | None) -> Follows | None:
    if texts is None:
        return None
    try:
        state = sketch_of(bench_of(setup, texts), setup.codes, None)
    except InputError:
        return None
    return follows_of(state, units_of(request))


@page("setup.change", "GET", "POST")
def new(request: Request, client_id: str) -> HttpResponse:
    """Make a set-up, beginning with the one that suits best."""
    client, key = client_of(request, client_id), f"bench.new:{client_id}"
    form = filled(request, key, NewForm, team_id=client.team_id, initial={"line": "everyday"})
    texts = texts_of(client)
    if request.method == "POST" and form.is_valid() and texts is not None:
        try:
            setup = _made(request, client, texts, form.cleaned_data)
        except InputError as error:
            form.add_error(None, [str(each) for each in error.problems])
        else:
            drop(request, key)
            return redirect("bench:show", client.pk, setup.pk)
    context = {"client": client, "form": form, "form_key": key, "texts": texts}
    return render(request, "bench/new.html", context)


def _made(request: Request, client: Client, texts: Texts, data: dict[str, str]) -> Setup:
    bench = open_bench(texts.client, line_of(data["line"]), texts.places)
    extras = [part.code for part in bench.line.fixed_parts if part in bench.line.extras]
    with transaction.atomic():
        setup = Setup.objects.create(
            client=client,
            name=data["name"],
            line=data["line"],
            codes=first_codes(bench),
            extras=extras,
            created_by=request.user,
            changed_by=request.user,
        )
        note_change(request, setup, ["name", "line", "codes"])
    return setup


@page("setup.change", "GET", "POST")
def name(request: Request, client_id: str, setup_id: str) -> HttpResponse:
    """Name a set-up, say whether it is the chair as it is now, and choose its accessories."""
    opened = open_setup(request, client_id, setup_id)
    setup, key = opened.setup, f"bench.name:{setup_id}"
    initial = {field: getattr(setup, field) for field in (*LABELS, "revision")}
    parts = extras_of(opened.bench) if opened.bench else ()
    known = [(code, words) for code, words, _ in parts]
    form = filled(request, key, NameForm, known=known, initial=initial)
    if request.method == "POST" and form.is_valid():
        values = {field: form.cleaned_data[field] for field in LABELS}
        try:
            save_revised(request, setup, form.cleaned_data["revision"], values)
        except Overtaken as error:
            return both_versions(request, error, LABELS, request.path)
        drop(request, key)
        messages.success(request, "The name is saved.")
        return opened.redirect()
    context = {"client": opened.client, "setup": setup, "form": form, "form_key": key}
    return render(request, "bench/name.html", context)


@page("setup.change", "POST")
def copy(request: Request, client_id: str, setup_id: str) -> HttpResponse:
    """Keep a set-up as it stands, and go on with a copy."""
    opened = open_setup(request, client_id, setup_id)
    old = opened.setup
    with transaction.atomic():
        made = Setup.objects.create(
            client=opened.client,
            name=_next_name(old),
            line=old.line,
            codes=old.codes,
            extras=old.extras,
            created_by=request.user,
            changed_by=request.user,
        )
        note_change(request, made, ["name", "line", "codes"])
    messages.success(request, f"{old.name} is kept as it stands. You go on with {made.name}.")
    return redirect("bench:show", opened.client.pk, made.pk)


def _next_name(old: Setup) -> str:
    taken = set(Setup.objects.filter(client=old.client_id).values_list("name", flat=True))
    stem = old.name[:70]
    number = next(n for n in range(2, len(taken) + 3) if f"{stem}, {n}" not in taken)
    return f"{stem}, {number}"


@page("setup.change", "POST")
def remove(request: Request, client_id: str, setup_id: str) -> HttpResponse:
    """Remove a set-up."""
    opened = open_setup(request, client_id, setup_id)
    with transaction.atomic():
        note_removal(request, opened.setup)
        forget_record(opened.setup.pk)
        opened.setup.delete()
    messages.success(request, f"{opened.setup.name} is removed.")
    return redirect("bench:list", opened.client.pk)


@page("setup.change", "GET", "POST")
def file(request: Request, client_id: str) -> HttpResponse:
    """Bring a client file and a places file in."""
    client, key = client_of(request, client_id), f"bench.file:{client_id}"
    held = ClientFile.objects.filter(client=client).first()
    initial = {"client_text": held.client_text, "places_text": held.places_text} if held else {}
    form = filled(request, key, FileForm, initial={**initial, "revision": _revision(held)})
    if request.method == "POST" and form.is_valid():
        values = {n: form.cleaned_data[n] for n in ("client_text", "places_text")}
        try:
            _keep_file(request, client, held, form.cleaned_data["revision"], values)
        except Overtaken as error:
            labels = {"client_text": "Client file", "places_text": "Places file"}
            return both_versions(request, error, labels, request.path)
        drop(request, key)
        messages.success(request, "The file is read and kept.")
        return redirect("bench:list", client.pk)
    context = {"client": client, "form": form, "form_key": key}
    return render(request, "bench/file.html", context)


def _revision(held: ClientFile | None) -> int:
    return held.revision if held else 0


def _keep_file(
    request: Request,
    client: Client,
    held: ClientFile | None,
    revision: int,
    values: dict[str, str],
) -> None:
    if held is not None:
        save_revised(request, held, revision, values)
        return
    with transaction.atomic():
        made = ClientFile.objects.create(client=client, changed_by=request.user, **values)
        note_change(request, made, values)
