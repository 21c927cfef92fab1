"""A step of an order taken: by whom it may be, what it needs, what it writes."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

from django.core.exceptions import PermissionDenied
from django.db import transaction
from django.utils import timezone
from django.utils.formats import date_format

from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import save_revised
from chairwright_desk.orders.bridge import first_review
from chairwright_desk.orders.models import Order, OrderStep
from chairwright_desk.orders.statuses import Rule, Status, steps_from


def open_steps(request: Request, order: Order) -> list[Rule]:
    """The steps that the visitor may take now; one that waits for acceptances is left out.

    Parameters
    ----------
    request : Request
    order : Order
    """
    return [
        rule
        for rule in steps_from(order.status)
        if request.user.may(rule.action, order.team_id) and not (rule.ready and order.waiting)
    ]


def suggested_day(order: Order, rule: Rule) -> date | None:
    """The day that a step's form begins with.

    Parameters
    ----------
    order : Order
    rule : Rule
    """
    today = timezone.localdate()
    if rule.asks == "promised":
        return today + timedelta(days=order.days)
    return today if rule.asks == "delivered" else None


def take(request: Request, order: Order, revision: int, rule: Rule, given: dict[str, Any]) -> Order:
    """Take a step.

    Parameters
    ----------
    request : Request
    order : Order
    revision : int
        Which save the form was made from.
    rule : Rule
        From the order's own status.
    given : dict
        ``day`` and ``serial`` of the form, where the step asks for them.

    Raises
    ------
    PermissionDenied
        When the visitor's role does not take this step.
    Overtaken
        Somebody else has saved since.
    """
    if not request.user.may(rule.action, order.team_id):
        raise PermissionDenied
    before, values, words = order.status, *_values(rule, given)
    with transaction.atomic():
        saved = save_revised(request, order, revision, {"status": rule.after, **values})
        OrderStep.objects.create(
            order=order,
            before=before,
            after=rule.after,
            by=request.user,
            number=order.latest,
            words=words,
        )
    return saved


def _values(rule: Rule, given: dict[str, Any]) -> tuple[dict[str, Any], str]:
    day = given.get("day")
    said = date_format(day, "DATE_FORMAT") if day else ""
    if rule.asks == "promised":
        return {"promised": day}, f"Promised for {said}."
    if rule.asks == "delivered":
        earliest, words = first_review(day.isoformat() if day else "")
        values = {"delivered": day, "review_due": date.fromisoformat(earliest)}
        return {**values, "serial": given.get("serial", "")}, f"Delivered on {said}. {words}"[:200]
    if rule.asks == "review":
        return {
            "review_due": day
        }, f"Next review on {said}." if day else "No further review is set."
    if rule.after == Status.CLOSED:
        return {"review_due": None}, ""
    return {}, ""
