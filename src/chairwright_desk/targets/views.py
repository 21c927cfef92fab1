"""The targets of a client: the list, a change with its reason, and back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from django.contrib import messages
from django.db import transaction
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse

from chairwright_desk.audit.trail import note_read
from chairwright_desk.base.access import find, page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions, save_revised
from chairwright_desk.bench.texts import texts_of
from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.kept import drop, filled
from chairwright_desk.measures.record import make_once
from chairwright_desk.measures.texts import client_text
from chairwright_desk.targets.bridge import (
    RULE_SET_WORDS,
    Asked,
    Ends,
    figure_label,
    figure_words,
    listing,
    rule_of,
)
from chairwright_desk.targets.forms import NewForm, RulesForm, TargetForm
from chairwright_desk.targets.kept import Wished, against, keep, note_history, put_back, wished
from chairwright_desk.targets.models import OwnTarget, RuleChoice, TargetChange

LABELS = {
    "at_least": "At least",
    "at_most": "At most",
    "weight": "Weight of the wish",
    "reason": "Reason",
}


@dataclass(frozen=True)
class Line:
    """One target in the list, with who changed it."""

    asked: Asked
    own: OwnTarget | None


@dataclass(frozen=True)
class LineGroup:
    """Targets that answer one question."""

    words: str
    lines: tuple[Line, ...]


@dataclass(frozen=True)
class Past:
    """One line of the history."""

    label: str
    change: TargetChange


def _client(request: Request, client_id: str) -> Client:
    return find(request, Client.objects.select_related("team"), client_id)


def _units(request: Request) -> Any:
    return "in" if request.user.units == "inch" else "mm"


@page("targets.see")
def show(request: Request, client_id: str) -> HttpResponse:
    """List every target with its range, its source and its reason."""
    client = _client(request, client_id)
    note_read(request, client, ["targets"])
    texts, typed = texts_of(client), client_text(client) is not None
    found = listing(texts.client, texts.places, _units(request)) if texts else None
    own = {(each.figure, each.must): each for each in _own(client).select_related("changed_by")}
    groups = [
        LineGroup(group.words, tuple(_line(each, own) for each in group.asked))
        for group in (found.groups if found else ())
    ]
    past = TargetChange.objects.filter(client=client).select_related("by")[:30]
    context = {
        "client": client,
        "groups": groups,
        "troubles": found.troubles if found else (),
        "typed": typed,
        "rules": dict(RULE_SET_WORDS).get(_rule_set(client), ""),
        "past": [Past(_past_label(each.figure), each) for each in past],
        "changed": [line for group in groups for line in group.lines if line.own],
        "lost": [] if groups else [Line(_bare(each), each) for each in own.values()],
    }
    return render(request, "targets/show.html", context)


def _past_label(figure: str) -> str:
    return figure_label(figure) if figure else "Rules"


def _line(asked: Asked, own: dict[tuple[str, bool], OwnTarget]) -> Line:
    return Line(asked, None if asked.place else own.get((asked.figure, asked.must)))


def _own(client: Client) -> Any:
    return OwnTarget.objects.filter(client=client)


def _bare(own: OwnTarget) -> Asked:
    """An own target that stands, while the list cannot be made."""
    ends = Ends(own.at_least, own.at_most)
    return Asked(
        own.figure, figure_label(own.figure), own.must, ends, own.weight, "", own.reason, ""
    )


def _rule_set(client: Client) -> str:
    found = RuleChoice.objects.filter(client=client).first()
    return found.rule_set if found else "envelope"


@page("targets.change", "GET", "POST")
def change(request: Request, client_id: str, figure: str, kind: str) -> HttpResponse:
    """Change one target; the reason is asked for."""
    client = _client(request, client_id)
    if not figure_words(figure) or kind not in ("must", "wish"):
        raise Http404
    own = _own(client).filter(figure=figure, must=kind == "must").first()
    rule = rule_of(client_text(client) or "", figure, kind, _units(request))
    key = f"targets.{figure.replace('@', '.')}.{kind}"[:60] + f":{client.pk}"
    form = filled(request, key, TargetForm, initial=_initial(request, own, rule), kind=kind)
    if request.method == "POST" and form.is_valid():
        wish = wished(figure, kind, _plain(form), rule)
        answer = _keep(request, client, form, wish, own)
        if answer is not None:
            drop(request, key)
            return answer
    context = {
        "client": client,
        "form": form,
        "form_key": key,
        "words": figure_words(figure),
        "kind": kind,
        "rule": rule,
        "own": own,
    }
    return render(request, "targets/change.html", context)


def _plain(form: TargetForm) -> dict[str, str]:
    return {name: str(value or "") for name, value in form.cleaned_data.items()}


def _initial(request: Request, own: OwnTarget | None, rule: Asked | None) -> dict[str, Any]:
    found = {
        "at_least": (own.at_least if own else "") or (rule.ends.low if rule else ""),
        "at_most": (own.at_most if own else "") or (rule.ends.high if rule else ""),
        "weight": (own.weight if own else "") or (rule.weight if rule else "1"),
        "alone": "in" if request.user.units == "inch" else "mm",
        "revision": own.revision if own else 0,
    }
    return found | ({"reason": own.reason} if own else {})


def _keep(
    request: Request, client: Client, form: TargetForm, wish: Wished, own: OwnTarget | None
) -> HttpResponse | None:
    if not (wish.at_least or wish.at_most or wish.weight):
        form.add_error("at_least", "Nothing differs from what the rules ask. Type another end.")
        return None
    for name, words in against(client, wish, own).items():
        form.add_error(name if name in form.fields else None, words)
    if form.errors:
        return None
    try:
        keep(request, client, wish, own, form.cleaned_data.get("revision") or 0)
    except Overtaken as error:
        return both_versions(request, error, LABELS, reverse("targets:show", args=[client.pk]))
    messages.success(request, "The target is changed. What the rules ask can be put back.")
    return redirect("targets:show", client.pk)


@page("targets.change", "GET", "POST")
def new(request: Request, client_id: str) -> HttpResponse:
    """Add a target on any figure."""
    client, key = _client(request, client_id), f"targets.new:{client_id}"
    form = filled(request, key, NewForm, initial={**_initial(request, None, None)})
    if request.method == "POST" and form.is_valid():
        figure, kind = form.cleaned_data["figure"], form.cleaned_data["kind"]
        if _own(client).filter(figure=figure, must=kind == "must").exists():
            form.add_error("figure", "There is an own target on this already. Change that one.")
        else:
            rule = rule_of(client_text(client) or "", figure, kind, _units(request))
            wish = wished(figure, kind, _plain(form), rule)
            answer = _keep(request, client, form, wish, None)
            if answer is not None:
                drop(request, key)
                return answer
    context = {"client": client, "form": form, "form_key": key}
    return render(request, "targets/new.html", context)


@page("targets.change", "POST")
def back(request: Request, client_id: str, target_id: str) -> HttpResponse:
    """Put a changed target back."""
    client = _client(request, client_id)
    own = find(request, _own(client), target_id)
    put_back(request, client, own)
    messages.success(request, f"{figure_label(own.figure)}: the rules count again.")
    return redirect("targets:show", client.pk)


@page("targets.change", "GET", "POST")
def rules(request: Request, client_id: str) -> HttpResponse:
    """Choose which published rules count; the reason is asked for."""
    client, key = _client(request, client_id), f"targets.rules:{client_id}"
    held = RuleChoice.objects.filter(client=client).first()
    initial = {"rule_set": _rule_set(client), "revision": held.revision if held else 0}
    form = filled(request, key, RulesForm, initial=initial)
    if request.method == "POST" and form.is_valid():
        try:
            _keep_rules(request, client, held, form.cleaned_data)
        except Overtaken as error:
            labels = {"rule_set": "Rules"}
            return both_versions(request, error, labels, reverse("targets:show", args=[client.pk]))
        drop(request, key)
        messages.success(request, "The rules are chosen.")
        return redirect("targets:show", client.pk)
    context = {"client": client, "form": form, "form_key": key}
    return render(request, "targets/rules.html", context)


def _keep_rules(
    request: Request, client: Client, held: RuleChoice | None, data: dict[str, Any]
) -> None:
    values = {"rule_set": data["rule_set"]}
    with transaction.atomic():
        if held is not None:
            save_revised(request, held, data.get("revision") or 0, values)
        else:
            make_once(request, RuleChoice, client, values)
        words = dict(RULE_SET_WORDS)[data["rule_set"]]
        note_history(request, client, "", words, data["reason"])
