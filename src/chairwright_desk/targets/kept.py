"""Keeping a changed target with its reason, and putting it back."""

from __future__ import annotations

from dataclasses import dataclass, replace

from django.db import IntegrityError, transaction

from chairwright_desk.audit.trail import note_change, note_removal
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, save_revised
from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.kept import forget_record
from chairwright_desk.measures.record import parts_of, target_fields
from chairwright_desk.measures.text import written
from chairwright_desk.measures.typed import with_unit
from chairwright_desk.targets.bridge import Asked, troubles_of, unit_written
from chairwright_desk.targets.models import OwnTarget, TargetChange

NEW = "new"


@dataclass(frozen=True)
class Wished:
    """A target as somebody wants it.

    Parameters
    ----------
    figure : str
    must : bool
    at_least, at_most : str
        Empty where the rule's end stays.
    weight : str
        Empty for the usual one.
    reason : str
    """

    figure: str
    must: bool
    at_least: str
    at_most: str
    weight: str
    reason: str

    @property
    def words(self) -> str:
        """What is asked, in words."""
        ends = [f"at least {self.at_least}"] if self.at_least else []
        ends += [f"at most {self.at_most}"] if self.at_most else []
        ends += [f"weight {self.weight}"] if self.weight else []
        return f"{'must' if self.must else 'wish'}: {', '.join(ends)}"


def wished(figure: str, kind: str, data: dict[str, str], rule: Asked | None) -> Wished:
    """Read a form: an end or a weight that stands as the rule has it is the rule's.

    Parameters
    ----------
    figure : str
    kind : {"must", "wish"}
    data : dict of str to str
    rule : Asked or None
    """
    low = _typed(figure, data.get("at_least", ""), data)
    high = _typed(figure, data.get("at_most", ""), data)
    weight = data.get("weight", "").strip() if kind == "wish" else ""
    if rule is not None:
        low = "" if low == rule.ends.low else low
        high = "" if high == rule.ends.high else high
        weight = "" if weight == rule.weight else weight
    elif weight == "1":
        weight = ""
    return Wished(figure, kind == "must", low, high, weight, data["reason"].strip())


def _typed(figure: str, typed: str, data: dict[str, str]) -> str:
    text, dimension = unit_written(figure, typed)
    return with_unit(text, dimension, data.get("alone") or "mm")


def against(client: Client, wish: Wished, own: OwnTarget | None) -> dict[str, list[str]]:
    """What the engineering has against a wish, by the field of the form.

    Parameters
    ----------
    client : Client
    wish : Wished
    own : OwnTarget or None
        Which it takes the place of.
    """
    parts = parts_of(client)
    others = tuple(each for each in parts.targets if own is None or each["key"] != own.pk)
    weights = {f: w for f, w in parts.weights.items() if wish.must or f != wish.figure}
    if wish.at_least or wish.at_most:
        mine = target_fields(OwnTarget(client=client, **vars(wish))) | {"key": NEW}
        parts = replace(parts, targets=(*others, mine), weights=weights)
    else:
        parts = replace(parts, targets=others, weights={**weights, wish.figure: wish.weight})
    to = written(parts)
    told = troubles_of(to.text, to.field_at)
    start = f"target:{NEW}"
    names = {f"{start}:{n}": n for n in ("at_least", "at_most", "weight", "reason")}
    names |= {f"weight:{wish.figure}": "weight", start: ""}
    return {names[field]: words for field, words in told.items() if field in names}


def keep(
    request: Request, client: Client, wish: Wished, own: OwnTarget | None, revision: int
) -> None:
    """Keep a wish and a line of its history.

    Parameters
    ----------
    request : Request
    client : Client
    wish : Wished
    own : OwnTarget or None
        What stands there now.
    revision : int
        Which the form was filled from; 0 for none.

    Raises
    ------
    Overtaken
        Somebody else has changed the same target since.
    """
    values = {k: v for k, v in vars(wish).items() if k not in ("figure", "must")}
    with transaction.atomic():
        if own is not None:
            save_revised(request, own, revision, values)
        else:
            _make(request, client, wish, values)
        note_history(request, client, wish.figure, wish.words, wish.reason)


def _make(request: Request, client: Client, wish: Wished, values: dict[str, str]) -> None:
    try:
        with transaction.atomic():
            made = OwnTarget.objects.create(client=client, changed_by=request.user, **vars(wish))
            note_change(request, made, values)
    except IntegrityError:
        same = OwnTarget.objects.get(client=client, figure=wish.figure, must=wish.must)
        raise Overtaken(same, values) from None


def put_back(request: Request, client: Client, own: OwnTarget) -> None:
    """Let the rule count again.

    Parameters
    ----------
    request : Request
    client : Client
    own : OwnTarget
    """
    with transaction.atomic():
        note_removal(request, own)
        forget_record(own.pk)
        own.delete()
        kind = "must" if own.must else "wish"
        note_history(request, client, own.figure, f"{kind}: put back as the rules have it", "")


def note_history(request: Request, client: Client, figure: str, words: str, reason: str) -> None:
    """Write one line of the history.

    Parameters
    ----------
    request : Request
    client : Client
    figure, words, reason : str
    """
    TargetChange.objects.create(
        client=client, figure=figure, words=words[:300], reason=reason[:400], by=request.user
    )
