"""Orders: list, make, read, take a step, open a paper."""

from __future__ import annotations

from typing import Any

from django.core.paginator import Paginator
from django.db import IntegrityError
from django.db.models import QuerySet
from django.http import HttpResponse
from django.utils import timezone
from pydantic import BaseModel

from chairwright_desk.api import faults
from chairwright_desk.api.calls.setups import setup_of
from chairwright_desk.api.faults import Wrong
from chairwright_desk.api.operations import Call, operation
from chairwright_desk.api.shapes.orders import OrderGiven, OrderNew, OrdersGiven, StepTaken
from chairwright_desk.audit.trail import note_export, note_read
from chairwright_desk.base.access import find, visible
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken
from chairwright_desk.clients.models import Client
from chairwright_desk.orders.bridge import Asked, paper
from chairwright_desk.orders.forms import StepForm
from chairwright_desk.orders.making import Wanted, make, next_number
from chairwright_desk.orders.models import Order, PriceText
from chairwright_desk.orders.opened import open_order, order_of
from chairwright_desk.orders.papers import beside_of, file_answer, file_stem, names_for
from chairwright_desk.orders.statuses import rule_of
from chairwright_desk.orders.steps import open_steps, take

A_PAGE = 50
PDF = "application/pdf"
TAKEN = "An order of the team has this number already."
NO_PAPERS = "A must is not met and nobody has accepted that, so there are no papers."


def told(request: Request, order: Order) -> OrderGiven:
    """Return an order as it is answered, with the steps and papers open to the person.

    Parameters
    ----------
    request : Request
    order : Order
    """
    fields = {
        name: getattr(order, name) for name in OrderGiven.model_fields if hasattr(order, name)
    }
    fields |= {
        "client": order.client_id,
        "steps": [rule.after.value for rule in open_steps(request, order)],
        "papers": list(names_for(request, order)),
    }
    return OrderGiven(**fields)


def _listed(call: Call, found: QuerySet[Order]) -> OrdersGiven:
    rows = found.select_related("client", "team").order_by("-created", "id")
    pages = Paginator(rows, A_PAGE)
    some = pages.page(call.page).object_list if call.page <= pages.num_pages else []
    listed = [told(call.request, each) for each in some]
    return OrdersGiven(page=call.page, pages=pages.num_pages, orders=listed)


@operation(
    "GET", "orders", "order.see", "Lists the orders of your teams.", gives=OrdersGiven, paged=True
)
def orders(call: Call) -> BaseModel:
    """List."""
    return _listed(call, visible(call.request, Order.objects.all()))


@operation(
    "GET", "clients/{client_id}/orders", "order.see", "Lists the orders of a client.",
    gives=OrdersGiven, paged=True,
)  # fmt: skip
def orders_of_client(call: Call, client_id: str) -> BaseModel:
    """List."""
    client = find(call.request, Client.objects.all(), client_id)
    return _listed(call, Order.objects.filter(client=client))


@operation(
    "POST", "clients/{client_id}/orders", "order.change", "Makes an order from a set-up, a draft.",
    takes=OrderNew, gives=OrderGiven, status=201, faults=(409,),
)  # fmt: skip
def new_order(call: Call, client_id: str) -> BaseModel:
    """Make."""
    setup = setup_of(call, client_id, call.body.setup)
    team = setup.client.team
    number = call.body.number or next_number(team)
    prices = _prices(setup.client, call.body.prices)
    if Order.objects.filter(team=team, number=number).exists():
        raise faults.in_the_way(TAKEN, "Send another number, or none.")
    wanted = Wanted(setup, number, call.body.dated or timezone.localdate(), prices)
    try:
        return told(call.request, make(call.request, setup.client, wanted))
    except IntegrityError:
        raise faults.in_the_way(TAKEN, "Send another number, or none.") from None


def _prices(client: Client, name: str | None) -> PriceText | None:
    if name is None:
        return None
    found = PriceText.objects.filter(team=client.team, name=name).order_by("id").first()
    if found is None:
        must, remedy = "must be a price list of the team", "Leave it out for the line's prices."
        raise faults.not_good(Wrong("prices", must, repr(name)[:80], remedy))
    return found


@operation("GET", "orders/{order_id}", "order.see", "Reads an order.", gives=OrderGiven)
def order(call: Call, order_id: str) -> BaseModel:
    """Read."""
    found = order_of(call.request, order_id)
    note_read(call.request, found)
    return told(call.request, found)


@operation(
    "POST", "orders/{order_id}/step", "order.build",
    "Takes a step of an order, where your role may take it.",
    takes=StepTaken, gives=OrderGiven, faults=(409,),
)  # fmt: skip
def step_order(call: Call, order_id: str) -> BaseModel:
    """Take a step; the order says in ``steps`` which are open."""
    found, body = order_of(call.request, order_id), call.body
    current = told(call.request, found)
    if body.revision != found.revision:
        yours = body.model_dump(mode="json", exclude_unset=True)
        raise faults.overtaken(current.model_dump(mode="json"), yours)
    rule = rule_of(found.status, body.to)
    if rule is None or (rule.ready and found.waiting):
        what = f"There is no step from {found.status} to {body.to.value} now."
        raise faults.in_the_way(what, "See “steps” of the order.")
    given = {"to": body.to.value, "revision": body.revision, "day": body.day, "serial": body.serial}
    form = StepForm({n: "" if v is None else str(v) for n, v in given.items()}, asks=rule.asks)
    if not form.is_valid():
        raise faults.not_good(*_wrongs(form))
    try:
        saved = take(call.request, found, body.revision, rule, form.cleaned_data)
    except Overtaken:
        now = told(call.request, order_of(call.request, order_id)).model_dump(mode="json")
        raise faults.overtaken(now, body.model_dump(mode="json", exclude_unset=True)) from None
    return told(call.request, saved)


def _wrongs(form: StepForm) -> list[Wrong]:
    pairs = [(n, str(words)) for n, every in form.errors.items() for words in every]
    return [Wrong(n, words, repr(form.data.get(n, ""))[:80], "Send another.") for n, words in pairs]


@operation(
    "GET", "orders/{order_id}/papers/{paper_name}", "papers.build",
    "Opens a paper of an order's last revision, as PDF.", media=PDF, faults=(409,),
)  # fmt: skip
def order_paper(call: Call, order_id: str, paper_name: str) -> HttpResponse:
    """Make the paper anew; the trail notes that it left the desk."""
    opened = open_order(call.request, order_id)
    found = opened.order
    if paper_name not in names_for(call.request, found):
        raise faults.not_found()
    if opened.worked is None or opened.worked.order.refused:
        raise faults.in_the_way(NO_PAPERS, "Say on the order's page who accepts it, and why.")
    units: Any = "in" if call.request.user.units == "inch" else "mm"
    beside = beside_of(found, opened.worked, (paper_name,))
    made = paper(paper_name, opened.worked, Asked("a4", units, False), beside)
    note_export(call.request, found, [f"{paper_name}, revision {found.latest}"])
    name = f"{file_stem(found, found.latest)}-{paper_name}.pdf"
    return file_answer(made, PDF, name, shown=False)
