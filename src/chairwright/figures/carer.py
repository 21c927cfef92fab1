"""What a carer pushes and lifts: published screening limits, handle height, the lifting equation.

The limits are filters, not safe limits (HSE, read in the source). Theory: docs/theory/rolling.md.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache
from typing import Literal

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.balance import GRAVITY_MPS2
from chairwright.figures.space import push_handle
from chairwright.line.choices import NONE
from chairwright.mass_points import FloatArray
from chairwright.tables.load import find_row, load_table

Who = Literal["women", "men"]
Zone = Literal["shoulder to elbow", "elbow to knuckle", "knuckle to shin", "below shin"]

HANDLE_SHARE = 0.865
"""Best height of push handles over the carer's shoulder height (van der Woude 1995, read in the
abstract only; five heights from 61 to 95 percent were tried)."""

FREQUENT_SHARE = 0.7
"""What is left of a lifting limit at one or two lifts a minute (HSE INDG143, read in the
source)."""

TWIST_SHARES = {0: 1.0, 45: 0.9, 90: 0.8}
"""What is left of a lifting limit by the twist of the trunk [deg] (HSE INDG143, read in the
source)."""

REFERENCE_MASS_KG = 23.0


@dataclass(frozen=True)
class PushLimits:
    """Screening limits for pushing or pulling [N].

    Parameters
    ----------
    start_n : float [N]
        To start or stop.
    keep_n : float [N]
        To keep moving.
    source : str
    """

    start_n: float
    keep_n: float
    source: str


@cache
def push_limits() -> dict[str, PushLimits]:
    """Published screening limits by whom they are for: "women", "men"."""
    return {
        row["who"]: PushLimits(
            float(row["start_n"]), float(row["keep_n"]), "HSE INDG143 (read in the source)"
        )
        for row in load_table("rolling", "push_limits")
    }


def lifting_limit_kg(
    who: Who, zone: Zone, *, arms_out: bool = False, often: bool = False, twist_deg: int = 0
) -> float:
    """Mass that the published lifting filter lets pass [kg].

    Parameters
    ----------
    who : {"women", "men"}
    zone : str
        Height of the hands.
    arms_out : bool
        Whether the load is held away from the body.
    often : bool
        At one or two lifts a minute.
    twist_deg : {0, 45, 90}

    Returns
    -------
    float [kg]

    References
    ----------
    HSE lifting filter (from memory, unverified).
    """
    row = find_row("rolling", "lifting_filter", who=who, zone=zone)
    limit = float(row["out_kg" if arms_out else "close_kg"])
    return limit * (FREQUENT_SHARE if often else 1.0) * TWIST_SHARES[twist_deg]


def recommended_lift_kg(
    hands_out_cm: float,
    hands_up_cm: float,
    lifted_by_cm: float,
    *,
    twist_deg: float = 0.0,
    frequency: float = 1.0,
    coupling: float = 1.0,
) -> float:
    """Recommended weight limit of the NIOSH lifting equation [kg].

    Parameters
    ----------
    hands_out_cm, hands_up_cm : float [cm]
        Hands ahead of the ankles and above the floor where the lift begins.
    lifted_by_cm : float [cm]
        How far the hands travel up or down.
    twist_deg : float [deg]
    frequency, coupling : float
        Multipliers for how often and how well the load is held.

    Returns
    -------
    float [kg]

    References
    ----------
    NIOSH lifting equation (from memory, unverified).
    """
    horizontal = min(1.0, 25.0 / hands_out_cm)
    vertical = max(0.0, 1.0 - 0.003 * abs(hands_up_cm - 75.0))
    distance = min(1.0, 0.82 + 4.5 / lifted_by_cm)
    twist = 1.0 - 0.0032 * twist_deg
    return REFERENCE_MASS_KG * horizontal * vertical * distance * twist * frequency * coupling


def best_handle_height_mm(shoulder_mm: float) -> float:
    """Best height of push handles for a carer's shoulder height [mm].

    References
    ----------
    van der Woude 1995 (read in the abstract only): 86.5 percent.
    """
    return HANDLE_SHARE * shoulder_mm


def steepest_slope_deg(push_n: float, mass_kg: float, coefficient: float) -> float:
    """Steepest slope that a push holds a chair rolling up on [deg]; NaN when it never rolls.

    Parameters
    ----------
    push_n : float [N]
    mass_kg : float [kg]
    coefficient : float
        Rolling resistance over load of the whole chair.

    Returns
    -------
    float [deg]

    References
    ----------
    First principles: W (mu cos a + sin a) = F, solved for a.
    """
    share = push_n / (mass_kg * GRAVITY_MPS2 * math.hypot(1.0, coefficient))
    if share > 1.0:
        return 90.0
    slope = math.degrees(math.asin(share) - math.atan(coefficient))
    return slope if slope >= 0.0 else math.nan


def push_handle_height(rows: Rows, occupant: Occupant) -> FloatArray:
    """Grip of the push handles above the floor [mm]; NaN without handles."""
    absent = rows.line.rule_matches(frozenset({NONE}), "push_handle")[rows.index["push_handle"]]
    return np.where(absent, np.nan, push_handle(rows)[1])
