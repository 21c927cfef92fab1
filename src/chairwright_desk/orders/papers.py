"""Which papers a visitor may have of an order, and what they are made of."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

from django.http import Http404, HttpResponse

from chairwright_desk.base.requests import Request
from chairwright_desk.bench.bridge import open_bench
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.shown import units_of
from chairwright_desk.bench.texts import as_weighed, line_of, texts_of
from chairwright_desk.orders.bridge import (
    FOR_THE_WORKSHOP,
    WORDS,
    Asked,
    Assessment,
    Beside,
    Described,
    Worked,
    assessed,
    described,
)
from chairwright_desk.orders.models import Order

ADJUST = "adjust-sheet"
SIZES: tuple[tuple[Literal["a4", "us-letter"], str], ...] = (
    ("a4", "A4"),
    ("us-letter", "US letter"),
)


@dataclass(frozen=True)
class PaperShown:
    """One paper that the visitor may open."""

    name: str
    words: str


def papers_for(request: Request, order: Order) -> tuple[PaperShown, ...]:
    """The papers that the visitor may open of an order.

    Parameters
    ----------
    request : Request
    order : Order
    """
    return tuple(PaperShown(name, WORDS[name]) for name in names_for(request, order))


def names_for(request: Request, order: Order) -> tuple[str, ...]:
    """Names of those papers, in the order of their use.

    Parameters
    ----------
    request : Request
    order : Order
    """
    clinical = request.user.may("papers.clinical", order.team_id)
    first = present_setup(order)
    return tuple(
        name
        for name in WORDS
        if (clinical or name in FOR_THE_WORKSHOP) and (name != ADJUST or first is not None)
    )


def present_setup(order: Order) -> Setup | None:
    """The chair that the client has now, when it is of the order's line.

    Parameters
    ----------
    order : Order
    """
    rows = Setup.objects.filter(client=order.client_id, present=True, line=order.line)
    return rows.order_by("created", "id").first()


def asked_of(request: Request, order: Order) -> Asked:
    """How papers are wanted, as the form of the page says it.

    Parameters
    ----------
    request : Request
        What its form sends, or stands in its address.
    order : Order

    Raises
    ------
    Http404
        For a size or units that there are not.
    """
    given = request.POST if request.method == "POST" else request.GET
    size, units = given.get("size", "a4"), given.get("units", units_of(request))
    if size not in dict(SIZES) or units not in ("mm", "in"):
        raise Http404
    clinical = request.user.may("papers.clinical", order.team_id)
    places = clinical and given.get("places") == "on"
    return Asked(
        "us-letter" if size == "us-letter" else "a4", "in" if units == "in" else "mm", places
    )


def beside_of(order: Order, worked: Worked, names: tuple[str, ...]) -> Beside:
    """What papers tell besides the revision.

    Parameters
    ----------
    order : Order
    worked : Worked
    names : tuple of str
        The papers that are wanted.

    Raises
    ------
    InputError
        When the present chair or a fact cannot be read.
    """
    first = present_setup(order) if ADJUST in names else None
    return Beside(
        first=None if first is None else described_now(first),
        first_name="" if first is None else first.name,
        payer=payer_of(order, worked),
        serial=order.serial,
        delivered=order.delivered.isoformat() if order.delivered else "",
    )


def payer_of(order: Order, worked: Worked) -> Assessment | None:
    """What the order's scheme says; None without a scheme.

    Parameters
    ----------
    order : Order
    worked : Worked
    """
    return assessed(worked, order.scheme, order.facts) if order.scheme else None


def described_now(setup: Setup) -> Described:
    """A kept set-up as it stands, with its figures.

    Parameters
    ----------
    setup : Setup

    Raises
    ------
    InputError
        When it cannot be built, or nothing is known of the client.
    """
    texts = texts_of(setup.client)
    if texts is None:
        raise Http404
    bench = open_bench(texts.client, line_of(setup.line), "", tuple(setup.extras))
    return described(as_weighed(setup.client_id, bench), setup.codes)


def file_answer(content: bytes, media: str, name: str, *, shown: bool) -> HttpResponse:
    """A file as the answer: opened in the browser, or kept.

    Parameters
    ----------
    content : bytes
    media : str
    name : str
        Of the file; holds nothing of the client.
    shown : bool
        Whether the browser shows it.
    """
    kind = "inline" if shown else "attachment"
    headers: dict[str, Any] = {"Content-Disposition": f'{kind}; filename="{name}"'}
    return HttpResponse(content, content_type=media, headers=headers)


def file_stem(order: Order, number: int) -> str:
    """Begin of a file's name: order number and revision, in plain letters.

    Parameters
    ----------
    order : Order
    number : int
    """
    plain = "".join(c if c.isascii() and (c.isalnum() or c in "-_") else "-" for c in order.number)
    return f"{plain}-r{number}"
