"""The whole chain, from the measures of a person to figures, for many draws at once."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any, cast

import numpy as np

from chairwright.chair.occupant import Occupant, own_points, seat
from chairwright.chair.rows import IndexArray
from chairwright.chair.weighed import CentreWeighed, Place
from chairwright.figures.evaluate import figures_of, follow, realise
from chairwright.figures.spread import FORE_AFT_MM, HEIGHT_MM
from chairwright.figures.weighed_spread import axes
from chairwright.line.model import Line
from chairwright.mass_points import FloatArray, MassPoints
from chairwright.person.posture import centre_of_mass
from chairwright.tolerance.chair_inputs import DrawnRows, Number, chair_inputs, offs
from chairwright.tolerance.model import NO_SOURCE, Input
from chairwright.tolerance.person_inputs import PersonInputs, person_inputs

LOAD_SHARE = 0.1
"""How far what is carried every day differs from what was said, as a share."""

WEIGH = "Weigh the client in a chair on scales, instead of the body model."
MODEL = (
    "derived: the segment model beside the seated means of 762 laser-scanned people (UMTRI, read "
    "in the abstract only) and of Santschi 1963 (from memory, unverified)"
)
BODY = "body model: centre of mass"
MODELLED = (
    Input("body.ahead", f"{BODY} ahead", "body", FORE_AFT_MM, "mm", MODEL, WEIGH),
    Input("body.up", f"{BODY} up", "body", HEIGHT_MM, "mm", MODEL, WEIGH),
)
"""What the segment model can be off by, beside the measures that it starts from."""

NOT_WEIGHED = CentreWeighed(
    mass_kg=0.0, shift_mm=(0.0, 0.0, 0.0), modelled_at_mm=(0.0, 0.0, 0.0), covariance=()
)


@dataclass(frozen=True)
class Chain:
    """One client on one line, with everything that can be off.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    person : PersonInputs or None
        None for a body that no measures are known of.
    body, loads : tuple of Input
        Centre of mass of the body; what is carried.
    chair : dict of (choice, key) to Input
    """

    line: Line
    occupant: Occupant
    person: PersonInputs | None
    body: tuple[Input, ...]
    loads: tuple[Input, ...]
    chair: dict[Number, Input]

    @cached_property
    def inputs(self) -> tuple[Input, ...]:
        """Every input, in the order of the steps."""
        person = () if self.person is None else self.person.inputs
        return (*person, *self.body, *self.loads, *self.chair.values())

    @cached_property
    def _ends(self) -> tuple[int, int, int]:
        person = 0 if self.person is None else len(self.person.inputs)
        return person, person + len(self.body), person + len(self.body) + len(self.loads)

    def figures(
        self, index: Mapping[str, IndexArray], steps: FloatArray, names: Iterable[str]
    ) -> dict[str, FloatArray]:
        """Figures of set-ups, each with errors of its own.

        Parameters
        ----------
        index : mapping of str to ndarray of int, shape (n,)
        steps : ndarray, shape (n, inputs)
            Errors in standard uncertainties.
        names : iterable of str

        Returns
        -------
        dict of str to ndarray, shape (n,)
        """
        rows, occupant = self.built(index, steps)
        with np.errstate(invalid="ignore", divide="ignore"):
            return figures_of(rows, occupant, names)

    def built(
        self, index: Mapping[str, IndexArray], steps: FloatArray
    ) -> tuple[DrawnRows, Occupant]:
        """Set-ups with all that follows from their choices, and who sits in each.

        Parameters
        ----------
        index : mapping of str to ndarray of int, shape (n,)
        steps : ndarray, shape (n, inputs)
            Errors in standard uncertainties.

        Returns
        -------
        tuple of DrawnRows and Occupant
            The occupant's numbers are arrays of shape (n,) as well.
        """
        person, body, loads = self._ends
        rows = DrawnRows(
            self.line, dict(index), {}, offs(self.line, index, self.chair, steps[:, loads:])
        )
        occupant = self._occupant(steps[:, :person], steps[:, body:loads])
        occupant = self._placed(occupant, rows, index, steps[:, person:body])
        with np.errstate(invalid="ignore", divide="ignore"):
            follow(rows, occupant)
        return rows, occupant

    def _occupant(self, person: FloatArray, loads: FloatArray) -> Occupant:
        occupant = self.occupant
        carries = tuple(
            replace(item, mass_kg=cast("float", item.mass_kg * (1.0 + at * each.standard)))
            for item, each, at in zip(occupant.carries, self.loads, loads.T, strict=True)
        )
        if self.person is None or occupant.client is None:
            return replace(occupant, carries=carries)
        drawn = seat(occupant.client, self.person.drawn(person))
        return replace(drawn, carries=carries, weighed=occupant.weighed)

    def _placed(
        self,
        occupant: Occupant,
        rows: DrawnRows,
        index: Mapping[str, IndexArray],
        steps: FloatArray,
    ) -> Occupant:
        """Put the centre of mass where the body model, or the scales, can have it."""
        weighed = self.occupant.weighed
        if weighed is None:
            ahead, up = (each.standard for each in self.body)
            off = cast("Place", (steps[:, 0] * ahead, 0.0, steps[:, 1] * up))
            return replace(occupant, weighed=replace(NOT_WEIGHED, shift_mm=off))
        said = _by_scales(self.line, self.occupant, weighed, index, steps)
        occupant = _heavy(occupant, said[:, 0])
        bare = replace(occupant, weighed=None)
        tried = rows.alike()
        points = follow(tried, bare)
        modelled = centre_of_mass(_body_of(points, bare))
        shift = tuple(said[:, at] - modelled[at] for at in (1, 2, 3))
        return replace(occupant, weighed=replace(weighed, shift_mm=cast("Place", shift)))


def _body_of(points: Iterable[MassPoints], occupant: Occupant) -> list[MassPoints]:
    own = {segment.name for segment in occupant.body.segments}
    return [point for point in points if point.name in own]


def _heavy(occupant: Occupant, mass_kg: FloatArray) -> Occupant:
    """The body as heavy as the scales say."""
    share: Any = mass_kg / occupant.body.mass_kg
    segments = tuple(replace(each, mass_kg=each.mass_kg * share) for each in occupant.body.segments)
    body = replace(occupant.body, mass_kg=cast("float", mass_kg), segments=segments)
    return replace(occupant, body=body)


def _by_scales(
    line: Line,
    occupant: Occupant,
    weighed: CentreWeighed,
    index: Mapping[str, IndexArray],
    steps: FloatArray,
) -> FloatArray:
    """Mass and centre of mass of the occupant as the scales have it, frame axes, shape (n, 4)."""
    rows, points = realise(line, occupant, dict(index))
    found = centre_of_mass(own_points(points, occupant))
    middle = np.stack([np.broadcast_to(np.asarray(each), len(rows)) for each in found], axis=1)
    modelled = middle[0, 1:] - np.array(weighed.shift_mm)
    return np.asarray(middle + steps @ axes(weighed, modelled))


def chain_of(line: Line, occupant: Occupant) -> Chain:
    """Everything that can be off of one client on one line.

    Parameters
    ----------
    line : Line
    occupant : Occupant

    Returns
    -------
    Chain
    """
    person = None
    if occupant.client is not None and occupant.measures is not None:
        kept = occupant.kept.get("inputs")
        if kept is None:
            kept = occupant.kept["inputs"] = person_inputs(occupant.client, occupant.measures)
        person = cast("PersonInputs", kept)
    return Chain(
        line, occupant, person, _body_inputs(occupant), _load_inputs(occupant), chair_inputs(line)
    )


def _body_inputs(occupant: Occupant) -> tuple[Input, ...]:
    if occupant.weighed is None:
        return MODELLED
    again = "Weigh the client again, on finer scales or with the casters higher."
    source = "the scales' resolution (theory: scales)"
    return tuple(
        Input(f"scales.{at}", "weighing on scales", "body", 2.0, "", source, again)
        for at in range(4)
    )


def _load_inputs(occupant: Occupant) -> tuple[Input, ...]:
    return tuple(
        Input(
            f"load.{at}",
            f"carried: {item.name}",
            "load",
            LOAD_SHARE,
            "",
            f"what is carried varies: {NO_SOURCE}",
            f"Weigh what is carried: {item.name}.",
        )
        for at, item in enumerate(occupant.carries)
    )
