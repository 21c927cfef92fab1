"""The exact search with an occupant from scales against brute force on random small lines."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from chairwright.chair.occupant import Occupant
from chairwright.chair.weighed import CentreWeighed
from chairwright.person.client import Client
from chairwright.search.best import find_best

from . import brute_force, cases, drawn_targets, people
from .cases import PIECES, draw, in_pieces


@pytest.mark.parametrize("seed", range(60))
def test_best_of_a_small_line(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """Feet that push the floor are among the clients: their bounds move with the centre as well."""
    rng = np.random.default_rng(7000 + seed)
    shift = tuple(float(each) for each in rng.uniform(-150.0, 150.0, 3))

    def weighed(one: Client) -> Occupant:
        zero = tuple((0.0,) * 4 for _ in range(4))
        occupant = people.seated(one)
        centre = CentreWeighed(occupant.body.mass_kg, shift, (0.0, 0.0, 0.0), zero)  # type: ignore[arg-type]
        return replace(occupant, weighed=centre)

    monkeypatch.setattr(cases, "seated", weighed)
    in_pieces(monkeypatch, PIECES[seed % len(PIECES)])
    case = draw(2000 + seed)
    targets = drawn_targets.targets(case.rng, case.everything, int(case.rng.integers(1, 5)), 5)
    found, wanted = find_best(case.space, targets), brute_force.best(case.everything, targets)
    if wanted is None:
        assert found is None
        return
    assert found is not None
    assert found.cost == pytest.approx(wanted[0], abs=2e-9)
    assert found.index == case.everything.setup(wanted[1])
