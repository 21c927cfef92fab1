"""What a line file allows and what a chair of it costs, worked out from the file's own words."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.occupant import Occupant

from .lines import Written
from .written import Index, Options, Said

Array = NDArray[np.float64]
LEGS = ("hanger", "foot_plate", "leg_length")


class Clause(NamedTuple):
    """Option positions: if all of ``when`` are met, all of ``need`` must be."""

    when: dict[str, list[int]]
    need: dict[str, list[int]]

    @property
    def choices(self) -> set[str]:
        """Names of the choices it speaks of."""
        return {*self.when, *self.need}


def clauses(data: Written, options: Options) -> list[Clause]:
    """The file's rules, and those that go without saying: feet, casters in forks, depths.

    Parameters
    ----------
    data : dict
    options : dict of str to list of Said
    """
    found = [
        Clause(
            {name: _meant(options[name], meant) for name, meant in rule["when"].items()},
            {name: _meant(options[name], meant) for name, meant in rule["need"].items()},
        )
        for rule in data["rules"]
    ]
    for leg in LEGS:
        bare, fitted = _split(options["foot_supports"]), _split(options[leg])
        found += [
            Clause({"foot_supports": here}, {leg: there})
            for here, there in zip(bare, fitted, strict=True)
        ]
    gap = data["caster_housings"]["crown_gap_mm"]
    for at, caster in enumerate(options["caster"]):
        forks = [n for n, fork in enumerate(options["fork"]) if _in_fork(caster, fork, gap)]
        found.append(Clause({"caster": [at]}, {"fork": forks}))
    for at, frame in enumerate(options["side_frame"]):
        low, high = frame.own["depth_from_mm"], frame.own["depth_to_mm"]
        deep = [n for n, d in enumerate(options["seat_depth"]) if low <= d.size <= high]
        found.append(Clause({"side_frame": [at]}, {"seat_depth": deep}))
    return found


def _meant(options: list[Said], meant: Any) -> list[int]:
    if isinstance(meant, dict):
        low, high = meant.get("from", -math.inf), meant.get("to", math.inf)
        return [at for at, option in enumerate(options) if low <= option.size <= high]
    return positions(options, meant)


def positions(options: list[Said], meant: Collection[str]) -> list[int]:
    """Positions of the options that some codes mean; a part's code means all of it."""
    return [at for at, option in enumerate(options) if {option.code, option.part} & {*meant}]


def _split(options: list[Said]) -> tuple[list[int], list[int]]:
    """Positions where nothing is fitted, and where something is."""
    bare = [at for at, option in enumerate(options) if option.code == "none"]
    return bare, [at for at in range(len(options)) if at not in bare]


def _in_fork(caster: Said, fork: Said, gap: float) -> bool:
    drop = fork.own["holes_mm"][int(fork.code.rpartition("-")[2])]
    diameter = caster.own["diameter_mm"]
    return bool(diameter <= fork.own["largest_caster_mm"] and diameter / 2 + gap <= drop)


def open_positions(
    options: Options,
    occupant: Occupant,
    settled: Mapping[str, Collection[str]],
    *,
    made_to_order: bool,
) -> dict[str, list[int]]:
    """Option positions that are open: by kind unless they are named, and by feet and hands.

    Parameters
    ----------
    options : dict of str to list of Said
    occupant : Occupant
    settled : mapping of str to collection of str
    made_to_order : bool
    """
    kinds = {"standard", "made to order"} if made_to_order else {"standard"}
    found = {}
    for name, all_ in options.items():
        if name in settled:
            found[name] = positions(all_, settled[name])
        else:
            found[name] = [at for at, option in enumerate(all_) if option.kind in kinds]
    found["foot_supports"] = [at for at in found["foot_supports"] if _suits_feet(at, occupant)]
    if occupant.hands_that_push:
        rims = options["hand_rim"]
        found["hand_rim"] = [at for at in found["hand_rim"] if rims[at].code != "none"]
    return found


FITTED: tuple[set[str], ...] = ({"left", "right"}, {"left"}, {"right"}, set())
"""Sides with a foot support: both, left only, right only, none."""


def _suits_feet(at: int, occupant: Occupant) -> bool:
    """A foot that pushes has no foot support, a foot that rests has one, a lost one may."""
    for side in ("left", "right"):
        fitted, pushes = side in FITTED[at], side in occupant.feet_that_push
        whole = occupant.body.foot_length_mm[side] is not None
        if (pushes and fitted) or (whole and not pushes and not fitted):
            return False
    return True


def every_set_up(allowed: Mapping[str, list[int]], rules: list[Clause]) -> Index:
    """Multiply the open options out, choice by choice, and strike what breaks a rule.

    Parameters
    ----------
    allowed : mapping of str to list of int
    rules : list of Clause
        Each is applied as soon as all its choices are made.
    """
    index: Index = {}
    for name, options in allowed.items():
        count = len(next(iter(index.values()))) if index else 1
        index = {made: np.repeat(array, len(options)) for made, array in index.items()}
        index[name] = np.tile(np.array(options, dtype=np.intp), count)
        kept = np.ones(len(index[name]), dtype=bool)
        for rule in rules:
            if name in rule.choices and rule.choices <= set(index):
                kept &= ~_all_in(rule.when, index) | _all_in(rule.need, index)
        index = {made: array[kept] for made, array in index.items()}
    return index


def _all_in(side: dict[str, list[int]], index: Index) -> NDArray[np.bool_]:
    masks = [np.isin(index[name], meant) for name, meant in side.items()]
    return np.asarray(np.all(masks, axis=0))


def order_terms(
    data: Written, options: Options, occupant: Occupant, index: Index
) -> dict[str, Array]:
    """Price, surcharge, delivery and load margin of set-ups, shape (n,) each.

    Parameters
    ----------
    data : dict
    options : dict of str to list of Said
    occupant : Occupant
    index : dict of str to ndarray of int, shape (n,)
    """
    always = [Said(part["code"], own=part) for part in data["fixed_parts"]]

    def of_each(key: str) -> list[Array]:
        chosen = [np.array([getattr(o, key) for o in options[n]])[at] for n, at in index.items()]
        return [*chosen, *(np.full_like(chosen[0], getattr(part, key)) for part in always)]

    body = occupant.body.mass_kg + sum(load.mass_kg for load in occupant.carries)
    return {
        "price": data["base_price"] + np.sum(of_each("price"), axis=0),
        "custom_surcharge": np.sum(of_each("surcharge"), axis=0),
        "lead_days": data["build_days"] + np.max(of_each("days"), axis=0),
        "load_margin_kg": np.min(of_each("limit_kg"), axis=0) - body,
    }
