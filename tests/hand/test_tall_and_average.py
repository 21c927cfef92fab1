"""What a tall client's set-up has that an average one's has not.

Common practice, no source: a taller and heavier client needs the axle farther back, or the
casters farther ahead, for the same steadiness.
"""

from __future__ import annotations

from pathlib import Path

from chairwright.chair.occupant import seat
from chairwright.files.client import read_client
from chairwright.person.estimates import complete
from chairwright.search.best import find_best
from chairwright.search.space import open_space
from chairwright.targets.build import targets_for
from tests.oracles.lines import everyday

CLIENTS = Path(__file__).parents[2] / "examples" / "clients"


def places(name: str) -> tuple[float, float]:
    """Axle ahead of the back post, and caster stem ahead of the frame's tube [mm]."""
    client = read_client(CLIENTS / f"{name}.yaml")
    measures = complete(client)
    space = open_space(everyday(), seat(client, measures), client.fixed_choices)
    best = find_best(space, targets_for(client, measures))
    assert best is not None
    line = space.line
    axle = line.column("axle_hole", "x_mm")[best.index["axle_hole"]]
    stem = line.column("caster_housing", "ahead_mm")[best.index["caster_housing"]]
    return float(axle), float(stem)


def test_tall_clients_axle_is_farther_back_or_casters_farther_ahead() -> None:
    average, tall = places("avg-001"), places("tal-002")
    assert tall[0] < average[0] or tall[1] > average[1]
