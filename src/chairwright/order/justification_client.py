"""What the client file holds, as facts: body, propulsion, loads, targets, settled choices."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described
from chairwright.fitting.person import Person
from chairwright.line.choices import CHOICES
from chairwright.order.justification import Fact, Standing
from chairwright.order.justification_sizing import measure_key, told_apart
from chairwright.order.justification_words import (
    Units,
    label_of,
    length_of,
    mass_of,
    range_of,
)
from chairwright.person.client import Amputation, CarryPlace, Client, Measure, OwnTarget
from chairwright.person.measures import CATALOGUE
from chairwright.targets.target import Target
from chairwright.targets.verdict import verdict

CLIENT = "client file"
PROPULSION = {
    "hands": "both hands on the rims",
    "feet": "both feet on the floor",
    "hand_and_foot_left": "the left hand and the left foot",
    "hand_and_foot_right": "the right hand and the right foot",
    "carer": "a carer",
}
CARRIED: dict[CarryPlace, str] = {
    "backpack": "behind the back",
    "under_seat": "under the seat",
    "lap": "on the lap",
    "foot_support": "on the foot support",
}
_LIMB = {"foot": "foot", "hand": "hand", "above_elbow": "arm", "below_elbow": "arm",
         "through_elbow": "arm", "shoulder": "arm"}  # fmt: skip
_WHERE = {"foot": "", "hand": "", "hip": " at the hip", "shoulder": " at the shoulder"}


def client_facts(person: Person, setup: Described, units: Units) -> Iterator[Fact]:
    """Facts of a client.

    Parameters
    ----------
    person : Person
    setup : Described
        Says how the clinician's own targets are met.
    units : {"mm", "in"}

    Yields
    ------
    Fact
        Measures with those that are estimated, marked so; then all that the file holds.
    """
    client = person.client
    for measure in person.measures:
        sided = told_apart(person.measures, measure.name)
        if sided or measure.side != "right":
            yield _measure(measure, measure_key(person.measures, measure), units, sided=sided)
    yield Fact(
        "client.propulsion", CLIENT, "propulsion", "propulsion", PROPULSION[client.propulsion]
    )
    for number, lost in enumerate(client.amputations, 1):
        yield _amputation(number, lost)
    yield from _loads(client)
    for own in client.own_targets:
        yield _own(own, setup, units)
    yield from _choices(client, setup)
    if client.note.strip():
        yield Fact("client.note", CLIENT, "note", "note", "as quoted", reason=client.note)


def _measure(measure: Measure, key: str, units: Units, *, sided: bool) -> Fact:
    kind = CATALOGUE[measure.name]
    side = f"{measure.side} " if sided else ""
    mass = kind.dimension == "mass"
    words = mass_of(measure.value) if mass else length_of(measure.value, units)
    standing: Standing = "estimated" if measure.estimated else "measured"
    typed = "" if measure.estimated else f", written as {measure.quantity.typed}"
    return Fact(
        key=key,
        file=f"estimate from the {CLIENT}" if measure.estimated else CLIENT,
        field=f"measures: {measure.name}{f', {measure.side}' if side else ''}",
        label=f"{side}{kind.label.lower()}",
        words=words,
        note=f"{standing}{typed}",
        source=measure.basis,
        standing=standing,
        values=(measure.value,),
    )


def _amputation(number: int, lost: Amputation) -> Fact:
    limb, level = _LIMB.get(lost.level, "leg"), lost.level.replace("_", " ")
    return Fact(
        key=f"client.amputations.{number}",
        file=CLIENT,
        field=f"amputations: {lost.side}, {lost.level}",
        label=f"{lost.side} {limb}",
        words=_WHERE.get(lost.level, f" {level.replace(' ', ' the ')}"),
    )


def _loads(client: Client) -> Iterator[Fact]:
    for number, load in enumerate(client.carries, 1):
        yield Fact(
            key=f"client.carries.{number}",
            file=CLIENT,
            field=f"carries: {load.place}",
            label=load.name,
            words=f"{mass_of(load.mass_kg)} {CARRIED[load.place]}",
        )


def _own(own: OwnTarget, setup: Described, units: Units) -> Fact:
    figure = FIGURES[own.figure]
    asked = Target(own.figure, own.low, own.high, own.must, own.weight, "", own.reason)
    spread = setup.spreads.get(own.figure, 0.0)
    kind = "must" if own.must else "preference"
    return Fact(
        key=f"client.targets.{own.figure}.{kind}",
        file=CLIENT,
        field=f"targets: {own.figure}, {kind}",
        label=label_of(figure),
        words=range_of(figure, own.low, own.high, units),
        source="clinician's decision",
        standing=verdict(asked, setup.figures[own.figure], spread).word,
        reason=own.reason,
    )


def _choices(client: Client, setup: Described) -> Iterator[Fact]:
    for choice, codes in client.fixed_choices.items():
        yield Fact(
            key=f"client.choices.{choice}",
            file=CLIENT,
            field=f"choices: {choice}",
            label=CHOICES[choice].label.lower(),
            words=" or ".join(codes),
        )
    names = {extra.code: extra.name for extra in setup.extras}
    for code in client.extras:
        if code in names:
            yield Fact(f"client.extras.{code}", CLIENT, "extras", names[code], code)
