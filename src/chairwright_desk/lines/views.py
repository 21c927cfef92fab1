"""The list of lines, one line with its versions, and bringing a file in."""

from __future__ import annotations

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse

from chairwright_desk.audit.trail import note_read
from chairwright_desk.base.access import page, visible
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions, save_revised
from chairwright_desk.drafts.kept import drop, filled
from chairwright_desk.lines.bridge import SHIPPED, holds_of, line_from
from chairwright_desk.lines.forms import ChangeForm, NewForm
from chairwright_desk.lines.held import held, own_line, shipped
from chairwright_desk.lines.models import OwnLine, Version
from chairwright_desk.lines.posted import take_file
from chairwright_desk.lines.saving import NameTaken, bring_in, bring_version

NEW = "lines.new"
LABELS = {"latest": "Newest version", "offered": "Set-ups can be made on it"}


@page("line.see")
def lines(request: Request) -> HttpResponse:
    """List the lines that come with the desk, and the teams' own."""
    own = visible(request, OwnLine.objects.select_related("team")).order_by("name", "team__name")
    rows = [(line, line.in_use, line.versions.order_by("-number").first()) for line in own]
    context = {"shipped": [shipped(name) for name in SHIPPED], "own": rows}
    return render(request, "lines/list.html", context)


@page("line.change", "GET", "POST")
def new(request: Request) -> HttpResponse:
    """Bring a line file in."""
    trouble = take_file(request)
    form = filled(request, NEW, NewForm, user=request.user, trouble=trouble)
    if request.method == "POST" and form.is_valid():
        try:
            version = bring_in(request, form.cleaned_data["team"], form.cleaned_data["text"])
        except NameTaken as taken:
            words = f"The line “{taken}” comes with the desk. Give yours another name (key name)."
            form.add_error("text", words)
        else:
            drop(request, NEW)
            return _brought(request, version)
    return render(request, "lines/new.html", {"form": form, "form_key": NEW})


def _brought(request: Request, version: Version) -> HttpResponse:
    """Say what came of it, on the page of the file."""
    mistakes = sum(each["severity"] == "mistake" for each in version.told)
    head = f"Kept as version {version.number} of {version.line}"
    if version.good:
        messages.success(request, f"{head}. It has no mistake and is in use from now on.")
    else:
        count = "one mistake" if mistakes == 1 else f"{mistakes} mistakes"
        messages.warning(
            request, f"{head}, with {count}. It is not in use until they are put right."
        )
    return redirect("lines:file", version.line_id, version.number)


@page("line.see")
def show(request: Request, line_id: str) -> HttpResponse:
    """Show what a line can build, and its versions."""
    line = held(request, line_id)
    versions: list[Version] = []
    if line.own:
        note_read(request, line.own)
        versions = list(line.own.versions.select_related("by").order_by("-number"))
    context = {
        "line": line,
        "versions": versions,
        "holds": holds_of(line_from(line.text)) if line.good else None,
        "may_change": line.own and request.user.may("line.change", line.own.team_id),
    }
    return render(request, "lines/show.html", context)


@page("line.change", "GET", "POST")
def change(request: Request, line_id: str) -> HttpResponse:
    """Bring the next version of a line in, as a file or as corrected text."""
    own, key = own_line(request, line_id), f"lines.change:{line_id}"
    trouble = take_file(request)
    newest = held(request, line_id, own.latest)
    initial = {"text": newest.text, "revision": own.revision}
    form = filled(request, key, ChangeForm, initial=initial, trouble=trouble)
    if request.method == "POST" and form.is_valid():
        data = form.cleaned_data
        try:
            version = bring_version(request, own, data["revision"], data["text"])
        except Overtaken as overtaken:
            back = reverse("lines:show", args=[own.pk])
            return both_versions(request, overtaken, LABELS, back)
        drop(request, key)
        return _brought(request, version)
    context = {"line": newest, "form": form, "form_key": key}
    return render(request, "lines/change.html", context)


@page("line.change", "POST")
def offered(request: Request, line_id: str) -> HttpResponse:
    """Say whether set-ups can be made on a line from now on; those that there are stay."""
    own = own_line(request, line_id)
    typed = request.POST.get("revision", "")
    values = {"offered": request.POST.get("offered") == "yes"}
    try:
        save_revised(request, own, int(typed) if typed.isdigit() else 0, values)
    except Overtaken as overtaken:
        back = reverse("lines:show", args=[own.pk])
        return both_versions(request, overtaken, LABELS, back)
    messages.success(request, "Saved.")
    return redirect("lines:show", own.pk)
