"""Every set-up that the line's rules allow for one client, and how many there are."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.occupant import SIDES, Occupant
from chairwright.chair.rows import IndexArray
from chairwright.errors import InputError, Problem
from chairwright.line.choices import CHOICES
from chairwright.line.codes import matching_codes
from chairwright.line.counting import count_allowed
from chairwright.line.model import Line, Rule


@dataclass(frozen=True)
class Limit:
    """Which options of a few choices go together.

    Parameters
    ----------
    choices : tuple of str
        In the line's order.
    holds : ndarray of bool
        One axis for each choice, over all its options.
    """

    choices: tuple[str, ...]
    holds: NDArray[np.bool_]

    def of(self, index: Mapping[str, IndexArray]) -> NDArray[np.bool_]:
        """Whether it holds for set-ups on which its choices are made, shape (n,)."""
        return np.asarray(self.holds[tuple(index[name] for name in self.choices)])


@dataclass(frozen=True)
class Space:
    """The options open to one client.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    allowed : dict of str to ndarray of int
        Option positions of each choice, in the line's order.
    limits : tuple of Limit
        What is known to go together; a search may use it and need not.
    """

    line: Line
    occupant: Occupant
    allowed: dict[str, IndexArray]
    limits: tuple[Limit, ...] = ()

    @property
    def is_empty(self) -> bool:
        """Whether some choice has no option left."""
        return not all(len(options) for options in self.allowed.values())

    @property
    def count(self) -> int:
        """Number of set-ups that the rules allow, exact."""
        return count_allowed(self.line, self.allowed)


def open_space(
    line: Line,
    occupant: Occupant,
    settled: Mapping[str, Iterable[str]],
    *,
    made_to_order: bool = False,
) -> Space:
    """The options that a client's way of moving and the clinician's decisions leave.

    Sizes made to order and options on request are in it only when they are asked for.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    settled : mapping of str to iterable of str
        Choices that the clinician has narrowed to some codes, of whatever kind.
    made_to_order : bool
        Whether the sizes made to order are open as well.

    Returns
    -------
    Space

    Raises
    ------
    InputError
        When a settled code is not in the line, or contradicts the feet that push.
    """
    allowed: dict[str, IndexArray] = {}
    for name in CHOICES:
        keep = _settled_mask(line, name, settled.get(name), made_to_order=made_to_order)
        if name == "foot_supports":
            keep &= _foot_mask(line, occupant)
        if name == "hand_rim" and occupant.hands_that_push:
            keep &= line.column("hand_rim", "fitted") > 0
        allowed[name] = np.nonzero(keep)[0]
        if not len(allowed[name]):
            raise InputError(_nothing_left(line, name, settled))
    return Space(line, occupant, allowed)


def _settled_mask(
    line: Line, name: str, codes: Iterable[str] | None, *, made_to_order: bool
) -> NDArray[np.bool_]:
    choice = line.choices[name]
    if codes is None:
        kinds = {"standard", "made to order"} if made_to_order else {"standard"}
        return np.array([option.kind in kinds for option in choice.options])
    return line.rule_matches(matching_codes(choice, codes), name)


def _foot_mask(line: Line, occupant: Occupant) -> NDArray[np.bool_]:
    """A foot that pushes has no foot support; a foot that rests has one; a lost one may."""
    keep = np.ones(len(line.choices["foot_supports"].options), dtype=bool)
    for side in SIDES:
        fitted = line.column("foot_supports", side) > 0
        if side in occupant.feet_that_push:
            keep &= ~fitted
        elif side in occupant.feet_that_rest:
            keep &= fitted
    return keep


def _nothing_left(line: Line, name: str, settled: Mapping[str, Iterable[str]]) -> Problem:
    codes = ", ".join(line.choices[name].codes)
    return Problem(
        where=f"choices.{name}",
        must=f"at least one of the line's options must be left ({codes})",
        got=", ".join(settled.get(name, ())) or "none that suits the feet that push and rest",
        remedy="Use codes of this line, or leave the choice open.",
    )


def obeyed(line: Line, rules: Iterable[Rule], index: Mapping[str, IndexArray]) -> NDArray[np.bool_]:
    """Which set-ups keep all the rules.

    Parameters
    ----------
    line : Line
    rules : iterable of Rule
        All their choices must be in ``index``.
    index : mapping of str to ndarray of int, shape (n,)

    Returns
    -------
    ndarray of bool, shape (n,)
    """
    fine = np.ones(len(next(iter(index.values()))), dtype=bool)
    for rule in rules:
        fine &= ~_all_match(line, rule.when, index) | _all_match(line, rule.need, index)
    return fine


def _all_match(
    line: Line, wanted: Mapping[str, frozenset[str]], index: Mapping[str, IndexArray]
) -> NDArray[np.bool_]:
    masks = [line.rule_matches(codes, name)[index[name]] for name, codes in wanted.items()]
    return np.asarray(np.logical_and.reduce(masks))
