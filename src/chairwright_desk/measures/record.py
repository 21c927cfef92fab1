"""What the desk holds of a client, as one client file needs it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, TypeVar

from django.db import IntegrityError, transaction

from chairwright_desk.audit.trail import note_change
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, Revised
from chairwright_desk.clients.models import Client
from chairwright_desk.measures.models import Abilities, Measuring
from chairwright_desk.measures.text import Fields, Parts
from chairwright_desk.targets.models import OwnTarget, RuleChoice

Made = TypeVar("Made", bound=Revised)


def newest(client: Client) -> Measuring | None:
    """Return the set of measures that is in use."""
    return Measuring.objects.filter(client=client).first()


def abilities_of(client: Client) -> Abilities | None:
    """Return how the client moves, when somebody has said so."""
    return Abilities.objects.filter(client=client).first()


def parts_of(client: Client) -> Parts:
    """Return everything typed about a client, the newest measures among it.

    Parameters
    ----------
    client : Client
    """
    body, able = newest(client), abilities_of(client)
    rules = RuleChoice.objects.filter(client=client).first()
    own = list(OwnTarget.objects.filter(client=client))
    return Parts(
        reference=client.reference,
        body=body.fields if body else {},
        abilities=able.fields if able else {},
        rule_set=rules.rule_set if rules else "",
        targets=tuple(target_fields(each) for each in own if each.at_least or each.at_most),
        weights={
            each.figure: each.weight
            for each in own
            if each.weight and not (each.at_least or each.at_most)
        },
    )


def target_fields(target: OwnTarget) -> dict[str, str]:
    """Return an own target as the text needs it."""
    return {
        "key": target.pk,
        "figure": target.figure,
        "at_least": target.at_least,
        "at_most": target.at_most,
        "must": "yes" if target.must else "",
        "weight": "" if target.must else target.weight,
        "reason": target.reason,
    }


def without_wishes(parts: Parts, **more: Any) -> Parts:
    """Return the parts without targets and weights, which are looked after elsewhere."""
    return replace(parts, targets=(), weights={}, rule_set="", **more)


def make_once(
    request: Request, kind: type[Made], client: Client, values: Mapping[str, Any]
) -> Made:
    """Make the one record of a client that nobody has made yet, and note it in the trail.

    Parameters
    ----------
    request : Request
    kind : type
        A record with one row a client.
    client : Client
    values : mapping of str to object

    Raises
    ------
    Overtaken
        Somebody else has made it in the meantime.
    """
    try:
        with transaction.atomic():
            made = kind._default_manager.create(client=client, changed_by=request.user, **values)
            note_change(request, made, values)
    except IntegrityError:
        there = kind._default_manager.get(client=client)
        raise Overtaken(there, values) from None
    return made


class _Opened:
    """A record whose typed fields can be read like its columns."""

    def __init__(self, record: Revised) -> None:
        self._record = record

    def __getattr__(self, name: str) -> Any:
        fields: Mapping[str, str] = self._record.fields  # type: ignore[attr-defined]
        if hasattr(self._record, name):
            return getattr(self._record, name)
        return fields.get(name, "")


def opened(overtaken: Overtaken) -> Overtaken:
    """Return both versions of a record with every typed field on a line of its own."""
    mine: dict[str, Any] = {**overtaken.mine, **overtaken.mine.get("fields", {})}
    return Overtaken(_Opened(overtaken.current), mine)  # type: ignore[arg-type]


def differing(overtaken: Overtaken, labels: Mapping[str, str]) -> dict[str, str]:
    """Return the labels of the fields that at least one version holds."""
    theirs: Fields = overtaken.current.fields  # type: ignore[attr-defined]
    mine: Fields = overtaken.mine.get("fields", {})
    return {n: words for n, words in labels.items() if n in theirs or n in mine or n == "taken_on"}
