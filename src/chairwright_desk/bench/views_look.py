"""Looking further from a set-up: the best one, the trade-off, why not, every option, others."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse

from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken
from chairwright_desk.bench import steps
from chairwright_desk.bench.bridge import (
    MOST_COMPARED,
    PURPOSE,
    Bench,
    InputError,
    State,
    axes_of,
    beside,
    find,
    front_cautions,
    front_picture,
    state_of,
    swept,
    why_not,
)
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.opened import Opened, client_of, open_setup, texts_missing
from chairwright_desk.bench.shown import bench_of, units_of
from chairwright_desk.bench.texts import Texts, texts_of
from chairwright_desk.bench.views import Note, context, overtaken, revision_of, state_now
from chairwright_desk.bench.wishes import Wish
from chairwright_desk.jobs.models import Job
from chairwright_desk.jobs.work import start

TRADE = "bench.trade"


@page("setup.change", "POST")
def best(request: Request, client_id: str, setup_id: str) -> HttpResponse:
    """Put the best set-up on the bench; where none fits, look for the reasons."""
    opened = open_setup(request, client_id, setup_id)
    if opened.bench is None:
        return texts_missing(request, opened)
    found = find(opened.bench, units_of(request), reasons=False)
    if not found.codes:
        messages.warning(request, "No set-up of this line meets every must.")
        return _begin(request, opened)
    before = state_now(opened)
    try:
        steps.take(request, opened.setup, revision_of(request), found.codes)
    except Overtaken as error:
        return overtaken(request, opened.now(error.current), before, Wish({}))
    more = " Sizes made to order were needed." if found.to_order else ""
    messages.success(request, f"The best of {found.count} set-ups is on the bench, proven.{more}")
    return opened.redirect()


@page("setup.see", "GET", "POST")
def trade(request: Request, client_id: str, setup_id: str) -> HttpResponse:
    """Show the trade-off that was found last; POST begins to look for it."""
    opened = open_setup(request, client_id, setup_id)
    if opened.bench is None:
        return texts_missing(request, opened)
    if request.method == "POST":
        return _begin(request, opened)
    jobs = Job.objects.filter(record=opened.setup.pk, kind=TRADE).order_by("-created")
    job = jobs.filter(state=Job.State.DONE).first()
    result: Any = job.result if job else None
    more = {
        "result": result,
        **_front(request, opened.bench, result),
        "running": jobs.filter(state__in=[Job.State.WAITING, Job.State.RUNNING],
                               owner=request.user).first(),
        "old": bool(result) and result.get("key") != opened.bench.key,
    }  # fmt: skip
    return render(request, "bench/trade.html", context(request, opened, Note(), **more))


def _front(request: Request, bench: Bench, result: Any) -> dict[str, Any]:
    """The points of the trade-off, and the picture by the two figures that were asked for."""
    found = (result or {}).get("found", {})
    if not found.get("trades"):
        return {}
    axes = axes_of(found["aims"], request.GET.get("across", ""), request.GET.get("up", ""))
    return {
        "axes": axes,
        "picture": front_picture(found, result["now"], axes),
        "rows": [
            (trade, list(zip(found["aims"], trade["values"], strict=True)))
            for trade in found["trades"]
        ],
        "cautions": front_cautions(bench, found),
        "purpose": PURPOSE,
    }


def _begin(request: Request, opened: Opened) -> HttpResponse:
    job = start(
        request,
        TRADE,
        f"Trade-off for {opened.client.reference}, {opened.setup.name}",
        {"setup": opened.setup.pk, "units": units_of(request)},
        team=opened.client.team,
        record=opened.setup,
        back=reverse("bench:trade", args=[opened.client.pk, opened.setup.pk]),
    )
    if job.ended:
        return redirect("bench:trade", opened.client.pk, opened.setup.pk)
    return redirect("jobs:show", job.pk)


@page("setup.see")
def why(request: Request, client_id: str, setup_id: str) -> HttpResponse:
    """Say what stands against a set-up."""
    opened = open_setup(request, client_id, setup_id)
    if opened.bench is None:
        return texts_missing(request, opened)
    state = state_of(opened.bench, opened.setup.codes)
    told = why_not(state, units_of(request))
    return render(request, "bench/why.html", context(request, opened, Note(), why=told))


@page("setup.see")
def tried(request: Request, client_id: str, setup_id: str, choice: str) -> HttpResponse:
    """Try every option of one choice, everything else kept."""
    opened = open_setup(request, client_id, setup_id)
    if opened.bench is None:
        return texts_missing(request, opened)
    if choice not in opened.setup.codes:
        raise Http404
    state = state_of(opened.bench, opened.setup.codes)
    told = swept(state, choice, units_of(request))
    template = "bench/tried_part.html" if request.htmx else "bench/tried.html"
    return render(request, template, context(request, opened, Note(), swept=told))


@page("setup.see")
def compare(request: Request, client_id: str) -> HttpResponse:
    """Lay up to four set-ups of a client beside each other."""
    client = client_of(request, client_id)
    texts = texts_of(client)
    every = list(Setup.objects.filter(client=client))
    wanted = list(dict.fromkeys(request.GET.getlist("s")))
    chosen = [setup for key in wanted for setup in every if setup.pk == key]
    if wanted and len(chosen) < len(wanted):
        raise Http404
    chosen.sort(key=lambda setup: setup.pk != request.GET.get("first"))
    told, trouble = None, ""
    if texts is not None and chosen:
        told, trouble = _beside(request, chosen, texts)
    context = {"client": client, "every": every, "chosen": chosen, "beside": told,
               "trouble": trouble, "most": MOST_COMPARED, "texts": texts}  # fmt: skip
    return render(request, "bench/compare.html", context)


def _beside(request: Request, chosen: list[Setup], texts: Texts) -> tuple[Any, str]:
    if not 2 <= len(chosen) <= MOST_COMPARED:
        return None, f"Choose two to {MOST_COMPARED} set-ups."
    try:
        named = [(each.name, _state(each, texts)) for each in chosen]
        return beside(named, units_of(request)), ""
    except InputError as error:
        return None, str(error)
    except ValueError as error:
        return None, f"{error}."


def _state(setup: Setup, texts: Texts) -> State:
    return state_of(bench_of(setup, texts), setup.codes)
