"""What each option of each choice would take on a chair in use, and what a whole change adds up to.

From the present option to another one of the same choice there are four kinds of change: nothing;
a hole or setting is moved, or a part taken off; a part is bought; or the frame itself is another
one, and then a new frame is bought once, whatever of it differs.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import Line, Option
from chairwright.mass_points import FloatArray
from chairwright.order.change_work import SHARED, frame_minutes, minutes_of, shared_minutes
from chairwright.order.parts import SETTINGS, is_part
from chairwright.search.sums import Shared, Sum

ChangeKind = Literal["kept", "set", "bought", "frame"]
FEET = ("hanger", "foot_plate", "leg_length")


@dataclass(frozen=True)
class ChangeTable:
    """Every change that one present set-up can see.

    Parameters
    ----------
    line : Line
    index : dict of str to int
        The present set-up: option position of every choice.
    kinds : dict of str to tuple of {"kept", "set", "bought", "frame"}
        Kind of change of every option of every choice.
    money : Sum
        Parts bought [the line's currency].
    minutes : Sum
        Work.
    parts : Sum
        Choices with a part bought; a new frame counts once.
    moves : Sum
        Choices with a hole or setting moved, or a part taken off.
    """

    line: Line
    index: dict[str, int]
    kinds: dict[str, tuple[ChangeKind, ...]]
    money: Sum
    minutes: Sum
    parts: Sum
    moves: Sum

    def kind(self, choice: str, option: int) -> ChangeKind:
        """Kind of change of one option of one choice."""
        return self.kinds[choice][option]


def change_table(line: Line, index: Mapping[str, int]) -> ChangeTable:
    """Work out what every option takes from a present set-up.

    Parameters
    ----------
    line : Line
    index : mapping of str to int
        Option position of every choice of the chair as it is.

    Returns
    -------
    ChangeTable
    """
    kinds = {
        name: tuple(_kind(line, name, index[name], at) for at in range(len(choice.options)))
        for name, choice in line.choices.items()
    }
    frame = _of_kind(kinds, "frame")
    return ChangeTable(
        line=line,
        index=dict(index),
        kinds=kinds,
        money=Sum(
            {n: _where(kinds, n, "bought", "frame") * _prices(line, n, index) for n in kinds},
            (Shared(line.later.frame_price, frame),),
        ),
        minutes=_minutes(line, kinds),
        parts=Sum({n: _where(kinds, n, "bought") for n in kinds}, (Shared(1.0, frame),)),
        moves=Sum({n: _where(kinds, n, "set") for n in kinds}),
    )


def new_chair_table(line: Line, kept: Mapping[str, str]) -> ChangeTable:
    """Work out what every option takes when the chair is bought new.

    Parameters
    ----------
    line : Line
    kept : mapping of str to str
        What is there already and goes on the new chair: choice to code of the line.

    Returns
    -------
    ChangeTable
        Prices are those with a new chair; the maker builds it, so there are no minutes.
    """
    index = {
        name: choice.codes.get(kept.get(name, ""), -1) for name, choice in line.choices.items()
    }
    kinds = {
        name: tuple(
            _new_kind(name, index[name], at, each) for at, each in enumerate(choice.options)
        )
        for name, choice in line.choices.items()
    }
    money = {n: _where(kinds, n, "bought", "set") * line.column(n, "price") for n in kinds}
    bought = {n: _where(kinds, n, "bought") for n in kinds}
    return ChangeTable(line, index, kinds, Sum(money), Sum({}), Sum(bought), Sum({}))


def _new_kind(name: str, kept: int, at: int, option: Option) -> ChangeKind:
    if at == kept:
        return "kept"
    return "bought" if is_part(name, option) else "set"


def _kind(line: Line, name: str, before: int, after: int) -> ChangeKind:
    if before == after:
        return "kept"
    if name in line.later.frame:
        return "frame"
    options = line.choices[name].options
    first, last = options[before], options[after]
    if name == "foot_supports":
        return "bought" if _more_feet(first, last) else "set"
    if is_part(name, last) and not (last.part and last.part == first.part):
        return "bought"
    back_to_standard = first.kind == "made to order" and last.kind != "made to order"
    bought = back_to_standard and name not in SETTINGS and last.code != NONE
    return "bought" if bought else "set"


def _more_feet(first: Option, last: Option) -> bool:
    """Whether a second foot support is wanted beside one.

    Where there was none, hanger and plate are bought under their own names.
    """
    one, other = ({s for s in ("left", "right") if o.numbers[s] > 0} for o in (first, last))
    return bool(one) and not other <= one


def _prices(line: Line, name: str, index: Mapping[str, int]) -> FloatArray:
    more = line.later.part_prices.get(name, 0.0)
    if name == "foot_supports":
        return np.full(len(line.choices[name].options), _second_side(line, index))
    return np.asarray(line.column(name, "price") + more)


def _second_side(line: Line, index: Mapping[str, int]) -> float:
    """A foot support for the other side: half of the pairs that are fitted."""
    pairs = 0.0
    for name in FEET:
        option = line.choices[name].options[index[name]]
        pairs += option.numbers["price"] + line.later.part_prices.get(name, 0.0)
    return round(pairs / 2, 2)


def _minutes(line: Line, kinds: Mapping[str, tuple[ChangeKind, ...]]) -> Sum:
    changed = {name: np.array([kind != "kept" for kind in each]) for name, each in kinds.items()}
    work = {name: _where(kinds, name, "set", "bought") * minutes_of(line, name) for name in CHOICES}
    shared = [
        Shared(shared_minutes(line, each), {name: changed[name] for name in each.choices})
        for each in SHARED
    ]
    frame = Shared(frame_minutes(line), _of_kind(kinds, "frame"))
    return Sum(work, (*shared, frame))


def _where(
    kinds: Mapping[str, tuple[ChangeKind, ...]], name: str, *wanted: ChangeKind
) -> FloatArray:
    return np.array([float(kind in wanted) for kind in kinds[name]])


def _of_kind(
    kinds: Mapping[str, tuple[ChangeKind, ...]], kind: ChangeKind
) -> dict[str, NDArray[np.bool_]]:
    marks = {name: np.array([each == kind for each in row]) for name, row in kinds.items()}
    return {name: row for name, row in marks.items() if row.any()}
