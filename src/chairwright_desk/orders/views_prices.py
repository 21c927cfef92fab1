"""Price lists of a team."""

from __future__ import annotations

from django.contrib import messages
from django.db import transaction
from django.http import HttpResponse
from django.shortcuts import redirect, render

from chairwright_desk.accounts.models import Team
from chairwright_desk.audit.trail import note_change, note_removal
from chairwright_desk.base.access import find, page, visible
from chairwright_desk.base.requests import Request
from chairwright_desk.drafts.kept import drop, filled
from chairwright_desk.orders.forms import PriceForm
from chairwright_desk.orders.models import PriceText

KEY = "orders.prices"


@page("order.change", "GET", "POST")
def prices(request: Request) -> HttpResponse:
    """List the price lists, and bring one in."""
    teams = Team.objects.filter(pk__in=request.user.teams_for("order.change")).order_by("name")
    form = filled(request, KEY, PriceForm)
    team = teams.filter(pk=request.POST.get("team", "")).first() or teams.first()
    if request.method == "POST" and form.is_valid() and team is not None:
        data = form.cleaned_data
        with transaction.atomic():
            made = PriceText.objects.create(
                team=team, name=data["name"], text=data["text"], changed_by=request.user
            )
            note_change(request, made, ["name", "text"])
        drop(request, KEY)
        messages.success(request, f"The price list {made.name} is read and kept.")
        return redirect("orders:prices")
    rows = visible(request, PriceText.objects.select_related("team", "changed_by"))
    context = {"form": form, "form_key": KEY, "teams": teams, "rows": rows}
    return render(request, "orders/prices.html", context)


@page("order.change", "POST")
def drop_prices(request: Request, prices_id: str) -> HttpResponse:
    """Remove a price list; orders made with it keep it."""
    found = find(request, PriceText.objects.all(), prices_id)
    with transaction.atomic():
        note_removal(request, found)
        found.delete()
    messages.success(request, f"{found.name} is removed. Orders made with it keep its prices.")
    return redirect("orders:prices")
