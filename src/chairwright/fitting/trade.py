"""What a trade-off front is about: the usual three figures, or two to four that are asked for."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from chairwright.chair.occupant import Occupant
from chairwright.errors import InputError, Problem
from chairwright.figures.registry import FIGURES
from chairwright.search.front import Objective
from chairwright.validation import suggest

FEWEST, MOST = 2, 4
LEAST: Literal["min"] = "min"
GREATEST: Literal["max"] = "max"

BALANCE = Objective("tip_least_deg", GREATEST)
WIDTH = Objective("overall_width_mm", LEAST)
REACH = Objective("push_reach_deg", LEAST)
TURNING = Objective("turning_diameter_mm", LEAST)

SMALLER_IS_BETTER = (
    "push_reach_deg", "overall_width_mm", "overall_length_mm", "overall_height_mm",
    "folded_width_mm", "turning_diameter_mm", "half_turn_width_mm", "chair_mass_kg",
    "heaviest_part_kg", "total_mass_kg", "price", "custom_surcharge", "lead_days",
    "push_force_level_n", "push_force_carpet_n", "yaw_inertia_kgm2", "tip_lever_n",
)  # fmt: skip
GREATER_IS_BETTER = (
    "tip_rear_locked_deg", "tip_rear_free_deg", "tip_forward_deg",
    "tip_forward_casters_forward_deg", "tip_left_deg", "tip_right_deg", "tip_left_line_deg",
    "tip_right_line_deg", "tip_least_deg", "tip_rear_anti_tip_deg", "anti_tip_gain_deg",
    "start_lift_level_mps2", "start_lift_1_to_12_mps2", "braking_lift_level_mps2",
    "braking_lift_1_to_12_mps2", "footplate_clearance_mm", "caster_foot_clearance_mm",
    "caster_tyre_clearance_mm", "load_margin_kg", "push_arc_deg", "heel_reach_mm",
)  # fmt: skip
"""Which way is better, everything else alike (common practice, no source). Of the other figures
it hangs on the client: for them ``=least`` or ``=most`` must be said."""

WORDS: dict[str, Literal["min", "max"]] = {"least": LEAST, "most": GREATEST}
USUAL: dict[str, Literal["min", "max"]] = {
    **dict.fromkeys(SMALLER_IS_BETTER, LEAST),
    **dict.fromkeys(GREATER_IS_BETTER, GREATEST),
}


def usual_objectives(occupant: Occupant) -> tuple[Objective, ...]:
    """Balance, width, and the push, or the turning circle when no hand pushes."""
    return (BALANCE, WIDTH, REACH if occupant.hands_that_push else TURNING)


def read_objectives(typed: str) -> tuple[Objective, ...]:
    """Read the figures of a trade-off as typed.

    Parameters
    ----------
    typed : str
        Names of figures joined by commas, each with ``=least`` or ``=most`` where that is meant.

    Returns
    -------
    tuple of Objective

    Raises
    ------
    InputError
        When a figure is not known or stands twice, when nothing says which way is better, or
        when there are not two to four.

    Examples
    --------
    >>> [(aim.figure, aim.sense) for aim in read_objectives("price,wheelbase_mm=most")]
    [('price', 'min'), ('wheelbase_mm', 'max')]
    """
    parts = [part.strip() for part in typed.split(",") if part.strip()]
    names = [part.partition("=")[0].strip() for part in parts]
    problems = [problem for part in parts for problem in _problems(part)]
    problems += [
        _problem("each figure must stand once", name, "Take one of them out.")
        for name in dict.fromkeys(names)
        if names.count(name) > 1
    ]
    if not problems and not FEWEST <= len(parts) <= MOST:
        remedy = "Name as many, for example price,chair_mass_kg,tip_rear_locked_deg."
        must = f"a trade-off must be of {FEWEST} to {MOST} figures"
        problems.append(_problem(must, str(len(parts)), remedy))
    if problems:
        raise InputError(*problems)
    return tuple(_objective(part) for part in parts)


def _problems(part: str) -> Iterator[Problem]:
    name, equals, way = (piece.strip() for piece in part.partition("="))
    if name not in FIGURES:
        yield _problem("it must be a figure that there is", name, suggest(name, FIGURES))
    elif equals and way not in WORDS:
        yield _problem("a figure must be wanted as =least or =most", part, suggest(way, WORDS))
    elif not equals and name not in USUAL:
        must = "it must be said which way this figure is better"
        yield _problem(must, name, f"Write {name}=least or {name}=most.")


def _problem(must: str, got: str, remedy: str) -> Problem:
    return Problem("--trade", must, got, remedy)


def _objective(part: str) -> Objective:
    name, _, way = (piece.strip() for piece in part.partition("="))
    return Objective(name, WORDS[way] if way else USUAL[name])
