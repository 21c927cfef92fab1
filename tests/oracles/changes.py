"""What a change of a chair takes, worked out from its definition for every set-up of a list.

Nothing of `chairwright.order` or of the search's sums is used: which part is bought, which hole is
moved and which work is shared are written down here again, from docs/theory/refit.md.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from chairwright.line.model import Line, Option

from .written import Index

Array = NDArray[np.float64]
ONLY_SET = ("foot_supports", "stem_setting", "back_angle")
FEET = ("hanger", "foot_plate", "leg_length")


@dataclass(frozen=True)
class Work:
    """Minutes of each choice, and of work that several choices share, by its name."""

    own: dict[str, float]
    shared: dict[str, tuple[frozenset[str], float]]
    frame_minutes: float


@dataclass(frozen=True)
class Taken:
    """What every set-up of a list takes, shape (n,) each."""

    money: Array
    minutes: Array


def thing(name: str, option: Option) -> bool:
    """Whether an option is an article with an order code."""
    if option.code == "none" or name in ONLY_SET:
        return False
    if name == "camber":
        return option.numbers["price"] > 0 or option.numbers.get("mass_kg", 0.0) > 0
    return option.part != "" or option.kind == "made to order"


def what(line: Line, name: str, before: Option, after: Option) -> str:
    """Kind of change of one choice."""
    if before.code == after.code:
        return "same"
    if name in line.later.frame:
        return "frame"
    if name == "foot_supports":
        had, has = (
            {side for side in ("left", "right") if each.numbers[side]} for each in (before, after)
        )
        return "buy" if had and has - had else "move"
    if thing(name, after) and (after.part == "" or after.part != before.part):
        return "buy"
    tube = before.kind == "made to order" and after.kind != "made to order"
    return "buy" if tube and after.code != "none" and name not in ONLY_SET else "move"


def taken(line: Line, present: Mapping[str, int], index: Index, work: Work) -> Taken:
    """Money and minutes of every set-up of a list."""
    count = len(index["fork"])
    money, minutes = np.zeros(count), np.zeros(count)
    changed, framed = {}, np.zeros(count, dtype=bool)
    for name, choice in line.choices.items():
        before = choice.options[present[name]]
        kinds = [what(line, name, before, after) for after in choice.options]
        price = [_price(line, name, present, option) for option in choice.options]
        pays = [p if k in ("buy", "frame") else 0.0 for p, k in zip(price, kinds, strict=True)]
        money += np.array(pays)[index[name]]
        works = [work.own[name] if kind in ("buy", "move") else 0.0 for kind in kinds]
        minutes += np.array(works)[index[name]]
        changed[name] = np.array([kind != "same" for kind in kinds])[index[name]]
        framed |= np.array([kind == "frame" for kind in kinds])[index[name]]
    for choices, amount in work.shared.values():
        minutes += amount * np.logical_or.reduce([changed[name] for name in choices])
    money += line.later.frame_price * framed
    minutes += work.frame_minutes * framed
    return Taken(money, minutes)


def _price(line: Line, name: str, present: Mapping[str, int], option: Option) -> float:
    later = line.later.part_prices
    if name == "foot_supports":
        pairs = sum(
            line.choices[each].options[present[each]].numbers["price"] + later.get(each, 0.0)
            for each in FEET
        )
        return round(pairs / 2, 2)
    return option.numbers["price"] + later.get(name, 0.0)
