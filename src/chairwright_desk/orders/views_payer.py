"""Which class a payer's scheme gives an order, and what it still asks for."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect
from django.urls import reverse

from chairwright_desk.audit.trail import note_read
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions, save_revised
from chairwright_desk.drafts.kept import drop, filled, kept
from chairwright_desk.orders.bridge import (
    NO_PROMISE,
    InputError,
    PayerShown,
    SchemeShown,
    assessed,
    payer_shown,
    schemes_shown,
)
from chairwright_desk.orders.forms import FactsForm, SchemeForm
from chairwright_desk.orders.opened import Opened, open_order, told

LABELS = {"scheme": "Payer's scheme", "facts": "What was found out"}


@page("papers.clinical")
def payer(request: Request, order_id: str) -> HttpResponse:
    """Show what the order's scheme says."""
    opened = open_order(request, order_id)
    note_read(request, opened.order)
    return _whole(request, opened)


def _whole(
    request: Request, opened: Opened, form: FactsForm | None = None, status: int = 200
) -> HttpResponse:
    order, seen = opened.order, None
    said: tuple[str, ...] = ()
    every: tuple[SchemeShown, ...] = ()
    try:
        seen, every = _seen(opened), _every(opened)
    except InputError as error:
        said = tuple(str(each) for each in error.problems)
    if form is None:
        form = _facts_form(request, opened, seen)
    scheme = SchemeForm(initial={"scheme": order.scheme})
    more = {
        "seen": seen,
        "every": every,
        "no_promise": NO_PROMISE,
        "said": said,
        "form": form,
        "scheme": scheme,
    }
    key = f"orders.facts:{order.pk}"
    return told(request, "orders/payer.html", opened, form_key=key, status=status, **more)


def _seen(opened: Opened) -> PayerShown | None:
    order = opened.order
    if not order.scheme or opened.worked is None:
        return None
    return payer_shown(assessed(opened.worked, order.scheme, order.facts), order.facts)


def _every(opened: Opened) -> tuple[SchemeShown, ...]:
    order, worked = opened.order, opened.worked
    return () if worked is None else schemes_shown(worked, order.scheme, order.facts)


def _facts_form(request: Request, opened: Opened, seen: PayerShown | None) -> FactsForm | None:
    if seen is None:
        return None
    order = opened.order
    asked, key = (*seen.missing, *seen.known), f"orders.facts:{order.pk}"
    initial: dict[str, Any] = {
        f"fact:{name}": FactsForm.shown(name, text, asked) for name, text in order.facts.items()
    }
    initial["revision"] = order.revision
    form = filled(request, key, FactsForm, asked=asked, initial=initial)
    draft = kept(request, key)
    for each in asked:  # every tick that was typed and not saved, not the last alone
        if each.several and draft is not None:
            form.initial[f"fact:{each.name}"] = draft.fields.get(f"fact:{each.name}", [])
    return form


@page("order.change", "POST")
def scheme(request: Request, order_id: str) -> HttpResponse:
    """Choose the scheme."""
    opened = open_order(request, order_id)
    form = SchemeForm(request.POST)
    revision = request.POST.get("revision", "")
    if not form.is_valid() or not revision.isdigit():
        return _whole(request, opened, status=422)
    values = {"scheme": form.cleaned_data["scheme"], "facts": {}}
    if values["scheme"] == opened.order.scheme:
        return redirect("orders:payer", order_id)
    return _save(request, opened, int(revision), values)


@page("order.change", "POST")
def facts(request: Request, order_id: str) -> HttpResponse:
    """Keep what was found out."""
    opened = open_order(request, order_id)
    seen = _seen(opened)
    form = None if seen is None else _facts_form(request, opened, seen)
    if form is None or opened.worked is None or not form.is_valid():
        return _whole(request, opened, form, status=422)
    values = {"facts": form.told()}
    try:
        assessed(opened.worked, opened.order.scheme, values["facts"])
    except InputError as error:
        for problem in error.problems:
            name = problem.where.rpartition(" ")[2]
            form.add_error(f"fact:{name}" if name in form.asked else None, str(problem))
        return _whole(request, opened, form, status=422)
    return _save(request, opened, form.cleaned_data["revision"], values)


def _save(request: Request, opened: Opened, revision: int, values: dict[str, Any]) -> HttpResponse:
    order = opened.order
    try:
        save_revised(request, order, revision, values)
    except Overtaken as error:
        labels = {name: words for name, words in LABELS.items() if name in values}
        back = reverse("orders:payer", args=[order.pk])
        return both_versions(request, error, labels, back)
    drop(request, f"orders.facts:{order.pk}")
    messages.success(request, "Kept.")
    return redirect("orders:payer", order.pk)
