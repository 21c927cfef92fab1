"""One client: what was measured, what is missing, and how they move."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from chairwright.units import Quantity

Sex = Literal["female", "male"]
Side = Literal["left", "right", "middle"]
Propulsion = Literal["hands", "feet", "hand_and_foot_left", "hand_and_foot_right", "carer"]
AmputationLevel = Literal[
    "foot",
    "below_knee",
    "through_knee",
    "above_knee",
    "hip",
    "hand",
    "below_elbow",
    "through_elbow",
    "above_elbow",
    "shoulder",
]
CarryPlace = Literal["backpack", "under_seat", "lap", "foot_support"]


@dataclass(frozen=True)
class Measure:
    """One body measure of one side (or of the middle).

    Parameters
    ----------
    name : str
        Clinical name, a key of ``person.measures.CATALOGUE``.
    side : {"left", "right", "middle"}
    quantity : Quantity
        Value in mm, kg or degrees, as typed kept beside it.
    tolerance : float
        Half width of the tape's (or the estimate's) spread, in the same unit.
    estimated : bool
        True when nobody measured it.
    basis : str
        Where an estimate comes from; empty for a measured value.
    where : str
        ``file:line`` of the value.
    """

    name: str
    side: Side
    quantity: Quantity
    tolerance: float
    estimated: bool = False
    basis: str = ""
    where: str = ""

    @property
    def value(self) -> float:
        """Value in mm, kg or degrees."""
        return self.quantity.value


@dataclass(frozen=True)
class Amputation:
    """A lost limb part.

    Parameters
    ----------
    side : {"left", "right"}
    level : AmputationLevel
    residual : float
        Share of the cut segment's length that is left, 0 to 1; only for
        ``below_knee``, ``above_knee``, ``below_elbow`` and ``above_elbow``.
    """

    side: Literal["left", "right"]
    level: AmputationLevel
    residual: float = 0.5


@dataclass(frozen=True)
class Carried:
    """A load that the chair carries every day."""

    name: str
    mass_kg: float
    place: CarryPlace


@dataclass(frozen=True)
class OwnTarget:
    """A target that the clinician sets, with the reason."""

    figure: str
    low: float | None
    high: float | None
    must: bool
    weight: float
    reason: str
    where: str = ""


@dataclass(frozen=True)
class Expected:
    """How the clinician expects the client to change.

    Parameters
    ----------
    over_years : float [years]
    ranges : dict of str to tuple of float [mm or kg]
        Least and most of a measure at the end.
    reason : str
    """

    over_years: float
    ranges: dict[str, tuple[float, float]]
    reason: str


@dataclass(frozen=True)
class Client:
    """Everything known about one client, as typed.

    Parameters
    ----------
    reference : str
        The client's number, never a name.
    sex : {"female", "male"}
        Which body tables apply.
    measures : tuple of Measure
        Measured values only; ``person.estimates.complete`` adds the estimates.
    propulsion : Propulsion
    amputations, carries, own_targets : tuple
    rule_set : str
        Key of ``targets.rules.RULE_SETS``.
    note : str
        Free text; never printed on papers for the shop.
    leg_mass_factor : float
        Share of the table's leg mass that is there, 0.7 to 1.0 (long-standing paralysis).
    fixed_choices : dict
        Choices the clinician has settled, choice name to option code.
    weights : dict
        Figure to the weight that the clinician gives a rule's preference on it.
    extras : tuple of str
        Codes of the accessories that are to be fitted.
    age_years : float or None [years]
        None when the file does not say.
    expected : Expected or None
    where : dict
        Field name to ``file:line``; ``weights.FIGURE`` for each weight, ``extras.CODE`` likewise.
    """

    reference: str
    sex: Sex
    measures: tuple[Measure, ...]
    propulsion: Propulsion = "hands"
    amputations: tuple[Amputation, ...] = ()
    carries: tuple[Carried, ...] = ()
    own_targets: tuple[OwnTarget, ...] = ()
    rule_set: str = "envelope"
    note: str = ""
    leg_mass_factor: float = 1.0
    fixed_choices: dict[str, tuple[str, ...]] = field(default_factory=dict)
    weights: dict[str, float] = field(default_factory=dict)
    extras: tuple[str, ...] = ()
    age_years: float | None = None
    expected: Expected | None = None
    where: dict[str, str] = field(default_factory=dict)

    @property
    def feet_that_push(self) -> tuple[Literal["left", "right"], ...]:
        """Sides whose foot propels the chair on the floor."""
        if self.propulsion == "feet":
            return ("left", "right")
        if self.propulsion == "hand_and_foot_left":
            return ("left",)
        if self.propulsion == "hand_and_foot_right":
            return ("right",)
        return ()

    @property
    def hands_that_push(self) -> tuple[Literal["left", "right"], ...]:
        """Sides whose hand drives a rim."""
        if self.propulsion == "hands":
            return ("left", "right")
        if self.propulsion == "hand_and_foot_left":
            return ("left",)
        if self.propulsion == "hand_and_foot_right":
            return ("right",)
        return ()
