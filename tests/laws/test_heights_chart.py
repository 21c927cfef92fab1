"""A seat-height chart says what whole set-ups say, squares every stem, and keeps the rules."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.chair.buildable import PITCH_RANGE_DEG
from chairwright.figures.evaluate import figures_of
from chairwright.fitting.heights_chart import SHOWN, STANDS, STEM, Ask, HeightsChart, heights_chart
from chairwright.fitting.heights_fixed import FIXED, SQUARED, VARIED
from chairwright.line.model import Line
from chairwright.line.reachable import Deduction
from tests.oracles.draws import random_setups
from tests.oracles.lines import everyday
from tests.oracles.people import anybody, seated
from tests.oracles.rules import rules_kept

ROUNDING = 1e-9


def chart_of_one(line: Line, codes: dict[str, str]) -> HeightsChart:
    """The chart that holds one set-up's running gear and nothing else."""
    narrowed = [name for name in (*VARIED, SQUARED) if name != "axle_hole"]
    only = {name: (codes[name],) for name in narrowed}
    return heights_chart(line, Ask(fixed={name: codes[name] for name in FIXED}, only=only))


@pytest.mark.parametrize("seed", range(4))
def test_a_cell_is_the_set_up_with_the_same_options_whoever_sits_in_it(seed: int) -> None:
    rng = np.random.default_rng(seed)
    line, occupant = everyday(), seated(anybody(rng))
    rows, _ = random_setups(line, occupant, rng, 10)
    figures = figures_of(rows, occupant, SHOWN)
    for row in range(len(rows)):
        places = {name: int(rows.index[name][row]) for name in rows.index}
        codes = {name: line.choices[name].options[at].code for name, at in places.items()}
        chart = chart_of_one(line, codes)
        cell = (0, chart.options["axle_hole"].index(places["axle_hole"]), 0, 0)
        assert chart.why[cell] == STANDS
        for name in SHOWN:
            assert chart.figures[name][cell] == pytest.approx(figures[name][row], abs=ROUNDING)


def test_no_other_stem_setting_brings_a_stem_nearer_to_the_vertical() -> None:
    line = everyday()
    fixed = {"side_frame": line.choices["side_frame"].options[-1].code}
    best = heights_chart(line, Ask(fixed=fixed))
    assert (best.why == STANDS).sum() > 100
    for option in line.choices[SQUARED].options:
        other = heights_chart(line, Ask(fixed=fixed, only={SQUARED: (option.code,)}))
        both = (best.why == STANDS) & (other.why == STANDS)
        assert np.all(
            np.abs(best.figures[STEM][both]) <= np.abs(other.figures[STEM][both]) + ROUNDING
        )
        assert not np.any((best.why != STANDS) & (other.why == STANDS))
        chosen = both & (best.setting == line.choices[SQUARED].codes[option.code])
        assert np.array_equal(best.figures[STEM][chosen], other.figures[STEM][chosen])


def test_whatever_stands_on_a_chart_can_be_ordered_and_tilts_no_more_than_a_chair_can() -> None:
    line = everyday()
    chart = heights_chart(line, Ask())
    standing = np.argwhere(chart.why == STANDS)
    picked = np.random.default_rng(5).choice(len(standing), 25, replace=False)
    deduction = Deduction(line)
    for place in standing[picked]:
        at = tuple(place)
        settled = {name: frozenset({option.code}) for name, option in chart.fixed.items()}
        for name, along in zip(VARIED, at, strict=True):
            settled[name] = frozenset({chart.option(name, along).code})
        settled[SQUARED] = frozenset({line.choices[SQUARED].options[chart.setting[at]].code})
        found = deduction.example(settled)
        assert found is not None
        index = {
            name: np.array([line.choices[name].codes[min(codes)]]) for name, codes in found.items()
        }
        assert rules_kept(line, index).all()
    angles = chart.figures["seat_angle_deg"][chart.why == STANDS]
    assert angles.min() >= PITCH_RANGE_DEG[0] - ROUNDING
    assert angles.max() <= PITCH_RANGE_DEG[1] + ROUNDING
