"""The client's places beside a set-up, and what it costs, weighs and takes."""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.figures.registry import FIGURES
from chairwright.fitting.place_verdicts import place_verdicts
from chairwright_desk.bench.bridge.opened import State, Units
from chairwright_desk.bench.bridge.words import mark_of, range_shown, shown, unit_of


@dataclass(frozen=True)
class PlaceAsks:
    """One figure that a place is about."""

    label: str
    value: str
    unit: str
    range: str
    word: str
    mark: str


@dataclass(frozen=True)
class PlaceShown:
    """One place with its verdict."""

    name: str
    word: str
    mark: str
    asks: tuple[PlaceAsks, ...]
    notes: tuple[str, ...]


def places_shown(state: State, units: Units) -> tuple[PlaceShown, ...]:
    """Judge every place of the client.

    Parameters
    ----------
    state : State
    units : {"mm", "in"}

    Returns
    -------
    tuple of PlaceShown
        Empty when no places are known or there is no such chair.
    """
    if state.setup is None:
        return ()
    line = state.bench.line
    return tuple(
        PlaceShown(
            name=each.place.name,
            word=each.word,
            mark=mark_of(each.word),
            asks=tuple(
                PlaceAsks(
                    label=(figure := FIGURES[item.target.figure]).label,
                    value=shown(figure, item.value, units, item.target),
                    unit=unit_of(figure, line, units),
                    range=range_shown(item.target, figure, units, item.value),
                    word=item.verdict.word,
                    mark=mark_of(item.verdict.word),
                )
                for item in each.judged
            ),
            notes=each.notes,
        )
        for each in place_verdicts(state.bench.person, state.setup)
    )
