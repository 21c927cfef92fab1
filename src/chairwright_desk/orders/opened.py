"""An order found for a page, worked out, with what the visitor may see of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from django.http import Http404, HttpResponse
from django.shortcuts import render

from chairwright_desk.base.access import find
from chairwright_desk.base.requests import Request
from chairwright_desk.bench.models import Setup
from chairwright_desk.orders.bridge import InputError, Worked
from chairwright_desk.orders.making import worked_of
from chairwright_desk.orders.models import Order, OrderRevision

LABELS = {
    "status": "Status",
    "latest": "Revision",
    "setup_name": "Set-up",
    "number": "Order number",
    "dated": "Day of the order",
    "prices_name": "Price list",
    "promised": "Promised for",
    "delivered": "Delivered",
    "said": "Accepted by, and why",
}


@dataclass(frozen=True)
class Opened:
    """One revision of an order.

    Parameters
    ----------
    order : Order
    row : OrderRevision
    worked : Worked or None
        None when the program cannot work it out any more.
    trouble : tuple of str
        Why not.
    """

    order: Order
    row: OrderRevision
    worked: Worked | None
    trouble: tuple[str, ...] = ()


def order_of(request: Request, order_id: str) -> Order:
    """The order of an address.

    Parameters
    ----------
    request : Request
    order_id : str
    """
    return find(request, Order.objects.select_related("client", "team", "changed_by"), order_id)


def open_order(request: Request, order_id: str, number: int | None = None) -> Opened:
    """The order of an address in one revision.

    Parameters
    ----------
    request : Request
    order_id : str
    number : int, optional
        By default the latest.

    Raises
    ------
    Http404
        When it has no such revision.
    """
    order = order_of(request, order_id)
    try:
        row, worked = worked_of(order, number)
    except OrderRevision.DoesNotExist as error:
        raise Http404 from error
    except InputError as error:
        row = OrderRevision.objects.get(order=order, number=number or order.latest)
        return Opened(order, row, None, tuple(str(each) for each in error.problems))
    return Opened(order, row, worked)


def setup_of(request: Request, opened: Opened) -> tuple[Setup | None, bool]:
    """The set-up on the bench that a revision was made of, and whether it has changed since.

    Parameters
    ----------
    request : Request
    opened : Opened

    Returns
    -------
    Setup or None
        None when it is not kept any more, or the visitor may not see it.
    bool
    """
    order, written = opened.order, opened.row.written
    if not request.user.may("setup.see", order.team_id):
        return None, False
    found = Setup.objects.filter(client=order.client_id, pk=opened.row.setup).first()
    if found is None:
        return None, False
    return found, (found.codes, list(found.extras)) != (written["codes"], list(written["extras"]))


def sees_clinical(request: Request, order: Order) -> bool:
    """Whether the visitor may see what concerns the client beside the chair."""
    return request.user.may("papers.clinical", order.team_id)


def told(request: Request, template: str, opened: Opened, **more: Any) -> HttpResponse:
    """A page of an order.

    Parameters
    ----------
    request : Request
    template : str
    opened : Opened
    **more : object
        Added to what the template sees.
    """
    order = opened.order
    on_bench, changed = setup_of(request, opened)
    context = {
        "on_bench": on_bench,
        "changed_on_bench": changed,
        "client": order.client,
        "order": order,
        "row": opened.row,
        "trouble": opened.trouble,
        "clinical": sees_clinical(request, order),
        "may_change": request.user.may("order.change", order.team_id),
        **more,
    }
    return render(request, template, context, status=more.get("status", 200))
