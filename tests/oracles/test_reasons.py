"""What the reasons promise: giving the amounts makes a fit possible, giving any less does not.

On random small lines each promise is tried by the search and by every set-up; on the example
client whom the example line cannot fit, by the search, and the amounts by hand.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import NamedTuple

import pytest

from chairwright.figures.registry import FIGURES
from chairwright.files.client import read_client
from chairwright.fitting.person import read_person
from chairwright.fitting.settled import space_for
from chairwright.search.best import find_best
from chairwright.search.prepared import Prepared, prepare
from chairwright.search.reasons import Correction, Give, Reasons, find_reasons
from chairwright.targets.target import Target

from . import brute_force, drawn_targets
from .brute_force import Everything
from .cases import PIECES, Case, draw, in_pieces
from .lines import everyday

Possible = Callable[[Sequence[Target]], bool]
CANNOT_BE_FITTED = Path(__file__).parents[2] / "examples" / "clients" / "not-008.yaml"


def eased(targets: Sequence[Target], gives: Sequence[Give]) -> list[Target]:
    """The targets with some musts opened by the amounts; a must without an amount is dropped."""
    by = {give.target: give.by for give in gives}
    opened = []
    for target in targets:
        amount = by.get(target, 0.0) if target.must else 0.0
        if not math.isnan(amount):
            low = None if target.low is None else target.low - amount
            high = None if target.high is None else target.high + amount
            opened.append(replace(target, low=low, high=high))
    return opened


def a_little_less(give: Give) -> Give:
    """Half a printed unit less, or half of it when the amount itself is smaller than that."""
    half_unit = FIGURES[give.target.figure].resolution / 2
    return replace(give, by=give.by - min(half_unit, give.by / 2))


def promises(targets: Sequence[Target], correction: Correction, possible: Possible) -> int:
    """Check one correction; count the amounts of which a little less was tried.

    Where the least is to go without a figure, the other amounts of the group may be less for a
    set-up that has the figure but far off; then only leaving out a whole part is tried.
    """
    gives = correction.gives
    assert possible(eased(targets, gives))
    tried = 0
    for give in gives:
        others = [each for each in gives if each is not give]
        dropped = [replace(each, by=math.nan) for each in others]
        assert not possible(eased(targets, dropped)), give
        if not any(math.isnan(each.by) for each in gives):
            assert not possible(eased(targets, [*others, a_little_less(give)])), give
            tried += 1
    return tried


def cannot_hold_together(reasons: Reasons, possible: Possible) -> None:
    """Check each conflict: not together, but without any one of them."""
    for conflict in reasons.conflicts:
        assert not possible(conflict)
        for one in conflict:
            assert possible([must for must in conflict if must is not one])


class Hopeless(NamedTuple):
    """A small line whose musts cannot be met."""

    case: Case
    targets: list[Target]
    musts: list[Target]


def hopeless(seed: int) -> Hopeless:
    """Draw targets until no set-up holds every must."""
    case = draw(seed)
    while True:
        many = int(case.rng.integers(2, 8))
        targets = drawn_targets.targets(case.rng, case.everything, many, 2)
        musts = [target for target in targets if target.must]
        if brute_force.best(case.everything, musts) is None:
            return Hopeless(case, targets, musts)


def possible_by_both(case: Case, prepared: Prepared) -> Possible:
    """Ask the search and look at every set-up; they must agree on the set-up, too."""

    def possible(targets: Sequence[Target]) -> bool:
        wanted = brute_force.best(case.everything, targets)
        found = find_best(prepared, targets)
        assert (found is None) is (wanted is None)
        if wanted is not None and found is not None:
            assert found.index == case.everything.setup(wanted[1])
        return wanted is not None

    return possible


@pytest.mark.parametrize("seed", range(3000, 3100))
def test_amounts_are_enough_and_none_is_too_much(
    seed: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    in_pieces(monkeypatch, PIECES[seed % len(PIECES)])
    case, targets, musts = hopeless(seed)
    prepared = prepare(case.space)
    reasons = find_reasons(prepared, targets)
    possible = possible_by_both(case, prepared)
    assert reasons.complete
    assert reasons.corrections
    assert reasons.conflicts
    for correction in reasons.corrections:
        _its_set_up_shows_it(case.everything, musts, correction)
        promises(targets, correction, possible)
    cannot_hold_together(reasons, possible)


def _its_set_up_shows_it(
    everything: Everything, musts: list[Target], correction: Correction
) -> None:
    """The set-up may be built, breaks just these musts, and by no more than the amounts."""
    at = everything.place(correction.index)
    given = [give.target for give in correction.gives]
    for must in musts:
        far = brute_force.excess(everything, must)[at]
        assert bool(far == 0.0) is (must not in given)
    for give in correction.gives:
        value = everything.figures[give.target.figure][at]
        assert give.value == pytest.approx(value, abs=1e-7, nan_ok=True)
        assert give.by == pytest.approx(
            brute_force.excess(everything, give.target)[at], abs=1e-7, nan_ok=True
        )


class Example(NamedTuple):
    """The example client and the search's reasons."""

    prepared: Prepared
    targets: tuple[Target, ...]
    reasons: Reasons

    def possible(self, targets: Sequence[Target]) -> bool:
        """Whether the search finds a set-up; otherwise it has proven that there is none."""
        return find_best(self.prepared, targets) is not None


