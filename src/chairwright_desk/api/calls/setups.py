"""Set-ups: list, make, change, judge, and the best one."""

from __future__ import annotations

from typing import Any

from django.db import transaction
from pydantic import BaseModel

from chairwright_desk.api import faults
from chairwright_desk.api.bridge import figures_told
from chairwright_desk.api.faults import Wrong
from chairwright_desk.api.operations import Call, operation
from chairwright_desk.api.shapes.setups import (
    BestGiven,
    JudgedGiven,
    SetupChange,
    SetupGiven,
    SetupNew,
    SetupsGiven,
    Sought,
    Tried,
)
from chairwright_desk.audit.trail import note_change, note_read
from chairwright_desk.base.access import find
from chairwright_desk.base.revised import Overtaken, save_revised
from chairwright_desk.bench.bridge import Bench, first_codes, open_bench, state_of
from chairwright_desk.bench.bridge import find as find_best
from chairwright_desk.bench.models import MOST_STEPS, Setup
from chairwright_desk.bench.shown import bench_of
from chairwright_desk.bench.steps import moved
from chairwright_desk.bench.texts import Texts, line_of, lines_known, texts_of
from chairwright_desk.clients.models import Client

MOST = 500


def told(setup: Setup) -> SetupGiven:
    """Return a set-up as it is answered.

    Parameters
    ----------
    setup : Setup
    """
    return SetupGiven(
        id=setup.pk,
        client=setup.client_id,
        name=setup.name,
        line=setup.line,
        codes=setup.codes,
        extras=setup.extras,
        present=setup.present,
        revision=setup.revision,
        changed_at=setup.changed_at,
    )


def setup_of(call: Call, client_id: str, setup_id: str) -> Setup:
    """Return a set-up of a client.

    Parameters
    ----------
    call : Call
    client_id, setup_id : str
    """
    client = find(call.request, Client.objects.select_related("team"), client_id)
    return find(
        call.request, Setup.objects.filter(client=client).select_related("client"), setup_id
    )


def texts_for(client: Client) -> Texts:
    """Return what the engineering reads of a client; 409 when nothing is known yet.

    Parameters
    ----------
    client : Client
    """
    texts = texts_of(client)
    if texts is None:
        what = "The client has no measures yet."
        raise faults.in_the_way(what, "Send them with PUT /api/clients/{client_id}/measures.")
    return texts


def opened(client: Client, line: str) -> Bench:
    """Return a client on a line.

    Parameters
    ----------
    client : Client
    line : str
    """
    if line not in dict(lines_known(client.team_id)):
        must, remedy = "must be a line of this desk", "See GET /api/lines."
        raise faults.not_good(Wrong("line", must, repr(line)[:80], remedy))
    texts = texts_for(client)
    return open_bench(texts.client, line_of(line), texts.places)


@operation(
    "GET", "clients/{client_id}/setups", "setup.see", "Lists the set-ups of a client.",
    gives=SetupsGiven,
)  # fmt: skip
def setups(call: Call, client_id: str) -> BaseModel:
    """List."""
    client = find(call.request, Client.objects.all(), client_id)
    rows = Setup.objects.filter(client=client).order_by("-present", "created", "id")[:MOST]
    return SetupsGiven(setups=[told(each) for each in rows])


@operation(
    "POST", "clients/{client_id}/setups", "setup.change", "Makes a set-up.",
    takes=SetupNew, gives=SetupGiven, status=201, faults=(409,),
)  # fmt: skip
def new_setup(call: Call, client_id: str) -> BaseModel:
    """Make; without codes it begins with the one that misses least of what is asked."""
    client, body = find(call.request, Client.objects.all(), client_id), call.body
    if Setup.objects.filter(client=client).count() >= MOST:
        msg = f"The client has {MOST} set-ups."
        raise faults.in_the_way(msg, "Remove some first.")
    bench = opened(client, body.line)
    first = first_codes(bench) if body.codes is None else state_of(bench, body.codes).codes
    fixed = [part.code for part in bench.line.fixed_parts if part in bench.line.extras]
    person = call.request.user
    with transaction.atomic():
        setup = Setup.objects.create(
            client=client, name=body.name, line=body.line, codes=first, extras=fixed,
            created_by=person, changed_by=person,
        )  # fmt: skip
        note_change(call.request, setup, ["name", "line", "codes"])
    return told(setup)


