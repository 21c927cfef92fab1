"""The exact search against brute force with targets on figures of a place, small lines."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from chairwright.figures.evaluate import figures_of, realise
from chairwright.targets.target import Target

from . import drawn_targets
from .cases import PIECES, Case, draw, in_pieces
from .test_search_exact import _same_best, _same_front, _same_reasons

NAMES = (
    "rim_force_n@up_4.76_concrete",
    "rim_force_n@cross_3_hard",
    "push_force_n@down_2.86_carpet",
    "push_start_n@up_3_hard",
    "pivot_push_n@carpet",
    "cross_push_n@2",
    "start_lift_mps2@up_4.76",
    "braking_lift_mps2@down_4.76",
    "step_force_n@20",
    "step_force_n@55",
    "rear_step_force_n@60",
    "kerb_pitch_deg@90",
    "corner_free_mm@950",
    "corner_free_mm@1200",
    "corner_arc_mm@1100",
    "door_turn_mm@780",
    "device_spare_deg@slope_4.76",
    "device_spare_deg@step_30",
    "boot_missing_mm@1000x700x600_off",
    "boot_missing_mm@1000x800x700_on",
)


def with_places(seed: int) -> Case:
    """A small line with every set-up of it, figures of a place included."""
    case = draw(seed)
    rows, _ = realise(case.space.line, case.space.occupant, case.everything.index)
    found = figures_of(rows, case.space.occupant, NAMES)
    case.everything.figures.update({name: np.array(values) for name, values in found.items()})
    return case


def of_places(case: Case, musts: int, preferences: int) -> list[Target]:
    """Draw targets on figures of a place, now and then on some of the others."""
    figures = case.everything.figures
    others = case.rng.choice([name for name in figures if name not in NAMES], 6)
    some = {name: figures[name] for name in (*NAMES, *map(str, others))}
    return drawn_targets.targets(
        case.rng, replace(case.everything, figures=some), musts, preferences
    )


@pytest.mark.parametrize("seed", range(3000, 3060))
def test_random_small_line_with_places(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    in_pieces(monkeypatch, PIECES[seed % len(PIECES)])
    case = with_places(seed)
    easy = of_places(case, int(case.rng.integers(0, 3)), 4)
    _same_best(case, easy)
    _same_front(case, easy)
    hard = of_places(case, int(case.rng.integers(2, 6)), 2)
    _same_best(case, hard)
    _same_reasons(case, hard)


def test_figures_of_places_are_among_the_targets() -> None:
    names = [t.figure for t in of_places(with_places(3000), 3, 4)]
    assert sum("@" in name for name in names) > 2
