"""How sure a kept set-up is."""

from __future__ import annotations

from django.http import Http404, HttpResponse
from django.shortcuts import render

from chairwright_desk.audit.trail import note_read
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.bench.bridge import InputError, State, open_bench, state_of
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.shown import units_of
from chairwright_desk.bench.texts import line_of
from chairwright_desk.chair_now.bridge.sure import chart_of, sure_of
from chairwright_desk.chair_now.known import weighed_or_not
from chairwright_desk.chair_now.opened import (
    Known,
    client_of,
    context_of,
    known_of,
    record_of,
)


def _state(known: Known, setup: Setup) -> State:
    texts = known.texts
    bench = open_bench(texts.client, line_of(setup.line), texts.places, tuple(setup.extras))
    return state_of(weighed_or_not(known.client, bench)[0], setup.codes)


@page("setup.see")
def show(request: Request, client_id: str, setup_id: str) -> HttpResponse:
    """Show every figure's spread, and which musts hold on nominal values only."""
    return _answer(request, client_id, setup_id, "")


@page("setup.see")
def figure(request: Request, client_id: str, setup_id: str, name: str) -> HttpResponse:
    """Show what makes one figure's spread."""
    return _answer(request, client_id, setup_id, name)


def _answer(request: Request, client_id: str, setup_id: str, name: str) -> HttpResponse:
    client = client_of(request, client_id)
    setup = record_of(Setup, client, setup_id)
    known = known_of(request, client)
    if not isinstance(known, Known):
        return known
    try:
        state = _state(known, setup)
    except InputError as error:
        context = {"client": client, "trouble": [str(each) for each in error.problems]}
        return render(request, "chair_now/missing.html", context)
    note_read(request, setup)
    chart = chart_of(state, name) if name else None
    if name and chart is None:
        raise Http404
    told = sure_of(state, units_of(request))
    template = "chair_now/figure.html" if name else "chair_now/sure.html"
    context = context_of(request, client, setup=setup, told=told, chart=chart, state=state,
                         against=state.against, known=known)  # fmt: skip
    return render(request, template, context)
