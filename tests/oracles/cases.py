"""A random small line, a client and the clinician's decisions, with every set-up of it."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import pytest

from chairwright.chair.occupant import Occupant
from chairwright.errors import InputError
from chairwright.line.model import Choice, Option
from chairwright.search import best, change_front, engine, front, geometry
from chairwright.search.space import Space, open_space

from .brute_force import Everything, look_at_everything
from .people import anybody, seated
from .small_lines import Drawn, drawn_line

Rng = np.random.Generator
SMALLEST, LARGEST = 2_000, 120_000
"""Products of all options; rules and what is on request leave less."""
OFTEN_SETTLED = (
    "rear_wheel", "axle_hole", "stem_spacer", "seat_width", "arm_support", "seat_depth",
    "cushion", "back_angle", "back_support", "hanger", "leg_length", "back_height",
    "push_handle", "anti_tip", "belt", "finish",
)  # fmt: skip


class Case(NamedTuple):
    """A small line, a client, and every set-up of it."""

    rng: Rng
    space: Space
    everything: Everything


def draw(seed: int, *, standing: bool = True) -> Case:
    """Draw lines and clients until some set-up stands (or, if so wanted, until none does).

    Parameters
    ----------
    seed : int
    standing : bool
    """
    rng = np.random.default_rng(seed)
    while True:
        drawn = drawn_line(rng, int(10 ** rng.uniform(np.log10(SMALLEST), np.log10(LARGEST))))
        case = _with_client(rng, drawn)
        if case is not None and (len(case.everything.index["fork"]) > 0) is standing:
            return case


def _with_client(rng: Rng, drawn: Drawn) -> Case | None:
    """Draw a client and decisions; None when they leave a choice without any option."""
    occupant = seated(anybody(rng))
    settled, made_to_order = _settled(rng, drawn), bool(rng.random() < 0.5)
    everything = look_at_everything(drawn, occupant, settled, made_to_order=made_to_order)
    if everything.bare:
        _must_be_refused(drawn, occupant, settled)
        return None
    space = open_space(drawn.line, occupant, settled, made_to_order=made_to_order)
    return Case(rng, space, everything)


def _must_be_refused(drawn: Drawn, occupant: Occupant, settled: dict[str, tuple[str, ...]]) -> None:
    with pytest.raises(InputError):
        open_space(drawn.line, occupant, settled)


def _settled(rng: Rng, drawn: Drawn) -> dict[str, tuple[str, ...]]:
    """Now and then the clinician names options or parts, most often what is on request."""
    choices = {name: drawn.line.choices[name] for name in OFTEN_SETTLED}
    special = [name for name, each in choices.items() if any(_asked(o) for o in each.options)]
    found = {}
    for _ in range(int(rng.choice([0, 1, 1, 2]))):
        likely = special if special and rng.random() < 0.6 else list(choices)
        name = str(rng.choice(likely))
        found[name] = _named(rng, choices[name])
    return found


def _asked(option: Option) -> bool:
    return option.kind == "on request"


def _named(rng: Rng, choice: Choice) -> tuple[str, ...]:
    options = choice.options
    picked = rng.permutation(len(options))[: int(rng.integers(1, len(options) + 1))]
    return tuple(
        options[at].part if options[at].part and rng.random() < 0.5 else options[at].code
        for at in picked
    )


PIECES = (10, 40, 200, None)
"""How many unfinished set-ups the engine takes at once; None leaves its own number, which is
more than a small line has. Small pieces make it prune between pieces as on a large line."""


def in_pieces(monkeypatch: pytest.MonkeyPatch, size: int | None) -> None:
    """Make the engine work in small pieces, and with the smallest judge after every choice."""
    if size is not None:
        for goal in (best, change_front, front):
            monkeypatch.setattr(goal, "FIRST_PIECE", size)
        monkeypatch.setattr(engine, "LARGEST_GROWN", 20 * size)
        monkeypatch.setattr(engine, "FEW", 0 if size == PIECES[0] else size // 2)
        monkeypatch.setattr(geometry, "BLOCK", 30 * size)
