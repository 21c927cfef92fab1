"""Where an order can stand, and every step from one to the other: the one table."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from django.db.models import TextChoices

Asks = Literal["", "promised", "delivered", "review"]


class Status(TextChoices):
    """Where an order stands."""

    DRAFT = "draft", "Draft"
    QUOTED = "quoted", "Quoted"
    ACCEPTED = "accepted", "Accepted"
    ORDERED = "ordered", "Ordered"
    BUILDING = "building", "Building"
    BUILT = "built", "Built"
    DELIVERED = "delivered", "Delivered"
    REVIEW_DUE = "review due", "Review due"
    CLOSED = "closed", "Closed"


@dataclass(frozen=True)
class Rule:
    """One step that is allowed.

    Parameters
    ----------
    before, after : Status
    action : str
        Row of the table of roles: who may take it.
    words : str
        On its button.
    asks : {"", "promised", "delivered", "review"}
        Day that belongs to it.
    ready : bool
        Whether everything that fails must have been accepted by name before it.
    aside : bool
        A step back or out rather than on.
    """

    before: Status
    after: Status
    action: str
    words: str
    asks: Asks = ""
    ready: bool = False
    aside: bool = False


_S = Status
_CHANGE, _BUILD = "order.change", "order.build"

RULES: tuple[Rule, ...] = (
    Rule(_S.DRAFT, _S.QUOTED, _CHANGE, "It is quoted", ready=True),
    Rule(_S.QUOTED, _S.ACCEPTED, _CHANGE, "The quotation is accepted", ready=True),
    Rule(_S.ACCEPTED, _S.ORDERED, _CHANGE, "It is ordered", "promised", ready=True),
    Rule(_S.ORDERED, _S.BUILDING, _BUILD, "Building begins"),
    Rule(_S.BUILDING, _S.BUILT, _BUILD, "It is built"),
    Rule(_S.BUILT, _S.DELIVERED, _CHANGE, "It is delivered", "delivered"),
    Rule(_S.DELIVERED, _S.REVIEW_DUE, _CHANGE, "Call in for review"),
    Rule(_S.REVIEW_DUE, _S.DELIVERED, _CHANGE, "Reviewed, and used on", "review"),
    Rule(_S.QUOTED, _S.DRAFT, _CHANGE, "Back to draft", aside=True),
    Rule(_S.ACCEPTED, _S.DRAFT, _CHANGE, "Back to draft", aside=True),
    Rule(_S.ORDERED, _S.DRAFT, _CHANGE, "Back to draft", aside=True),
    Rule(_S.BUILDING, _S.ORDERED, _BUILD, "Building is stopped", aside=True),
    Rule(_S.BUILT, _S.BUILDING, _BUILD, "Back to the workshop", aside=True),
    Rule(_S.DELIVERED, _S.CLOSED, _CHANGE, "Close it", aside=True),
    Rule(_S.REVIEW_DUE, _S.CLOSED, _CHANGE, "Close it", aside=True),
    Rule(_S.DRAFT, _S.CLOSED, _CHANGE, "Withdraw it", aside=True),
    Rule(_S.QUOTED, _S.CLOSED, _CHANGE, "Withdraw it", aside=True),
    Rule(_S.ACCEPTED, _S.CLOSED, _CHANGE, "Withdraw it", aside=True),
)
"""Every step that may be taken; there is no other."""

OPEN_TO_CHANGE = frozenset({_S.DRAFT, _S.QUOTED, _S.ACCEPTED, _S.ORDERED})
"""Until the build begins an order may be changed; it is a draft again then."""
WITH_THE_CLIENT = frozenset({_S.DELIVERED, _S.REVIEW_DUE})
IN_THE_WORKSHOP = frozenset({_S.ORDERED, _S.BUILDING, _S.BUILT})


def steps_from(status: str) -> tuple[Rule, ...]:
    """The steps from a status, those that go on first.

    Parameters
    ----------
    status : str
    """
    return tuple(rule for rule in RULES if rule.before == status)


def rule_of(before: str, after: str) -> Rule | None:
    """The step between two statuses; None when there is none.

    Parameters
    ----------
    before, after : str
    """
    return next((rule for rule in steps_from(before) if rule.after == after), None)
