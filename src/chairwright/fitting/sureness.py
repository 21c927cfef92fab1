"""What came of asking for a set-up whose musts hold with their spread."""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.targets.target import Target


@dataclass(frozen=True)
class Sureness:
    """What came of asking for a set-up that is sure.

    Parameters
    ----------
    nominal_cost : float
        Cost of the best set-up on nominal values.
    never : tuple of Target
        Musts that no set-up meeting every must holds with their spread.
    rest_sure : bool
        Whether the set-up shown holds all other musts with their spread.
    all_sure : bool
        Whether the set-up shown holds every must with its spread.
    """

    nominal_cost: float
    never: tuple[Target, ...] = ()
    rest_sure: bool = True
    all_sure: bool = True