@operation(
    "GET", "clients/{client_id}/setups/{setup_id}", "setup.see", "Reads a set-up.", gives=SetupGiven
)
def setup(call: Call, client_id: str, setup_id: str) -> BaseModel:
    """Read."""
    found = setup_of(call, client_id, setup_id)
    note_read(call.request, found)
    return told(found)


@operation(
    "PATCH", "clients/{client_id}/setups/{setup_id}", "setup.change", "Changes a set-up.",
    takes=SetupChange, gives=SetupGiven, faults=(409,),
)  # fmt: skip
def change_setup(call: Call, client_id: str, setup_id: str) -> BaseModel:
    """Change; the change of choices can be taken back on the bench as one step."""
    found = setup_of(call, client_id, setup_id)
    values = call.sent
    if "codes" in values:
        values |= _step(found, values["codes"])
    try:
        return told(save_revised(call.request, found, call.body.revision, values))
    except Overtaken:
        current = told(Setup.objects.get(pk=found.pk)).model_dump(mode="json")
        yours = call.body.model_dump(mode="json", exclude_unset=True)
        raise faults.overtaken(current, yours) from None


def _step(found: Setup, wished: dict[str, str]) -> dict[str, Any]:
    bench = bench_of(found, texts_for(found.client))
    unknown = sorted(set(wished) - set(bench.line.choices))
    if unknown:
        must, remedy = "must be a choice of the line", "See the codes of the set-up."
        raise faults.not_good(*(Wrong(f"codes.{n}", must, "another", remedy) for n in unknown))
    after = state_of(bench, {**found.codes, **wished})
    if after.against and not state_of(bench, found.codes).against:
        must, remedy = "must leave a chair that may be built", "Change what stands against it too."
        raise faults.not_good(*(Wrong("codes", must, words, remedy) for words in after.against))
    step = moved(found.codes, after.codes)
    past = [*found.past, step][-MOST_STEPS:] if step else found.past
    return {"codes": after.codes, "past": past, "ahead": [] if step else found.ahead}


@operation(
    "POST", "clients/{client_id}/setups/{setup_id}/judge", "setup.see",
    "Judges a set-up, or what it would be with other choices: figures, spreads, verdicts.",
    takes=Tried, gives=JudgedGiven, faults=(409,), changes=False,
)  # fmt: skip
def judge_setup(call: Call, client_id: str, setup_id: str) -> BaseModel:
    """Judge; nothing is saved."""
    found = setup_of(call, client_id, setup_id)
    bench = bench_of(found, texts_for(found.client))
    unknown = sorted(set(call.body.codes) - set(bench.line.choices))
    if unknown:
        must, remedy = "must be a choice of the line", "See the codes of the set-up."
        raise faults.not_good(*(Wrong(f"codes.{n}", must, "another", remedy) for n in unknown))
    state = state_of(bench, {**found.codes, **call.body.codes})
    note_read(call.request, found)
    told_figures = figures_told(state)
    return JudgedGiven.model_validate(
        {"codes": state.codes, "against": list(state.against), "figures": told_figures}
    )


@operation(
    "POST", "clients/{client_id}/best", "setup.see",
    "Finds the best set-up of a line for a client, proven; saves nothing.",
    takes=Sought, gives=BestGiven, faults=(409,), changes=False,
)  # fmt: skip
def best_setup(call: Call, client_id: str) -> BaseModel:
    """Find; reasons and trade-offs take longer and are work under way (POST /api/jobs)."""
    client = find(call.request, Client.objects.all(), client_id)
    found = find_best(opened(client, call.body.line), "mm", reasons=False)
    return BestGiven(
        codes=found.codes or None, looked_among=found.count, made_to_order=found.to_order
    )
