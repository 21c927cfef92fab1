"""What would help where a place is missed: one change of the set-up, or of the place itself."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from chairwright.figures.folded import stowed_box
from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described, Judged, judge
from chairwright.fitting.one_change import OneChange, one_change
from chairwright.fitting.person import Person
from chairwright.fitting.place_sizes import Size, change_words, larger_boot, sizes_of
from chairwright.fitting.place_verdicts import PlaceVerdict, Tried, is_missed
from chairwright.fitting.settled import space_for
from chairwright.line.model import Line
from chairwright.places.kinds import Boot
from chairwright.places.model import Place
from chairwright.targets.target import Target
from chairwright.targets.verdict import SLACK, broken

NO_WISH = "as preferred"
WISHES = {
    "corner_arc_mm": "in one turn",
    "door_turn_mm": "in one turn",
    "turning_diameter_mm": "to turn on the spot",
    "half_turn_width_mm": "to turn on the spot",
    "device_spare_deg": "without grounding",
    "step_force_n": "to push the casters over it",
    "rear_step_force_n": "to push the rear wheels over it",
    "rim_force_n": "for the push of each hand",
    "push_start_n": "for the push to start",
    "push_force_n": "for the push to keep rolling",
    "knee_top_mm": "for the knees to go under",
    "cushion_to_floor_front_mm": "for a level transfer",
}
"""What is gained where a wish is met, by figure or family."""


@dataclass(frozen=True)
class Change:
    """Something that would help in a place.

    Parameters
    ----------
    kind : {"set-up", "place"}
    words : str
        Lengths in mm and m.
    price : float or None
        Difference in the line's currency; None where it is not known.
    codes : dict of str to tuple of str
        Choice to its code before and after; empty for a change of the place.
    """

    kind: Literal["set-up", "place"]
    words: str
    price: float | None = None
    codes: dict[str, tuple[str, str]] = field(default_factory=dict)


def cheapest_setup_change(
    person: Person, line: Line, setup: Described, verdict: PlaceVerdict
) -> Change | None:
    """Find the cheapest change of one choice that helps in a place and breaks no must.

    Parameters
    ----------
    person : Person
    line : Line
        With the extras of the set-up.
    setup : Described
    verdict : PlaceVerdict
        Of that set-up.

    Returns
    -------
    Change or None
        None when nothing that counts is missed, or when no single change of the standard range,
        nor then of sizes made to order, lets every must of the place hold and fewer of its
        wishes be missed. Fewest missed first, then the least price, then the fewest preferences
        lost, then the line's order.
    """
    draws = [item for item in verdict.judged if item.target.must or item.target.weight > 0]
    if not any(is_missed(item) for item in draws):
        return None
    targets = _in_one(draws, person.targets)
    tried = Tried(person, setup)
    before = judge(tried.figures(target.figure for target in targets), {}, targets)
    for made_to_order in (False, True):
        space = space_for(person.client, line, person.occupant, made_to_order=made_to_order)
        changes = one_change(space, setup.index, [*targets, _PRICE])
        at = _cheapest(changes, before, len(draws))
        if at is not None:
            return _as_change(changes, at, before, setup)
    return None


_PRICE = Target("price", None, None, must=False, weight=0.0, source="", reason="told")


def _in_one(draws: Sequence[Judged], others: Iterable[Target]) -> list[Target]:
    """The place's targets, then everything else that is asked."""
    first = [item.target for item in draws]
    return [*first, *(target for target in others if target not in first)]


def _cheapest(changes: OneChange, before: Sequence[Judged], own: int) -> int | None:
    """The row of the best change; the first ``own`` targets are the place's."""
    if not changes.steps:
        return None
    missed, was = _missed(changes, before), np.array([is_missed(item) for item in before])
    must = np.array([item.target.must for item in before])
    lost = missed & ~was
    count = missed[:, :own].sum(axis=1)
    fine = ~lost[:, must].any(axis=1) & ~missed[:, :own][:, must[:own]].any(axis=1)
    fine &= count < was[:own].sum()
    price = np.nan_to_num(changes.values["price"])
    order = np.lexsort([lost[:, ~must].sum(axis=1), price, count, ~fine])
    return int(order[0]) if fine[order[0]] else None


def _missed(changes: OneChange, before: Sequence[Judged]) -> NDArray[np.bool_]:
    """Which targets each change misses, shape (n, t)."""
    return np.stack(
        [broken(item.target, changes.values[item.target.figure]) for item in before], axis=1
    )


