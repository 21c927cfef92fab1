"""What each role may do: the one table that every page, record and test asks."""

from __future__ import annotations

from django.db.models import TextChoices


class Role(TextChoices):
    """What a person is in a team."""

    CLINICIAN = "clinician", "Clinician"
    SPECIALIST = "specialist", "Seating specialist"
    BUILDER = "builder", "Builder"
    READER = "reader", "Reader"
    ADMINISTRATOR = "administrator", "Administrator"


_C, _S, _B, _R, _A = Role
_FITTERS = frozenset({_C, _S})
_WORK = frozenset({_C, _S, _B, _R})
_ALL = frozenset(Role)

TABLE: dict[str, frozenset[Role]] = {
    # everybody's own
    "account.own": _ALL,
    "job.own": _WORK,
    "draft.own": _ALL,
    "teach.see": _ALL,
    # clients: a builder works by reference number and never sees name or diagnosis
    "client.see": _WORK,
    "client.change": _FITTERS,
    "client.export": _FITTERS,
    "client.remove": frozenset({_C}),
    "identity.see": frozenset({_C, _S, _R}),
    "identity.change": _FITTERS,
    "note.see": frozenset({_C, _S, _R}),
    "note.change": _FITTERS,
    "picture.see": frozenset({_C, _S, _R}),
    "picture.change": _FITTERS,
    # fitting
    "measures.see": _WORK,
    "measures.change": _FITTERS,
    "surroundings.see": _WORK,
    "surroundings.change": _FITTERS,
    "targets.see": _WORK,
    "targets.change": _FITTERS,
    "setup.see": _WORK,
    "setup.change": _FITTERS,
    # order to handover
    "order.see": _WORK,
    "order.change": _FITTERS,
    "order.build": frozenset({_C, _S, _B}),
    "papers.build": _WORK,
    "papers.clinical": frozenset({_C, _S, _R}),
    # lines
    "line.see": _ALL,
    "line.change": frozenset({_S, _A}),
    # looking after the desk
    "people.change": frozenset({_A}),
    "trail.see": frozenset({_A}),
    "retention.see": frozenset({_C, _A}),
}
"""Action to the roles that may do it."""


def allowed(roles: set[Role] | frozenset[Role], action: str) -> bool:
    """Return whether one of the roles may do the action."""
    return bool(roles & TABLE[action])
