"""The bench: set-ups of a client, and one of them changed step by step."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from django.http import HttpResponse
from django.shortcuts import render

from chairwright_desk.audit.trail import note_read
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken
from chairwright_desk.bench import steps
from chairwright_desk.bench.bridge import (
    Changed,
    InputError,
    State,
    change,
    follows_of,
    payer_shown,
    sketch_of,
    state_of,
)
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.opened import Opened, open_setup, texts_missing
from chairwright_desk.bench.shown import (
    changed_blocks,
    pictures_shown,
    places_judged,
    shown_of,
    things_of,
    units_of,
)
from chairwright_desk.bench.wishes import BY, Wish, wish_of

SKETCHED = "bench-sketch"
"""Event on the page: the spreads are still those of the set-up before."""

NO_OPTION = "The line has no such option. Nothing is changed."


@dataclass(frozen=True)
class Note:
    """What is said after a step.

    Parameters
    ----------
    said : str
    refused : Changed or None
    theirs : Setup or None
        As somebody else has saved it meanwhile.
    wish : str
        What was wished, as a button sends it again.
    """

    said: str = ""
    refused: Changed | None = None
    theirs: Setup | None = None
    wish: str = ""


@page("setup.see")
def show(request: Request, client_id: str, setup_id: str) -> HttpResponse:
    """Show one set-up on the bench."""
    opened = open_setup(request, client_id, setup_id)
    if opened.bench is None:
        return texts_missing(request, opened)
    note_read(request, opened.setup)
    return whole(request, opened, state_of(opened.bench, opened.setup.codes), Note())


def whole(
    request: Request, opened: Opened, state: State, note: Note, *, status: int = 200
) -> HttpResponse:
    """The whole page.

    Parameters
    ----------
    request : Request
    opened : Opened
    state : State
    note : Note
    status : int
    """
    shown = shown_of(state, units_of(request))
    return render(request, "bench/show.html", context(request, opened, note, shown=shown),
                  status=status)  # fmt: skip


def context(request: Request, opened: Opened, note: Note, **more: Any) -> dict[str, Any]:
    """What every answer of the bench needs.

    Parameters
    ----------
    request : Request
    opened : Opened
    note : Note
    **more : object
        Added as it is.
    """
    setup, client = opened.setup, opened.client
    return {
        "client": client,
        "setup": setup,
        "note": note,
        "may_change": request.user.may("setup.change", client.team_id),
        **more,
    }


@page("setup.change", "POST")
def step(request: Request, client_id: str, setup_id: str) -> HttpResponse:
    """Change a choice."""
    opened = open_setup(request, client_id, setup_id)
    if opened.bench is None:
        return texts_missing(request, opened)
    before = state_now(opened)
    wish = wish_of(request.POST, opened.setup.codes)
    if revision_of(request) != opened.setup.revision:
        return overtaken(request, opened, before, wish)
    try:
        codes, note = _wished(before, wish)
        steps.take(request, opened.setup, revision_of(request), codes)
    except InputError:
        return answer(request, opened, before, before, Note(NO_OPTION), status=422)
    except Overtaken as error:
        return overtaken(request, opened.now(error.current), before, wish)
    return answer(request, opened, before, sketch_of(opened.bench, codes, before), note)


def _wished(before: State, wish: Wish) -> tuple[dict[str, str], Note]:
    """The set-up that comes of a wish, and what is said of it."""
    if wish.single is None:
        codes = {**before.codes, **wish.codes}
        against = sketch_of(before.bench, codes, before).against
        if against and not before.against:
            return before.codes, Note(f"Not changed: {'; '.join(against)}.")
        return codes, Note()
    changed = change(before, *wish.single)
    return changed.codes, Note(refused=changed if changed.refused else None)


def state_now(opened: Opened) -> State:
    """A saved set-up, quickly: as known, or as a sketch."""
    if opened.bench is None:
        raise AssertionError
    return sketch_of(opened.bench, opened.setup.codes, None)


def revision_of(request: Request) -> int:
    """Which revision a form was made from; 0 when it does not say."""
    typed = request.POST.get("revision", "")
    return int(typed) if typed.isdigit() else 0


@page("setup.change", "POST")
def undo(request: Request, client_id: str, setup_id: str) -> HttpResponse:
    """Take the last step back, or again."""
    opened = open_setup(request, client_id, setup_id)
    if opened.bench is None:
        return texts_missing(request, opened)
    before = state_now(opened)
    move = steps.again if request.POST.get("way") == "again" else steps.back
    try:
        move(request, opened.setup, revision_of(request))
    except Overtaken as error:
        return overtaken(request, opened.now(error.current), before, Wish({}))
    after = sketch_of(opened.bench, opened.setup.codes, before)
    return answer(request, opened, before, after, Note())


def overtaken(request: Request, opened: Opened, before: State, wish: Wish) -> HttpResponse:
    """Somebody else was faster: what stands now, and the wish to be made again.

    Parameters
    ----------
    request : Request
    opened : Opened
        As saved now.
    before : State
        Which the wish was made on.
    wish : Wish
    """
    if opened.bench is None:
        raise AssertionError
    typed = " ".join(f"{name}={code}" for name, code in wish.codes.items())
    note = Note(theirs=opened.setup, wish=typed)
    after = state_of(opened.bench, opened.setup.codes)
    return answer(request, opened, before, after, note, status=409)


def answer(
    request: Request,
    opened: Opened,
    before: State,
    after: State,
    note: Note,
    *,
    status: int = 200,
) -> HttpResponse:
    """What has changed on the page; the whole page where there is no JavaScript.

    Parameters
    ----------
    request : Request
    opened : Opened
    before, after : State
    note : Note
    status : int
    """
    if not request.htmx:
        if status == 200 and note == Note():
            return opened.redirect()
        return whole(request, opened, state_of(after.bench, after.codes), note, status=status)
    units, by = units_of(request), request.POST.get(BY, "")
    blocks = changed_blocks(before, after, units)
    if note != Note():
        blocks, by = tuple(b for thing in things_of(after, units) for b in thing.blocks), ""
    more = {
        "pictures": pictures_shown(after, units),
        "follows": follows_of(after, units, before),
        "against": after.against,
        "blocks": blocks,
        "by": by,
        "sure": after.sure,
        "places": places_judged(after, units) if after.sure else None,
        "paid": payer_shown(after) if after.sure else None,
    }
    response = render(
        request, "bench/changed.html", context(request, opened, note, **more), status=status
    )
    if not after.sure:
        response["HX-Trigger-After-Swap"] = SKETCHED
    return response


@page("setup.see")
def sure(request: Request, client_id: str, setup_id: str) -> HttpResponse:
    """The ledger with the set-up's own spreads and the places, after a sketch."""
    opened = open_setup(request, client_id, setup_id)
    if opened.bench is None:
        return texts_missing(request, opened)
    state, units = state_of(opened.bench, opened.setup.codes), units_of(request)
    more = {
        "follows": follows_of(state, units),
        "against": state.against,
        "places": places_judged(state, units),
        "paid": payer_shown(state),
        "sure": True,
    }
    return render(request, "bench/sure.html", context(request, opened, Note(), **more))
