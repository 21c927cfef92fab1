"""The measures of a client as inputs: which error moves which measure, and by how much.

A measured value has an error of its own. An estimate moves with the values that it was made from,
and has the rest of its standard error as an error of its own. Both sides share an error where one
reading, or one estimate, stands for both.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import cast

import numpy as np

from chairwright.chair.weighed import COVERAGE
from chairwright.mass_points import FloatArray
from chairwright.person.client import Client, Measure
from chairwright.person.estimates import MeasureSet, expectations, whole_mass_kg
from chairwright.person.measures import BODY_MASS, CATALOGUE
from chairwright.tolerance.model import NO_SOURCE, Input
from chairwright.tolerance.traced import Traced

STEP = 1e-3
"""Change of a measure for the slope of an estimate, which is a straight line [mm or kg]."""

LIKE_OTHER = "taken as the "
ALIKE_SHARE = math.sqrt(3.0) / COVERAGE
"""Of the tolerance of a side taken as the other: what is left, as a standard uncertainty, of
twice the other side's once that side's own is taken out."""

TAPE = f"tape on a person, as the client file or the catalogue states it: {NO_SOURCE}"
SCALES = f"scales, clothes and the day, as the client file or the catalogue states it: {NO_SOURCE}"

Key = tuple[str, str]


@dataclass(frozen=True)
class PersonInputs:
    """What can be off of one client's measures.

    Parameters
    ----------
    inputs : tuple of Input
    measures : MeasureSet
        As taken and estimated.
    moves : ndarray, shape (measures, inputs)
        What one standard uncertainty of an input does to a measure, in the measure's unit.
    intact_moves : ndarray, shape (kinds, inputs)
        The same for the body with every limb whole, in the order of ``measures.intact``.
    """

    inputs: tuple[Input, ...]
    measures: MeasureSet
    moves: FloatArray
    intact_moves: FloatArray

    def drawn(self, steps: FloatArray) -> MeasureSet:
        """The measures of many draws at once.

        Parameters
        ----------
        steps : ndarray, shape (n, inputs)
            In standard uncertainties.

        Returns
        -------
        MeasureSet
            Each value an array of shape (n,).
        """
        offs, whole = steps @ self.moves.T, steps @ self.intact_moves.T
        return self._with(
            [each.value + offs[:, at] for at, each in enumerate(self.measures)],
            {n: v + whole[:, at] for at, (n, v) in enumerate(self.measures.intact.items())},
        )

    def traced(self) -> MeasureSet:
        """The measures with the slope of each input, in standard uncertainties."""
        return self._with(
            [Traced(each.value, self.moves[at]) for at, each in enumerate(self.measures)],
            {
                name: Traced(value, self.intact_moves[at])
                for at, (name, value) in enumerate(self.measures.intact.items())
            },
        )

    def _with(
        self, values: Iterable[FloatArray | float], intact: Mapping[str, FloatArray | float]
    ) -> MeasureSet:
        """The same measures with other values; arrays pass for numbers from here on."""
        changed = tuple(
            replace(each, quantity=replace(each.quantity, value=cast("float", value)))
            for each, value in zip(self.measures, values, strict=True)
        )
        return MeasureSet(changed, cast("Mapping[str, float]", intact))


def person_inputs(client: Client, measures: MeasureSet) -> PersonInputs:
    """What can be off of a client's measures.

    Parameters
    ----------
    client : Client
    measures : MeasureSet
        From `chairwright.person.estimates.complete`.

    Returns
    -------
    PersonInputs

    References
    ----------
    Estimates: the conditional mean of a multivariate normal population is a straight line of
    the measured values (Gordon 2014); errors left over are taken as independent of each other.
    """
    found, own = _inputs(measures)
    place = {each.key: at for at, each in enumerate(found)}
    slopes = _slopes(client, measures, own, place)
    moves = np.array([_move(each, own, place, slopes) for each in measures])
    intact = np.array(
        [_whole(name, client, measures, own, place, slopes) for name in measures.intact]
    )
    units = np.array([each.standard for each in found])
    return PersonInputs(tuple(found), measures, moves * units, intact * units)


def _inputs(measures: MeasureSet) -> tuple[list[Input], dict[Key, str]]:
    """The inputs, and the key of the one that each measure has to itself."""
    found: dict[str, Input] = {}
    own: dict[Key, str] = {}
    for each in measures:
        made = _input(each, _key(each, measures))
        found.setdefault(made.key, made)
        own[each.name, each.side] = made.key
    return list(found.values()), own


def _key(measure: Measure, measures: MeasureSet) -> str:
    left, right = (measures.both(measure.name)) if CATALOGUE[measure.name].sided else (None, None)
    if left is None or right is None:
        return measure.name
    same = (left.where, left.value, left.estimated, left.basis) == (
        right.where, right.value, right.estimated, right.basis,
    )  # fmt: skip
    once = same and (left.estimated or bool(left.where))
    return measure.name if once else f"{measure.name}.{measure.side}"


def _input(measure: Measure, key: str) -> Input:
    kind = CATALOGUE[measure.name]
    side = f"{key.rpartition('.')[2]} " if "." in key else ""
    label, how = f"{side}{kind.label.lower()}", kind.how[0].lower() + kind.how[1:].rstrip(".")
    if not measure.estimated:
        source = SCALES if measure.name == BODY_MASS else TAPE
        again = f"Measure again: {label} ({how})."
        return Input(key, label, "measured", measure.tolerance, kind_unit(measure), source, again)
    half = measure.tolerance
    if measure.basis.startswith(LIKE_OTHER):
        half *= ALIKE_SHARE
    again = f"Measure: {label} ({how}); so far it is an estimate."
    return Input(
        key, f"{label}, estimated", "estimated", half, kind_unit(measure), measure.basis, again
    )


def kind_unit(measure: Measure) -> str:
    """Base unit of a measure."""
    return "kg" if CATALOGUE[measure.name].dimension == "mass" else "mm"


def _slopes(
    client: Client, measures: MeasureSet, own: Mapping[Key, str], place: Mapping[str, int]
) -> dict[str, FloatArray]:
    """What one unit of each measured input does to each expectation, shape (inputs,)."""
    base = {name: guess.value for name, guess in expectations(client).items()}
    found = {name: np.zeros(len(place)) for name in base}
    for key in {own[each.name, each.side] for each in measures if not each.estimated}:
        moved = _stepped(client, key)
        for name, guess in expectations(moved).items():
            found[name][place[key]] = (guess.value - base[name]) / STEP
        whole = whole_mass_kg(moved) - whole_mass_kg(client)
        found[BODY_MASS][place[key]] = whole / STEP
    return found


def _stepped(client: Client, key: str) -> Client:
    """The client with one reading a little larger."""
    name, _, side = key.partition(".")
    return replace(
        client,
        measures=tuple(
            replace(each, quantity=replace(each.quantity, value=each.value + STEP))
            if each.name == name and side in ("", each.side)
            else each
            for each in client.measures
        ),
    )


def _move(
    measure: Measure,
    own: Mapping[Key, str],
    place: Mapping[str, int],
    slopes: Mapping[str, FloatArray],
) -> FloatArray:
    """What one unit of each input does to a measure."""
    row = np.zeros(len(place))
    if measure.estimated and measure.basis.startswith(LIKE_OTHER):
        other = "left" if measure.side == "right" else "right"
        row[place[own[measure.name, other]]] = 1.0
    elif measure.estimated:
        row += slopes[measure.name]
    row[place[own[measure.name, measure.side]]] = 1.0
    return row


def _whole(
    name: str,
    client: Client,
    measures: MeasureSet,
    own: Mapping[Key, str],
    place: Mapping[str, int],
    slopes: Mapping[str, FloatArray],
) -> FloatArray:
    """What one unit of each input does to a measure of the whole body."""
    if name == BODY_MASS:
        return slopes[BODY_MASS]
    sides = [each for each in measures if each.name == name]
    taken = [each for each in sides if not each.estimated]
    if taken:
        return np.asarray(sum(_move(each, own, place, slopes) for each in taken) / len(taken))
    row = slopes[name].copy()
    for each in sides[:1]:
        row[place[own[each.name, each.side]]] = 1.0
    return row
