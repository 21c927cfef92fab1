"""The free bench on the demo client: everybody's own, kept in the session and nowhere else."""

from __future__ import annotations

from typing import Any

from django.http import HttpResponse
from django.shortcuts import redirect, render

from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.bench.shown import changed_blocks, things_of
from chairwright_desk.bench.views import Note
from chairwright_desk.bench.wishes import BY, Wish, wish_of
from chairwright_desk.teach.bridge import (
    CODES,
    InputError,
    State,
    base,
    change,
    demo_bench,
    follows_of,
    pictures_of,
    sketch_of,
)
from chairwright_desk.teach.views import units_of

KEY = "teach-bench"
MOST_STEPS = 40
NO_OPTION = "The line has no such option. Nothing is changed."
Held = dict[str, Any]


def _held(request: Request) -> Held:
    """Codes, and those before each step and of each step taken back."""
    found: Held = request.session.get(KEY, {"codes": dict(CODES), "past": [], "ahead": []})
    return found


def _state(codes: dict[str, str]) -> State:
    return base() if codes == CODES else sketch_of(demo_bench(), codes, base())


@page("teach.see")
def bench(request: Request) -> HttpResponse:
    """Show the demo set-up as the person has left it."""
    held = _held(request)
    return _whole(request, _state(held["codes"]), held, Note())


def _whole(request: Request, state: State, held: Held, note: Note) -> HttpResponse:
    units = units_of(request)
    context = {
        "setup": held,
        "note": note,
        "may_change": True,
        "things": things_of(state, units),
        "pictures": pictures_of(state, units),
        "follows": follows_of(state, units),
        "against": state.against,
    }
    return render(request, "teach/bench.html", context)


@page("teach.see", "POST")
def bench_step(request: Request) -> HttpResponse:
    """Change a choice, take a step back or again, or begin anew."""
    held = _held(request)
    before, way, note = _state(held["codes"]), request.POST.get("way", ""), Note()
    if way == "anew":
        request.session.pop(KEY, None)
        return redirect("teach:bench")
    if way in ("back", "again"):
        held = _moved(held, *(("past", "ahead") if way == "back" else ("ahead", "past")))
    else:
        held, note = _changed(request, held, before)
    request.session[KEY] = held
    after = _state(held["codes"])
    if not request.htmx:
        return redirect("teach:bench") if note == Note() else _whole(request, after, held, note)
    return _part(request, before, after, held, note)


def _moved(held: Held, source: str, target: str) -> Held:
    """One step back, or again."""
    if not held[source]:
        return held
    *rest, codes = held[source]
    return {**held, "codes": codes, source: rest, target: [*held[target], held["codes"]]}


def _changed(request: Request, held: Held, before: State) -> tuple[Held, Note]:
    wish = wish_of(request.POST, held["codes"])
    try:
        codes, note = _wished(before, wish)
    except InputError:
        return held, Note(NO_OPTION)
    if codes == held["codes"]:
        return held, note
    past = [*held["past"], held["codes"]][-MOST_STEPS:]
    return {"codes": codes, "past": past, "ahead": []}, note


def _wished(before: State, wish: Wish) -> tuple[dict[str, str], Note]:
    if wish.single is not None:
        changed = change(before, *wish.single)
        return changed.codes, Note(refused=changed if changed.refused else None)
    codes = {**before.codes, **wish.codes}
    against = sketch_of(before.bench, codes, before).against
    if against:
        return before.codes, Note(f"Not changed: {'; '.join(against)}.")
    return codes, Note()


def _part(request: Request, before: State, after: State, held: Held, note: Note) -> HttpResponse:
    """What has changed on the page."""
    units, by = units_of(request), request.POST.get(BY, "")
    blocks = changed_blocks(before, after, units)
    if note != Note():
        blocks, by = tuple(b for thing in things_of(after, units) for b in thing.blocks), ""
    context = {
        "setup": held,
        "note": note,
        "may_change": True,
        "pictures": pictures_of(after, units),
        "follows": follows_of(after, units, before),
        "against": after.against,
        "blocks": blocks,
        "by": by,
    }
    return render(request, "teach/changed.html", context)
