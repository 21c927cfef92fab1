"""What a figure is: name, unit, meaning, source, and the formula with the choice that settles it.

``after`` names the last choice, in the order of ``chair.steps.STEPS``, that a figure waits for.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.band import Band
from chairwright.figures.mass import MassBox
from chairwright.line.choices import CHOICES
from chairwright.mass_points import FloatArray

ExactFormula = Callable[[Rows, Occupant], FloatArray]
MassFormula = Callable[[Rows, MassBox], Band]

SEAT = "Does the seat come out right?"
REACH = "Do hands and feet reach?"
STEADY = "Is it steady?"
MOVING = "Does it push and turn easily?"
PLACES = "Does it fit the places?"
WEIGHT = "What does it weigh?"
ORDER = "What does it cost, and when does it come?"
GROUPS = (SEAT, REACH, STEADY, MOVING, PLACES, WEIGHT, ORDER)


@dataclass(frozen=True)
class Figure:
    """One figure.

    Parameters
    ----------
    name : str
        Unit as suffix.
    label : str
        For people.
    unit : str
    digits : int
        Digits after the point when printed.
    scale : float
        A difference that matters to a fitter, in the figure's unit: preferences are weighed in it.
    group : str
        The question it answers.
    after : str
        The choice that settles it.
    source : str
    exact : callable or None
        Formula that needs no masses.
    weighed : callable or None
        Formula of the centre of mass.
    depends : tuple of str
        All choices that an exact figure depends on, when they are few enough to tabulate.
    touches : tuple of str or None
        All choices that an exact figure depends on, where they are too many to tabulate; None
        for every choice.
    """

    name: str
    label: str
    unit: str
    digits: int
    scale: float
    group: str
    after: str
    source: str
    exact: ExactFormula | None = None
    weighed: MassFormula | None = None
    depends: tuple[str, ...] = ()
    touches: tuple[str, ...] | None = None

    @property
    def touched_by(self) -> frozenset[str]:
        """Every choice that can change the figure; for one of masses that is every choice.

        None for a figure of `figures.terms`: options with the same number are alike to it.
        """
        if self.depends:
            return frozenset(self.depends)
        return frozenset(CHOICES if self.touches is None else self.touches)

    @property
    def resolution(self) -> float:
        """Smallest difference that is printed."""
        return float(10.0**-self.digits)
