"""Orders made and changed: each change is a revision of its own, and the old one stays."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Any

from django.db import transaction
from django.utils import timezone

from chairwright_desk.accounts.models import Team
from chairwright_desk.audit.trail import note_change
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, save_revised
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.texts import Texts, line_of, texts_of
from chairwright_desk.chair_now.known import pads_kept
from chairwright_desk.clients.models import Client
from chairwright_desk.orders.bridge import (
    Acceptance,
    InputError,
    Problem,
    Worked,
    Written,
    line_text,
    work_out,
)
from chairwright_desk.orders.models import Order, OrderRevision, OrderStep, PriceText
from chairwright_desk.orders.statuses import Status


@dataclass(frozen=True)
class Wanted:
    """What an order is to be made of.

    Parameters
    ----------
    setup : Setup
    number : str
    dated : date
    prices : PriceText or None
        None for the line's own prices.
    """

    setup: Setup
    number: str
    dated: date
    prices: PriceText | None


def written_of(client: Client, wanted: Wanted) -> Written:
    """All that a revision is worked out from, as it stands now.

    Parameters
    ----------
    client : Client
    wanted : Wanted

    Raises
    ------
    InputError
        When nothing is known of the client yet.
    """
    texts = texts_of(client)
    if texts is None:
        must, remedy = "an order needs the client's measures", "Enter them first."
        raise InputError(Problem("set-up", must, "none", remedy))
    setup, prices, line = wanted.setup, wanted.prices, line_of(wanted.setup.line)
    named, text = (line, line_text(line)) if isinstance(line, str) else (line.name, line.text)
    return Written(
        client=texts.client,
        places=texts.places,
        line=named,
        line_text=text,
        prices="" if prices is None else prices.name,
        prices_text="" if prices is None else prices.text,
        name=setup.name,
        codes=dict(setup.codes),
        extras=tuple(setup.extras),
        number=wanted.number,
        dated=wanted.dated.isoformat(),
        pads=_pads(client, texts),
    )


def _pads(client: Client, texts: Texts) -> dict[str, Any] | None:
    """The weighing that counts, with the wording of its line."""
    pads = pads_kept(client, texts)
    if pads is None:
        return None
    line = line_of(pads["line"])
    named, text = (line, line_text(line)) if isinstance(line, str) else (line.name, line.text)
    return {**pads, "line": named, "line_text": text}


def worked_of(order: Order, number: int | None = None) -> tuple[OrderRevision, Worked]:
    """One revision of an order with all that comes of it.

    Parameters
    ----------
    order : Order
    number : int, optional
        By default the latest.

    Raises
    ------
    OrderRevision.DoesNotExist
    InputError
        When the program does not read any more what the revision holds.
    """
    wanted = order.latest if number is None else number
    rows = {
        each.number: each
        for each in OrderRevision.objects.filter(order=order, number__in=[wanted, wanted - 1])
    }
    if wanted not in rows:
        raise OrderRevision.DoesNotExist
    row, before = rows[wanted], rows.get(wanted - 1)
    earlier = (None, None) if before is None else (before.outcome, before.written)
    return row, work_out(Written.of(row.written), *earlier)


def make(request: Request, client: Client, wanted: Wanted) -> Order:
    """Make an order with its first revision.

    Parameters
    ----------
    request : Request
    client : Client
    wanted : Wanted

    Raises
    ------
    InputError
        When the set-up cannot be ordered like that.
    """
    written = written_of(client, wanted)
    worked = work_out(written)
    with transaction.atomic():
        order = Order.objects.create(
            team=client.team,
            client=client,
            changed_by=request.user,
            **_head(wanted, worked),
        )
        _keep(request, order, wanted.setup.pk, written, worked)
        OrderStep.objects.create(order=order, after=Status.DRAFT, by=request.user, number=1)
        note_change(request, order, ["number", "setup_name", "status"])
    return order


def _head(wanted: Wanted, worked: Worked) -> dict[str, Any]:
    came = worked.outcome()
    return {
        "number": wanted.number,
        "setup_name": wanted.setup.name,
        "line": wanted.setup.line,
        "dated": wanted.dated,
        "prices_name": "" if wanted.prices is None else wanted.prices.name,
        "total": came["total"],
        "currency": came["currency"],
        "days": came["days"],
        "waiting": came["waiting"],
        "promised": wanted.dated + timedelta(days=came["days"]),
    }


def _keep(request: Request, order: Order, setup: str, written: Written, worked: Worked) -> None:
    OrderRevision.objects.create(
        order=order,
        number=written.revision,
        made_by=request.user,
        setup=setup,
        written=written.kept(),
        outcome=worked.outcome(),
        changes=[[each.label, each.before, each.after] for each in worked.order.changes],
    )


def revise(request: Request, order: Order, revision: int, wanted: Wanted) -> bool:
    """Make the next revision of an order; it is a draft again.

    Parameters
    ----------
    request : Request
    order : Order
    revision : int
        Which save the form was made from.
    wanted : Wanted

    Returns
    -------
    bool
        False when nothing differs: nothing is saved then.

    Raises
    ------
    InputError
        When the set-up cannot be ordered like that.
    Overtaken
        Somebody else has saved since.
    """
    row, _ = worked_of(order)
    written = replace(written_of(order.client, wanted), revision=order.latest + 1)
    worked = work_out(written, row.outcome, row.written)
    if not worked.order.changes and wanted.setup.pk == row.setup and order.revision == revision:
        return False
    words = f"Revision {written.revision} is made."
    _save(request, order, revision, wanted.setup.pk, written, worked, _head(wanted, worked), words)
    return True


def accept(request: Request, order: Order, revision: int, said: tuple[Acceptance, ...]) -> Worked:
    """Accept by name what fails: a revision with nothing else changed.

    Parameters
    ----------
    request : Request
    order : Order
    revision : int
        Which save the form was made from.
    said : tuple of Acceptance

    Raises
    ------
    InputError
        When an acceptance cannot be so.
    Overtaken
        Somebody else has saved since.
    """
    row, _ = worked_of(order)
    written = replace(Written.of(row.written), revision=order.latest + 1, said=said)
    worked = work_out(written, row.outcome, row.written)
    what = "a must that fails" if len(said) == 1 else f"{len(said)} musts that fail"
    words = f"Revision {written.revision}: {said[0].by} accepts {what}."
    values = {"waiting": len(worked.waiting)}
    _save(request, order, revision, row.setup, written, worked, values, words)
    return worked


def _save(
    request: Request,
    order: Order,
    revision: int,
    setup: str,
    written: Written,
    worked: Worked,
    values: Mapping[str, Any],
    words: str,
) -> None:
    before = order.status
    more = {"latest": written.revision, "status": Status.DRAFT}
    with transaction.atomic():
        save_revised(request, order, revision, {**values, **more})
        _keep(request, order, setup, written, worked)
        OrderStep.objects.create(
            order=order,
            before=before,
            after=Status.DRAFT,
            by=request.user,
            number=written.revision,
            words=words,
        )


def next_number(team: Team) -> str:
    """A number that no order of a team has: the year and the next in it.

    Parameters
    ----------
    team : Team
    """
    year = timezone.localdate().year
    taken = Order.objects.filter(team=team, number__startswith=f"{year}-")
    numbers = (text.rpartition("-")[2] for text in taken.values_list("number", flat=True))
    last = max((int(text) for text in numbers if text.isdecimal()), default=0)
    return f"{year}-{last + 1:03d}"


__all__ = ["Overtaken", "Wanted", "accept", "make", "next_number", "revise", "worked_of"]
