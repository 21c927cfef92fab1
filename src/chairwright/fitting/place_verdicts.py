"""Each place of a client beside one set-up: every target judged, one word, and short notes."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Literal

from chairwright.chair.rows import Rows
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.families import named_at
from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described, Judged, judge, judge_with, one_row
from chairwright.fitting.person import Person
from chairwright.places.kinds import (
    CrossSlope,
    Kerb,
    Ramp,
    Threshold,
    TransferPlace,
    UnderTop,
)
from chairwright.places.model import Place, Surroundings
from chairwright.targets.from_places import place_targets
from chairwright.targets.target import Target
from chairwright.targets.verdict import SLACK
from chairwright.tolerance.of_setup import tolerance_of

Word = Literal[
    "holds",
    "holds on nominal values",
    "holds, not as preferred",
    "not as preferred",
    "fails",
    "not known",
    "nothing asked",
]


@dataclass(frozen=True)
class PlaceVerdict:
    """One place beside one set-up.

    Parameters
    ----------
    place : Place
    judged : tuple of Judged
        Everything that the place asks, also what another place asks more strictly.
    word : Word
        ``fails`` when a must is missed or not known. ``not as preferred`` where only wishes are
        asked; what is only told weighs like a wish here.
    notes : tuple of str
        What else is worth knowing there, in plain words.
    """

    place: Place
    judged: tuple[Judged, ...]
    word: Word
    notes: tuple[str, ...]


def place_verdicts(person: Person, setup: Described) -> tuple[PlaceVerdict, ...]:
    """Judge every place of a client.

    Parameters
    ----------
    person : Person
        Without surroundings there are no places.
    setup : Described

    Returns
    -------
    tuple of PlaceVerdict
        In the order of the file.
    """
    if person.surroundings is None:
        return ()
    tried = Tried(person, setup)
    return tuple(_verdict(tried, place) for place in person.surroundings.places)


class Tried:
    """One set-up that is tried in places, its figures worked out as they are asked for.

    Parameters
    ----------
    person : Person
    setup : Described
    """

    def __init__(self, person: Person, setup: Described) -> None:
        self.person = person
        self.setup = setup
        self._figures = dict(setup.figures)

    @cached_property
    def rows(self) -> Rows:
        """The set-up with all that follows from its choices, shape (1,)."""
        rows, _ = realise(self.setup.line, self.person.occupant, one_row(self.setup.index))
        return rows

    def targets(self, place: Place) -> tuple[Target, ...]:
        """What a place asks, in an order that its sizes do not change."""
        where = self.person.surroundings or Surroundings(self.person.client.reference, (place,))
        knees = bool(self.person.occupant.knee_above_joint_mm)
        return place_targets(place, self.person.client, where, knees=knees)

    def figures(self, names: Iterable[str]) -> Mapping[str, float]:
        """Figures of the set-up, those that are asked for among them."""
        lacking = [name for name in dict.fromkeys(names) if name not in self._figures]
        if lacking:
            found = figures_of(self.rows, self.person.occupant, lacking)
            self._figures.update((name, float(each[0])) for name, each in found.items())
        return self._figures

    def judged(self, place: Place) -> tuple[Judged, ...]:
        """Everything that a place asks, with the spread of each figure."""
        targets = self.targets(place)
        figures = self.figures(target.figure for target in targets)
        known = {item.target: item for item in self.setup.judged}
        lacking = [target for target in targets if target not in known]
        if lacking:
            tolerance = tolerance_of(
                self.setup.line,
                self.person.occupant,
                self.setup.index,
                (),
                lacking,
                self.person.surroundings,
            )
            known |= zip(lacking, judge_with(figures, tolerance, lacking), strict=True)
        return tuple(known[target] for target in targets)

    def nominal(self, place: Place) -> tuple[Judged, ...]:
        """Everything that a place asks, judged on nominal values, which is quicker."""
        targets = self.targets(place)
        return judge(self.figures(target.figure for target in targets), {}, targets)


def is_missed(judged: Judged) -> bool:
    """Whether a figure lies outside its range or is not known."""
    return not judged.verdict.margin >= -SLACK


def _verdict(tried: Tried, place: Place) -> PlaceVerdict:
    judged = tried.judged(place)
    notes = (*_nominal_notes(judged), *_notes(tried, place))
    return PlaceVerdict(place, judged, word_of(judged), notes)


def _nominal_notes(judged: Sequence[Judged]) -> Iterator[str]:
    """Say which musts hold on nominal values only where the one word cannot say it."""
    unsure = [
        FIGURES[item.target.figure].label
        for item in judged
        if item.target.must and item.verdict.word == "holds on nominal values"
    ]
    if unsure and word_of(judged) != "holds on nominal values":
        yield f"On nominal values only: {'; '.join(dict.fromkeys(unsure))}."


def word_of(judged: Sequence[Judged]) -> Word:
    """One word for everything that a place asks.

    Parameters
    ----------
    judged : sequence of Judged

    Returns
    -------
    Word
    """
    musts = [item for item in judged if item.target.must]
    words = {item.verdict.word for item in judged}
    if not judged:
        return "nothing asked"
    if any(item.verdict.breaks for item in musts):
        return "fails"
    if "fails" in words:
        return "holds, not as preferred" if musts else "not as preferred"
    if "not known" in words:
        return "not known"
    return "holds on nominal values" if "holds on nominal values" in words else "holds"


def _notes(tried: Tried, place: Place) -> Iterator[str]:
    for kind, note in _NOTES.items():
        if isinstance(place, kind):
            yield from note(tried, place)


def _ramp_notes(tried: Tried, ramp: Ramp) -> Iterator[str]:
    """Stand on it with locked brakes; the anti-tip device at its foot."""
    figures, slope = tried.setup.figures, ramp.slope_deg
    aside = min(figures["tip_left_deg"], figures["tip_right_deg"])
    spare = [
        _spare_words("facing up", figures["tip_rear_locked_deg"] - slope),
        _spare_words("facing down", figures["tip_forward_deg"] - slope),
        _spare_words("across it", aside - slope),
    ]
    yield f"Standing with locked brakes, to tipping: {'; '.join(spare)}."
    typed = f"slope_{round(slope, 3):.7g}"
    yield from _grounding_notes(tried, typed, "the foot of the ramp")


def _spare_words(how: str, spare_deg: float) -> str:
    if spare_deg <= 0.0:
        return f"{how} it tips ({-spare_deg:.1f} deg too little)"
    return f"{how} {spare_deg:.1f} deg to spare"


def _cross_notes(tried: Tried, way: CrossSlope) -> Iterator[str]:
    figures = tried.setup.figures
    aside = min(figures["tip_left_deg"], figures["tip_right_deg"])
    spare = _spare_words("across it", aside - way.slope.degrees)
    yield f"Standing with locked brakes, to tipping: {spare}."


def _threshold_notes(tried: Tried, step: Threshold) -> Iterator[str]:
    typed = f"step_{round(step.height_mm, 3):.7g}"
    yield from _grounding_notes(tried, typed, "the threshold")


def _grounding_notes(tried: Tried, typed: str, where: str) -> Iterator[str]:
    name = named_at("device_spare_deg", typed)
    spare = tried.figures([name])[name]
    if tried.setup.shape.anti_tip_wheel is not None and spare < 0.0:
        yield (
            f"At {where} the anti-tip device grounds before the wheels have passed "
            f"({-spare:.1f} deg too low): a carer must turn it up."
        )


def _kerb_notes(tried: Tried, kerb: Kerb) -> Iterator[str]:
    """The pitch that lifts the casters beside the pitch at which the device touches."""
    name = named_at("kerb_pitch_deg", kerb.height_mm)
    needed, touch = tried.figures([name])[name], tried.setup.figures["pitch_to_anti_tip_deg"]
    if tried.setup.shape.anti_tip_wheel is None or math.isnan(needed + touch):
        return
    head = (
        f"Raising the casters by {kerb.height_mm:g} mm pitches the chair by {needed:.1f} deg; the "
        f"anti-tip device touches at {touch:.1f} deg"
    )
    yield (
        f"{head}: a carer must turn it up first." if touch < needed else f"{head}, so it may stay."
    )


def _top_notes(tried: Tried, top: UnderTop) -> Iterator[str]:
    pad = tried.setup.shape.arm_pad
    if pad is None:
        return
    height = max(z for _, z in pad)
    if height > top.clear_height_mm:
        yield (
            f"The arm pads ({height:.0f} mm above the floor) stand "
            f"{height - top.clear_height_mm:.0f} mm higher than the underside: they do not go "
            "under it."
        )


def _transfer_notes(tried: Tried, place: TransferPlace) -> Iterator[str]:
    if place.transfer == "hoist":
        return
    cushion = tried.setup.figures["cushion_to_floor_front_mm"]
    higher = round(place.height_mm) - round(cushion)
    if higher == 0:
        yield f"It is as high as the front of the cushion ({cushion:.0f} mm)."
        return
    how = "higher" if higher > 0 else "lower"
    ways = ("up", "down") if higher > 0 else ("down", "up")
    yield (
        f"It is {abs(higher)} mm {how} than the front of the cushion ({cushion:.0f} mm): {ways[0]} "
        f"on the way there, {ways[1]} on the way back."
    )


_NOTES: dict[type[Place], Callable[[Tried, Any], Iterator[str]]] = {
    Ramp: _ramp_notes,
    CrossSlope: _cross_notes,
    Threshold: _threshold_notes,
    Kerb: _kerb_notes,
    UnderTop: _top_notes,
    TransferPlace: _transfer_notes,
}
"""What is noted at each kind of place."""