def _as_change(changes: OneChange, at: int, before: Sequence[Judged], setup: Described) -> Change:
    step, missed = changes.steps[at], _missed(changes, before)[at]
    lost = [
        FIGURES[item.target.figure].label
        for item, now in zip(before, missed, strict=True)
        if now and not is_missed(item)
    ]
    price = float(changes.values["price"][at]) - setup.figures["price"]
    custom = ", made to order" if step.option.kind == "made to order" else ""
    return Change(
        kind="set-up",
        words=f"one change{custom}{_lost_words(list(dict.fromkeys(lost)))}",
        price=None if math.isnan(price) else price,
        codes={step.choice: (setup.codes[step.choice], step.option.code)},
    )


def _lost_words(labels: Sequence[str]) -> str:
    if not labels:
        return ""
    named = [label[:1].lower() + label[1:] for label in labels[:2]]
    if len(labels) > 2:
        return f" (then not as preferred: {', '.join(named)} and {len(labels) - 2} more)"
    return f" (then not as preferred: {' and '.join(named)})"


def place_change(person: Person, setup: Described, verdict: PlaceVerdict) -> Change | None:
    """Say what a place would have to be for one set-up.

    Parameters
    ----------
    person : Person
    setup : Described
    verdict : PlaceVerdict
        Of that set-up.

    Returns
    -------
    Change or None
        None when nothing is missed, or when no size of the place lets its musts hold. What the
        wishes would take comes after what the musts take.
    """
    mended = mend(Tried(person, setup), verdict)
    clauses = [
        f"{each.gain}: {change_words(verdict.place, each.place)}" if each.gain
        else change_words(verdict.place, each.place)
        for each in mended
    ]  # fmt: skip
    return Change("place", "; ".join(clauses)) if clauses else None


@dataclass(frozen=True)
class Mended:
    """A place with its sizes changed as little as helps.

    Parameters
    ----------
    place : Place
    targets : tuple of int
        Positions of the place's targets that then hold.
    gain : str
        What the wishes gain; empty for musts.
    """

    place: Place
    targets: tuple[int, ...]
    gain: str


def mend(tried: Tried, verdict: PlaceVerdict) -> tuple[Mended, ...]:
    """Change the sizes of a place, first for its musts, then for its wishes as well.

    Parameters
    ----------
    tried : Tried
        The set-up for which it is changed.
    verdict : PlaceVerdict

    Returns
    -------
    tuple of Mended
        Up to two; empty when nothing is missed or a must stays missed.
    """
    place, found = verdict.place, []
    for must in (True, False):
        done: list[int] = []
        for at, item in enumerate(verdict.judged):
            if item.target.must is must and is_missed(item):
                changed = _mended(tried, place, at)
                if changed is None and must:
                    return ()
                if changed is not None:
                    place, done = changed, [*done, at]
        if done:
            found.append(Mended(place, tuple(done), "" if must else _gain(verdict, done)))
    return tuple(found)


def _gain(verdict: PlaceVerdict, done: Sequence[int]) -> str:
    families = [verdict.judged[at].target.figure.partition("@")[0] for at in done]
    return " and ".join(dict.fromkeys(WISHES.get(each, NO_WISH) for each in families))


def _mended(tried: Tried, place: Place, at: int) -> Place | None:
    """The place with one of its targets held; itself where it holds already."""
    if not is_missed(tried.nominal(place)[at]):
        return place
    if isinstance(place, Boot):
        box = stowed_box(tried.rows, wheels_off=place.wheels_off)
        length, width, height = (float(edge[0]) for edge in box)
        larger = larger_boot(place, (length, width, height))
        return None if is_missed(tried.nominal(larger)[at]) else larger
    for last_resort in (False, True):
        sizes = [size for size in sizes_of(place) if size.last_resort is last_resort]
        found = [(size, _least(tried, place, at, size)) for size in sizes]
        near = [(size.by(place, steps), size, steps) for size, steps in found if steps is not None]
        if near:
            _, size, steps = min(near, key=lambda each: each[0])
            return size.at(place, steps)
    return None


def _least(tried: Tried, place: Place, at: int, size: Size) -> int | None:
    """The least change of a size with which a target holds; bisection, for more never harms.

    One that holds between two ends is sought from the end at which it is missed.
    """
    steps, before = size.steps(place), tried.nominal(place)[at]

    def enough(k: int) -> bool:
        return not _same_miss(before, tried.nominal(size.at(place, steps[k]))[at])

    if not steps or not enough(len(steps) - 1):
        return None
    low, high = -1, len(steps) - 1
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if enough(middle) else (middle, high)
    return None if is_missed(tried.nominal(size.at(place, steps[high]))[at]) else steps[high]


def _same_miss(before: Judged, after: Judged) -> bool:
    """Whether a target is still missed at the same end, or not known."""
    if math.isnan(before.value) or math.isnan(after.value):
        return is_missed(after)
    old, new = before.target, after.target
    if old.high is not None and new.high is not None and before.value > old.high:
        return after.value > new.high + SLACK
    return new.low is not None and after.value < new.low - SLACK
