"""Lists of orders: of the visitor's teams, of one client; and a new order."""

from __future__ import annotations

from datetime import timedelta

from django.contrib import messages
from django.db import IntegrityError
from django.db.models import Q
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone

from chairwright_desk.base.access import page, visible
from chairwright_desk.base.requests import Request
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.opened import client_of
from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.kept import drop, filled
from chairwright_desk.orders.bridge import InputError
from chairwright_desk.orders.forms import NUMBER_TAKEN, OrderForm
from chairwright_desk.orders.making import Wanted, make, next_number
from chairwright_desk.orders.models import Order, PriceText
from chairwright_desk.orders.statuses import IN_THE_WORKSHOP, Status

MOST = 200
SOON = timedelta(days=30)


@page("order.see")
def orders(request: Request) -> HttpResponse:
    """List the orders of the visitor's teams, what is due first."""
    asked = request.GET.get("status", "")
    every = visible(request, Order.objects.select_related("client", "team"))
    workshop = not request.user.may("papers.clinical")
    if asked in Status.values:
        rows = every.filter(status=asked)
    elif asked == "all":
        rows = every
    elif workshop:
        rows = every.filter(status__in=IN_THE_WORKSHOP)
    else:
        rows = every.exclude(status=Status.CLOSED)
    context = {
        "rows": rows.order_by("-created", "id")[:MOST],
        "due": _due(every),
        "asked": asked,
        "statuses": Status.choices,
        "workshop": workshop,
        "most": MOST,
    }
    return render(request, "orders/list.html", context)


def _due(every: object) -> list[Order]:
    """Reviews that are due or soon will be, and chairs that are late, by day."""
    today = timezone.localdate()
    soon = Q(status=Status.DELIVERED, review_due__lte=today + SOON)
    waiting = [*Status.values[: Status.values.index(Status.DELIVERED)]]
    late = Q(status__in=waiting[3:], promised__lt=today)
    rows = every.filter(soon | late | Q(status=Status.REVIEW_DUE))  # type: ignore[attr-defined]
    return list(rows.order_by("review_due", "promised", "id")[:MOST])


@page("order.see")
def of_client(request: Request, client_id: str) -> HttpResponse:
    """List the orders of one client."""
    client = client_of(request, client_id)
    context = {
        "client": client,
        "rows": Order.objects.filter(client=client).order_by("-created", "id"),
        "may_change": request.user.may("order.change", client.team_id),
        "setups": Setup.objects.filter(client=client).exists(),
    }
    return render(request, "orders/of_client.html", context)


@page("order.change", "GET", "POST")
def new(request: Request, client_id: str) -> HttpResponse:
    """Make an order from a set-up."""
    client, key = client_of(request, client_id), f"orders.new:{client_id}"
    form = filled(request, key, OrderForm, client=client, initial=_initial(client))
    if "setup" in request.GET:  # from the bench: it goes before what was typed earlier
        form.initial["setup"] = request.GET["setup"]
    if request.method == "POST" and form.is_valid():
        order = _made(request, client, form)
        if order is not None:
            drop(request, key)
            messages.success(request, f"Order {order.number} is made, as a draft.")
            return redirect("orders:show", order.pk)
    setups = Setup.objects.filter(client=client).exists()
    context = {"client": client, "form": form, "form_key": key, "setups": setups}
    return render(request, "orders/new.html", context)


def _initial(client: Client) -> dict[str, object]:
    prices = PriceText.objects.filter(team=client.team).order_by("-changed_at", "id").first()
    kept = Setup.objects.filter(client=client, present=False).order_by("-changed_at", "id").first()
    return {
        "setup": None if kept is None else kept.pk,
        "number": next_number(client.team),
        "dated": timezone.localdate(),
        "prices": None if prices is None else prices.pk,
    }


def _made(request: Request, client: Client, form: OrderForm) -> Order | None:
    data = form.cleaned_data
    wanted = Wanted(data["setup"], data["number"], data["dated"], data["prices"])
    try:
        return make(request, client, wanted)
    except InputError as error:
        add_errors(form, error, wanted)
    except IntegrityError:
        form.add_error("number", NUMBER_TAKEN)
    return None


def add_errors(form: OrderForm, error: InputError, wanted: Wanted) -> None:
    """Put each problem beside the field that it is about.

    Parameters
    ----------
    form : OrderForm
    error : InputError
    wanted : Wanted
    """
    prices = "" if wanted.prices is None else wanted.prices.name
    for problem in error.problems:
        of_prices = prices and problem.where.startswith(f"{prices}:")
        form.add_error("prices" if of_prices else "setup", str(problem))
