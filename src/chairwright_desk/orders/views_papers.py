"""Papers of an order as PDF, files for other programs, the adjust sheet."""

from __future__ import annotations

from django import forms
from django.contrib import messages
from django.core.exceptions import PermissionDenied
from django.db.models import QuerySet
from django.http import Http404, HttpResponse
from django.shortcuts import redirect

from chairwright_desk.audit.trail import note_export
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.shown import units_of
from chairwright_desk.orders.bridge import (
    EXPORTS,
    FOR_THE_WORKSHOP,
    WORDS,
    InputError,
    adjust_pdf,
    adjust_shown,
    paper,
)
from chairwright_desk.orders.models import Order
from chairwright_desk.orders.opened import Opened, open_order, sees_clinical, told
from chairwright_desk.orders.papers import (
    ADJUST,
    SIZES,
    asked_of,
    beside_of,
    described_now,
    file_answer,
    file_stem,
    names_for,
    payer_of,
)
from chairwright_desk.orders.zips import zipped

PDF = "application/pdf"
REFUSED = "There are no papers yet: a must fails, and nobody has accepted that."


@page("papers.build")
def one(request: Request, order_id: str, number: int, name: str) -> HttpResponse:
    """Open one paper."""
    if name not in WORDS:
        raise Http404
    opened = open_order(request, order_id, number)
    order = opened.order
    if name not in FOR_THE_WORKSHOP and not sees_clinical(request, order):
        raise PermissionDenied
    asked = asked_of(request, order)
    if opened.worked is None or opened.worked.order.refused:
        return no_papers(request, order)
    if name not in names_for(request, order):
        raise Http404
    try:
        made = paper(name, opened.worked, asked, beside_of(order, opened.worked, (name,)))
    except InputError as error:
        return _trouble(request, opened, error)
    note_export(request, order, [f"{name}, revision {number}"])
    return file_answer(made, PDF, f"{file_stem(order, number)}-{name}.pdf", shown=True)


def no_papers(request: Request, order: Order) -> HttpResponse:
    """Say that there are none while a must fails, on the order's page."""
    messages.error(request, REFUSED)
    return redirect("orders:show", order.pk)


def _trouble(request: Request, opened: Opened, error: InputError) -> HttpResponse:
    said = tuple(str(each) for each in error.problems)
    return told(request, "orders/trouble.html", opened, said=said, status=422)


@page("papers.build")
def export(request: Request, order_id: str, number: int, kind: str) -> HttpResponse:
    """Keep the order as a file for another program."""
    if kind not in EXPORTS:
        raise Http404
    opened = open_order(request, order_id, number)
    order, wanted = opened.order, EXPORTS[kind]
    if wanted.clinical and not sees_clinical(request, order):
        raise PermissionDenied
    if opened.worked is None or opened.worked.order.refused:
        return no_papers(request, order)
    try:
        payer = payer_of(order, opened.worked) if kind == "fhir" else None
        made = wanted.make(opened.worked, units_of(request), payer, order.serial)
    except InputError as error:
        return _trouble(request, opened, error)
    note_export(request, order, [f"{kind}, revision {number}"])
    stem = file_stem(order, number)
    files = {f"{stem}{ending}": content for ending, content in made.items()}
    if len(files) > 1:
        return file_answer(zipped(files), "application/zip", f"{stem}-{kind}.zip", shown=False)
    ((name, content),) = files.items()
    return file_answer(content, wanted.type, name, shown=False)


class ToForm(forms.Form):
    """To which set-up a chair is adjusted."""

    to = forms.ModelChoiceField(Setup.objects.none(), label="To the set-up", empty_label=None)


@page("papers.build")
def adjust(request: Request, order_id: str) -> HttpResponse:
    """Say what changes from the order's set-up to another kept one."""
    opened = open_order(request, order_id)
    order = opened.order
    form = ToForm(request.GET if "to" in request.GET else None)
    field: forms.ModelChoiceField[Setup] = form.fields["to"]  # type: ignore[assignment]
    field.queryset = _others(order)
    steps, chosen = None, None
    said: tuple[str, ...] = ()
    if form.is_bound and form.is_valid() and opened.worked is not None:
        chosen = form.cleaned_data["to"]
        try:
            steps = adjust_shown(opened.worked, described_now(chosen)).steps
        except InputError as error:
            said = tuple(str(each) for each in error.problems)
    context = {"form": form, "steps": steps, "said": said, "chosen": chosen, "sizes": SIZES,
               "others": _others(order).exists()}  # fmt: skip
    return told(request, "orders/adjust.html", opened, **context)


def _others(order: Order) -> QuerySet[Setup]:
    rows = Setup.objects.filter(client=order.client_id, line=order.line)
    return rows.order_by("-changed_at", "id")


@page("papers.build")
def adjust_sheet(request: Request, order_id: str, setup_id: str) -> HttpResponse:
    """Open the sheet to adjust the order's chair to another kept set-up."""
    opened = open_order(request, order_id)
    order, asked = opened.order, asked_of(request, opened.order)
    last = Setup.objects.filter(client=order.client_id, pk=setup_id).first()
    if last is None:
        raise Http404
    if opened.worked is None:
        return no_papers(request, order)
    try:
        made = adjust_pdf(opened.worked, described_now(last), last.name, asked)
    except InputError as error:
        return _trouble(request, opened, error)
    note_export(request, order, [ADJUST])
    stem = file_stem(order, order.latest)
    return file_answer(made, PDF, f"{stem}-{ADJUST}.pdf", shown=True)
