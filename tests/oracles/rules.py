"""The line's rules and the feet, applied in plain Python from their words."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.occupant import Occupant
from chairwright.line.model import Line


def positions(line: Line, choice: str, codes: frozenset[str]) -> list[int]:
    """Positions of some option codes."""
    return [at for at, option in enumerate(line.choices[choice].options) if option.code in codes]


def rules_kept(line: Line, index: Mapping[str, NDArray[np.intp]]) -> NDArray[np.bool_]:
    """Which set-ups keep every rule: if all that it speaks of is met, all that it asks must be.

    Parameters
    ----------
    line : Line
    index : mapping of str to ndarray of int, shape (n,)
        Option position of every choice.

    Returns
    -------
    ndarray of bool, shape (n,)
    """
    kept = np.ones(len(index["caster"]), dtype=bool)
    for rule in line.rules:
        speaks = np.ones_like(kept)
        for choice, codes in rule.when.items():
            speaks &= np.isin(index[choice], positions(line, choice, codes))
        for choice, codes in rule.need.items():
            kept &= ~(speaks & ~np.isin(index[choice], positions(line, choice, codes)))
    return kept


def allowed_positions(line: Line, occupant: Occupant) -> dict[str, NDArray[np.intp]]:
    """Option positions that suit feet and hands; options of every kind.

    A foot that pushes has no foot support, a foot that rests has one, a lost one may have one;
    a hand that pushes has a hand rim.
    """
    allowed = {name: np.arange(len(c.options)) for name, c in line.choices.items()}
    suits = []
    for at, option in enumerate(line.choices["foot_supports"].options):
        fine = True
        for side in ("left", "right"):
            fitted = option.numbers[side] > 0
            whole = occupant.body.foot_length_mm[side] is not None
            pushes = side in occupant.feet_that_push
            if (pushes and fitted) or (whole and not pushes and not fitted):
                fine = False
        if fine:
            suits.append(at)
    allowed["foot_supports"] = np.array(suits)
    if occupant.hands_that_push:
        rims = [option.numbers["fitted"] > 0 for option in line.choices["hand_rim"].options]
        allowed["hand_rim"] = np.nonzero(np.array(rims))[0]
    return allowed
