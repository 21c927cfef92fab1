"""Sizes made to order: least surcharge first, then the preferences, by looking at everything."""

from __future__ import annotations

from typing import Any, cast

import numpy as np
import pytest

from chairwright.fitting.described import describe
from chairwright.fitting.fit import Fit
from chairwright.fitting.person import Person
from chairwright.fitting.to_order import find_cheapest, offers_more, surcharge_of
from chairwright.fitting.why import why_best
from chairwright.search.prepared import prepare
from chairwright.search.reasons import find_reasons
from chairwright.search.space import open_space
from chairwright.targets.target import Target
from tests.oracles import brute_force, drawn_targets
from tests.oracles.brute_force import Everything
from tests.oracles.cases import Case, draw
from tests.oracles.lines import everyday_as_written, line_from
from tests.unit.chair.seated import person

NOTHING = cast(Any, None)


def with_surcharges(seed: int) -> Case:
    """The first random case from a seed on with set-ups of different surcharge."""
    while True:
        case = draw(seed)
        if len(np.unique(case.everything.figures["custom_surcharge"])) > 1:
            return case
        seed += 1000


def wide(case: Case, targets: list[Target]) -> list[Target]:
    """Leave out what is drawn about the surcharge itself."""
    return [target for target in targets if target.figure != "custom_surcharge"]


def something_to_order(case: Case) -> Target:
    """The must that no set-up of standard sizes holds."""
    values = case.everything.figures["custom_surcharge"]
    least = float(values[values > 0.0].min())
    return Target("custom_surcharge", least, None, True, 1.0, "test", "test")


def cheapest(everything: Everything, targets: list[Target]) -> tuple[float, int] | None:
    """Least surcharge that holds every must; of those set-ups the one that costs least."""
    fine = brute_force.holding(everything, targets)
    if not fine.any():
        return None
    least = float(everything.figures["custom_surcharge"][fine].min())
    limit = Target("custom_surcharge", None, least, True, 1.0, "test", "test")
    found = brute_force.best(everything, [*targets, limit])
    assert found is not None
    return least, found[1]


@pytest.mark.parametrize("seed", range(40))
def test_the_least_surcharge_goes_before_the_preferences(seed: int) -> None:
    case = with_surcharges(seed)
    targets = wide(case, drawn_targets.targets(case.rng, case.everything, seed % 4, 5))
    if seed % 2:
        targets.append(something_to_order(case))
    found, wanted = find_cheapest(prepare(case.space), targets), cheapest(case.everything, targets)
    if wanted is None:
        assert found is None
        return
    assert found is not None
    surcharge, at = wanted
    assert surcharge_of(case.space, found.index) == pytest.approx(surcharge, abs=1e-9)
    assert found.index == case.everything.setup(at)


@pytest.mark.parametrize("seed", range(40))
def test_corrections_are_shown_by_the_cheapest_set_up(seed: int) -> None:
    case = with_surcharges(seed + 500)
    targets = wide(case, drawn_targets.targets(case.rng, case.everything, 5, 3))
    prepared = prepare(case.space)
    reasons = find_reasons(prepared, targets)
    shown = find_reasons(prepared, targets, show=find_cheapest)
    assert shown.conflicts == reasons.conflicts
    for before, after in zip(reasons.corrections, shown.corrections, strict=True):
        assert repr(after.gives) == repr(before.gives), "as words: a missing value equals no other"
        if any(np.isnan(give.value) for give in before.gives):
            assert after.index == before.index
            continue
        given = {give.target: give.value for give in before.gives}
        eased = [
            Target(
                each.figure,
                None if each.low is None else min(each.low, given.get(each, each.low)),
                None if each.high is None else max(each.high, given.get(each, each.high)),
                each.must, each.weight, each.source, each.reason,
            )
            for each in targets
        ]  # fmt: skip
        wanted = cheapest(case.everything, eased)
        assert wanted is not None
        assert after.index == case.everything.setup(wanted[1])


def test_a_line_offers_more_where_a_range_is_open() -> None:
    written, who = everyday_as_written(), person()
    for name in ("seat_depth", "back_height", "leg_length"):
        del written["custom_sizes"][name]
    line = line_from(written)

    def more(**settled: str) -> bool:
        codes = {name: [code] for name, code in settled.items()}
        return offers_more(
            open_space(line, who, codes), open_space(line, who, codes, made_to_order=True)
        )

    assert more()
    assert not more(seat_width="S400")


@pytest.mark.parametrize("seed", range(12))
def test_the_next_best_of_a_choice_has_the_least_surcharge_first(seed: int) -> None:
    best = None
    while best is None:
        case = with_surcharges(seed)
        targets = wide(case, drawn_targets.targets(case.rng, case.everything, 1, 4))
        targets.append(something_to_order(case))
        best, seed = find_cheapest(prepare(case.space), targets), seed + 3000
    everything = case.everything
    occupant, line = case.space.occupant, case.space.line
    fit = Fit(
        Person(NOTHING, NOTHING, NOTHING, occupant, tuple(targets)), line, case.space,
        everything.count, best, None, describe(line, occupant, best.index, targets), None, (),
        "needed",
    )  # fmt: skip
    here = everything.place(best.index)
    surcharges = everything.figures["custom_surcharge"]
    why = why_best(fit)
    for each in why.choices:
        others = everything.index[each.choice] != everything.index[each.choice][here]
        wanted = cheapest(only(everything, others), targets)
        if wanted is None:
            assert each.setup is None
            continue
        assert each.setup is not None
        at = int(np.nonzero(others)[0][wanted[1]])
        assert each.setup.index == everything.setup(at)
        assert each.surcharge_more == pytest.approx(surcharges[at] - surcharges[here], abs=1e-9)
        assert each.surcharge_more >= 0.0
    for reason in why.reasons:
        if reason.nearer is not None:
            name = reason.nearer.step.choice
            assert fit.setup is not None
            own = fit.setup.options[name].numbers["surcharge"]
            assert reason.nearer.step.option.numbers["surcharge"] <= own


def only(everything: Everything, which: brute_force.Mask) -> Everything:
    """Some of the set-ups."""
    return Everything(
        everything.count,
        {name: array[which] for name, array in everything.index.items()},
        {name: array[which] for name, array in everything.figures.items()},
    )
