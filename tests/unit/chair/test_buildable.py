"""What stands, and the reason in words when it does not."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.chair.buildable import PITCH_RANGE_DEG, buildable, reason_not
from chairwright.figures.evaluate import realise
from tests.oracles.draws import random_index
from tests.oracles.lines import everyday
from tests.oracles.people import client, seated
from tests.unit.chair.seated import seated as everyday_chair


def test_a_usual_chair_stands_without_a_reason() -> None:
    rows = everyday_chair().rows
    assert buildable(rows).all()
    assert reason_not(rows) == ""


@pytest.mark.parametrize(
    ("other", "word"),
    [
        ({"axle_hole": "C9", "caster_housing": "L1", "fork": "FM-1"}, "tilt"),
        ({"leg_length": "G500"}, "footplate"),
        ({"anti_tip": "TS-9"}, "anti-tip"),
    ],
)
def test_the_reason_names_what_is_wrong(other: dict[str, str], word: str) -> None:
    rows = everyday_chair(None, **other).rows
    assert not buildable(rows).any()
    assert word in reason_not(rows)


def test_a_reason_is_given_exactly_when_it_is_not_buildable() -> None:
    rng = np.random.default_rng(2)
    occupant = seated(client())
    index = random_index(everyday(), occupant, rng, 600)
    rows, _ = realise(everyday(), occupant, index)
    fine = buildable(rows)
    assert 0.05 < fine.mean() < 0.95
    for at in range(len(rows)):
        assert (reason_not(rows.take(np.array([at]))) == "") == fine[at]


def test_the_pitch_limits_are_inside() -> None:
    rows = everyday_chair().rows
    for end in PITCH_RANGE_DEG:
        rows["pitch"] = np.radians(np.array([end]))
        assert buildable(rows).all()
        rows["pitch"] = np.radians(np.array([end + np.sign(end) * 0.001]))
        assert not buildable(rows).any()
