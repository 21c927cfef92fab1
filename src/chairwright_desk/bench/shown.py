"""What the bench's page shows of a set-up, and what of it has changed since the last step."""

from __future__ import annotations

from dataclasses import dataclass, replace

from chairwright_desk.base.requests import Request
from chairwright_desk.bench.bridge import (
    Bench,
    ChoiceShown,
    Follows,
    HolePicture,
    Kept,
    PayerShown,
    Pictures,
    PlaceShown,
    State,
    Units,
    choices_shown,
    follows_of,
    hole_picture,
    open_bench,
    payer_shown,
    pictures_of,
    places_shown,
)
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.texts import Texts, as_weighed, line_of


@dataclass(frozen=True)
class Block:
    """One choice on the page: its list, its slider, its holes.

    Parameters
    ----------
    choice : ChoiceShown
    picture : HolePicture or None
    redrawn : bool
        Whether the holes are to be put on the page anew; not where they are shown as before.
    """

    choice: ChoiceShown
    picture: HolePicture | None
    redrawn: bool = True


@dataclass(frozen=True)
class ThingBlocks:
    """A thing of the chair on the page."""

    key: str
    label: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True)
class Shown:
    """The whole of one set-up, for the templates."""

    state: State
    things: tuple[ThingBlocks, ...]
    pictures: Pictures | None
    follows: Follows | None
    places: tuple[PlaceShown, ...]
    paid: PayerShown | None
    against: tuple[str, ...]


_THINGS: Kept[tuple[ThingBlocks, ...]] = Kept(128)
_PICTURES: Kept[Pictures | None] = Kept(128)
_PLACES: Kept[tuple[PlaceShown, ...]] = Kept(128)
"""By the bench, which stands for the client, the places and the line as read, and the set-up."""


def units_of(request: Request) -> Units:
    """The units that the person reads lengths in."""
    return "in" if request.user.units == "inch" else "mm"


def bench_of(setup: Setup, texts: Texts) -> Bench:
    """The bench of a set-up; the client as weighed, where a weighing counts.

    Parameters
    ----------
    setup : Setup
    texts : Texts
        Of its client.

    Raises
    ------
    InputError
        When a text cannot be read.
    """
    bench = open_bench(texts.client, line_of(setup.line), texts.places, tuple(setup.extras))
    return as_weighed(setup.client_id, bench)


def things_of(state: State, units: Units) -> tuple[ThingBlocks, ...]:
    """Every choice with its holes.

    Parameters
    ----------
    state : State
    units : {"mm", "in"}
    """
    return _THINGS.of(_key(state, units), lambda: _things(state, units))


def _key(state: State, units: Units) -> tuple[object, ...]:
    return (state.bench.key, units, *state.index.values())


def pictures_shown(state: State, units: Units) -> Pictures | None:
    """The drawings of a set-up, kept.

    Parameters
    ----------
    state : State
        From `state_of` or `sketch_of`; both look the same.
    units : {"mm", "in"}
    """
    return _PICTURES.of(_key(state, units), lambda: pictures_of(state, units))


def places_judged(state: State, units: Units) -> tuple[PlaceShown, ...]:
    """Every place of the client beside a set-up, kept.

    Parameters
    ----------
    state : State
        From `state_of`, with the spreads of its own.
    units : {"mm", "in"}
    """
    return _PLACES.of(_key(state, units), lambda: places_shown(state, units))


def _things(state: State, units: Units) -> tuple[ThingBlocks, ...]:
    return tuple(
        ThingBlocks(
            thing.key,
            thing.label,
            tuple(Block(each, hole_picture(state, each, units)) for each in thing.choices),
        )
        for thing in choices_shown(state)
    )


def shown_of(state: State, units: Units) -> Shown:
    """All that the page shows.

    Parameters
    ----------
    state : State
        With the spreads of its own.
    units : {"mm", "in"}
    """
    return Shown(
        state=state,
        things=things_of(state, units),
        pictures=pictures_shown(state, units),
        follows=follows_of(state, units),
        places=places_judged(state, units),
        paid=payer_shown(state),
        against=state.against,
    )


def changed_blocks(before: State, after: State, units: Units) -> tuple[Block, ...]:
    """The choices that are shown otherwise after a step.

    Parameters
    ----------
    before, after : State
    units : {"mm", "in"}
    """
    old = {b.choice.name: b for thing in things_of(before, units) for b in thing.blocks}
    new = (block for thing in things_of(after, units) for block in thing.blocks)
    return tuple(
        replace(block, redrawn=block.picture != old[block.choice.name].picture)
        for block in new
        if block != old[block.choice.name]
    )
