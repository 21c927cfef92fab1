"""A place under public codes: what each says, and where they differ."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

from chairwright.places.code_clauses import CODES, Code, Ruling, Word
from chairwright.places.code_doors import door_rulings
from chairwright.places.code_ramps import ramp_rulings
from chairwright.places.code_reach import under_top_rulings
from chairwright.places.code_ways import (
    corner_rulings,
    corridor_rulings,
    cross_slope_rulings,
    kerb_rulings,
    room_rulings,
    threshold_rulings,
)
from chairwright.places.model import Place, Surroundings

__all__ = [
    "CODES",
    "Code",
    "Difference",
    "Judgement",
    "Ruling",
    "differences",
    "judge",
    "judge_all",
    "summary",
]

_RULES: dict[str, Callable[[Any, str], tuple[Ruling, ...]]] = {
    "door": door_rulings,
    "corridor": corridor_rulings,
    "corner": corner_rulings,
    "room": room_rulings,
    "ramp": ramp_rulings,
    "cross_slope": cross_slope_rulings,
    "threshold": threshold_rulings,
    "kerb": kerb_rulings,
    "table": under_top_rulings,
    "basin": under_top_rulings,
}


@dataclass(frozen=True)
class Judgement:
    """What one code says of one place.

    Parameters
    ----------
    place : Place
    code : Code
    rulings : tuple of Ruling
        At least one.
    """

    place: Place
    code: Code
    rulings: tuple[Ruling, ...]

    @property
    def word(self) -> Word:
        """Fails when one clause fails; not known when none does and one is not known."""
        words = {ruling.word for ruling in self.rulings}
        order: tuple[Word, ...] = ("fails", "not known", "holds")
        return next(word for word in order if word in words)

    @property
    def failing(self) -> tuple[Ruling, ...]:
        """Clauses that are not kept."""
        return tuple(ruling for ruling in self.rulings if ruling.word == "fails")

    @property
    def open(self) -> tuple[Ruling, ...]:
        """Clauses of which it is not known whether they are kept."""
        return tuple(ruling for ruling in self.rulings if ruling.word == "not known")


@dataclass(frozen=True)
class Difference:
    """Codes that do not agree on a place.

    Parameters
    ----------
    place : Place
    holds, fails, unknown : tuple of str
        Titles of the codes that the place keeps, that it does not keep, and of which it is
        not known.
    words : str
        What each code says, with the clauses that decide it.
    """

    place: Place
    holds: tuple[str, ...]
    fails: tuple[str, ...]
    unknown: tuple[str, ...]
    words: str


def judge(place: Place, code: str) -> Judgement | None:
    """Judge one place under one code.

    Parameters
    ----------
    place : Place
    code : str
        Key of `CODES`.

    Returns
    -------
    Judgement or None
        None when nothing about such a place is held for the code.

    Raises
    ------
    KeyError
        When there is no such code.
    """
    found = CODES[code]
    rules = _RULES.get(place.kind)
    rulings = rules(place, code) if rules is not None else ()
    return Judgement(place, found, rulings) if rulings else None


def judge_all(surroundings: Surroundings) -> tuple[Judgement, ...]:
    """Judge every place under every code that its file names, place by place.

    Parameters
    ----------
    surroundings : Surroundings

    Returns
    -------
    tuple of Judgement
    """
    every = (judge(p, code) for p in surroundings.places for code in surroundings.codes)
    return tuple(judgement for judgement in every if judgement is not None)


def differences(judgements: Iterable[Judgement]) -> tuple[Difference, ...]:
    """Say where codes differ: places that fail under some codes and not under others.

    Parameters
    ----------
    judgements : iterable of Judgement

    Returns
    -------
    tuple of Difference
        In the order of the places.
    """
    by_place: dict[str, list[Judgement]] = {}
    for judgement in judgements:
        by_place.setdefault(judgement.place.name, []).append(judgement)
    return tuple(_difference(each) for each in by_place.values() if _differ(each))


def _differ(judgements: list[Judgement]) -> bool:
    failing = [judgement.word == "fails" for judgement in judgements]
    return any(failing) and not all(failing)


def _difference(judgements: list[Judgement]) -> Difference:
    holds, fails, unknown = (
        tuple(each.code.title for each in judgements if each.word == word)
        for word in ("holds", "fails", "not known")
    )
    words = " ".join(summary(each) for each in judgements)
    return Difference(judgements[0].place, holds, fails, unknown, words)


def summary(judgement: Judgement) -> str:
    """Return one judgement as a sentence, with the clauses that decide it.

    Parameters
    ----------
    judgement : Judgement

    Returns
    -------
    str
        For example ``Ireland Technical Guidance Document M (2010): fails, 3.1.2.4 asks flight
        length at most 5 m at a slope up to 1:12, got 6000 mm [read in the source].``
    """
    head = f"{judgement.code.title} ({judgement.code.dated}): {judgement.word}"
    deciding = judgement.failing or judgement.open
    told = "; ".join(
        f"{each.clause} asks {each.asked}, got {each.found} [{each.certainty}]" for each in deciding
    )
    return f"{head}, {told}." if told else f"{head}."
