"""Changing a set-up step by step: each step is saved at once, can be taken back, and is guarded.

Nobody's step is lost: a step that was made on an older revision is refused with what was done
since, and can be made again on top of it.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import timedelta
from typing import Any

from django.db import transaction
from django.utils import timezone

from chairwright_desk.audit.trail import note_change
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken
from chairwright_desk.bench.models import MOST_STEPS, Setup

TOGETHER = timedelta(seconds=2)
"""Steps of the same choices within this time are one step to take back: a slider on its way."""

TOLD_ONCE = timedelta(minutes=5)
"""A run of steps by one person is one line of the trail."""

Codes = Mapping[str, str]


def moved(before: Codes, after: Codes) -> dict[str, list[str]]:
    """The choices that differ, with the code before and after.

    Parameters
    ----------
    before, after : mapping of str to str

    Examples
    --------
    >>> moved({"camber": "K0", "caster": "C5"}, {"camber": "K3", "caster": "C5"})
    {'camber': ['K0', 'K3']}
    """
    return {name: [before[name], code] for name, code in after.items() if before[name] != code}


def take(request: Request, setup: Setup, revision: int, codes: Codes) -> Setup:
    """Save a set-up as changed by one step.

    Parameters
    ----------
    request : Request
    setup : Setup
        As read.
    revision : int
        Which the page was made from.
    codes : mapping of str to str
        Every choice, as it shall be.

    Raises
    ------
    Overtaken
        Somebody else changed it since; nothing is saved.
    """
    step = moved(setup.codes, codes)
    if not step:
        return setup
    past = _with(list(setup.past), step, _goes_on(request, setup, step))
    return _save(request, setup, revision, {"codes": dict(codes), "past": past, "ahead": []})


def back(request: Request, setup: Setup, revision: int) -> Setup:
    """Take the last step back, as `take` saves.

    Parameters
    ----------
    request : Request
    setup : Setup
    revision : int
    """
    if not setup.past:
        return setup
    *past, step = setup.past
    codes = {**setup.codes, **{name: pair[0] for name, pair in step.items()}}
    values = {"codes": codes, "past": past, "ahead": [*setup.ahead, step]}
    return _save(request, setup, revision, values)


def again(request: Request, setup: Setup, revision: int) -> Setup:
    """Take again what was taken back, as `take` saves.

    Parameters
    ----------
    request : Request
    setup : Setup
    revision : int
    """
    if not setup.ahead:
        return setup
    *ahead, step = setup.ahead
    codes = {**setup.codes, **{name: pair[1] for name, pair in step.items()}}
    values = {"codes": codes, "past": [*setup.past, step], "ahead": ahead}
    return _save(request, setup, revision, values)


def _goes_on(request: Request, setup: Setup, step: Mapping[str, list[str]]) -> bool:
    """Whether a step only carries the last one on."""
    last = setup.last_step
    soon = timezone.now() - setup.changed_at < TOGETHER
    mine = setup.changed_by_id == request.user.pk
    return bool(last) and not setup.ahead and soon and mine and set(last or ()) == set(step)


def _with(past: list[Any], step: dict[str, list[str]], goes_on: bool) -> list[Any]:
    if goes_on:
        last = past.pop()
        step = {name: [last[name][0], pair[1]] for name, pair in step.items()}
        step = {name: pair for name, pair in step.items() if pair[0] != pair[1]}
    return [*past, step][-MOST_STEPS:] if step else past


def _save(request: Request, setup: Setup, revision: int, values: dict[str, Any]) -> Setup:
    now = timezone.now()
    told = setup.changed_by_id == request.user.pk and now - setup.changed_at < TOLD_ONCE
    stamp = {"revision": revision + 1, "changed_at": now, "changed_by": request.user}
    with transaction.atomic():
        rows = Setup.objects.filter(pk=setup.pk, revision=revision)
        if not rows.update(**values, **stamp):
            raise Overtaken(Setup.objects.get(pk=setup.pk), values)
        if not told or setup.revision == 1:
            note_change(request, setup, ["codes"])
    for name, value in {**values, **stamp}.items():
        setattr(setup, name, value)
    return setup