@pytest.fixture(scope="module")
def example() -> Example:
    client = read_client(CANNOT_BE_FITTED)
    person = read_person(client)
    prepared = prepare(space_for(client, everyday(), person.occupant))
    assert find_best(prepared, person.targets) is None
    return Example(prepared, person.targets, find_reasons(prepared, person.targets))


def test_amounts_of_the_example_client(example: Example) -> None:
    """Worked by hand from the client's measures and the line's sizes.

    The best frame carries 220 kg, the client weighs 240. Seats are made 560 and 580 mm wide, the
    hips are 570. The wheels stand 58 mm outside the seat with the arm support whose pads go
    high enough, and a tyre is 37 mm wide: 580 + 2 x 58 + 37 = 733, and the door lets 720 through.
    With the narrow arm support the chair is less wide, but its highest pad is 275 mm above the
    rail and the lowest cushion 12: 263 above the cushion. The elbow is 265 high, and the pad must
    not be lower.
    """
    amounts = {
        frozenset((give.target.figure, round(give.value, 6)) for give in correction.gives)
        for correction in example.reasons.corrections
    }
    load = ("load_margin_kg", -20.0)
    assert amounts == {
        frozenset({load, ("seat_width_mm", 560.0)}),
        frozenset({load, ("overall_width_mm", 733.0)}),
        frozenset({load, ("arm_height_mm", 263.0)}),
    }


def test_amounts_of_the_example_client_are_enough_and_none_is_too_much(example: Example) -> None:
    tried = [
        promises(example.targets, correction, example.possible)
        for correction in example.reasons.corrections
    ]
    assert tried == [2, 2, 2]


def test_musts_that_cannot_hold_together_for_the_example_client(example: Example) -> None:
    groups = {frozenset(must.figure for must in group) for group in example.reasons.conflicts}
    assert groups == {
        frozenset({"load_margin_kg"}),
        frozenset({"seat_width_mm", "overall_width_mm", "arm_height_mm"}),
    }
    cannot_hold_together(example.reasons, example.possible)


@pytest.mark.parametrize("tries", [0, 3, 8])
@pytest.mark.parametrize("seed", range(3200, 3240))
def test_amounts_are_the_least_in_total(
    seed: int, tries: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every set-up is looked at; 0 tries leave it all to the one search, more to the steps."""
    monkeypatch.setattr("chairwright.search.amounts.MOST_TRIES", tries)
    case, targets, musts = hopeless(seed)
    for correction in find_reasons(case.space, targets).corrections:
        given = [give.target for give in correction.gives]
        kept = [must for must in musts if must not in given]
        asked = [replace(each, must=False, weight=1.0) for each in given]
        wanted = brute_force.best(case.everything, [*kept, *asked])
        assert wanted is not None
        if any(math.isnan(give.by) for give in correction.gives):
            at = case.everything.place(correction.index)
            gave = sum(brute_force.steps(case.everything, each)[at] for each in asked)
        else:
            gave = sum(give.by / FIGURES[give.target.figure].scale for give in correction.gives)
        assert gave == pytest.approx(wanted[0], abs=1e-6)
