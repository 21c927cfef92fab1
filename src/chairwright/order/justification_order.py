"""What the set-up and its order hold, as facts: figures, targets of the rules, parts, load."""

from __future__ import annotations

import math
from collections.abc import Iterator

from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described, Judged
from chairwright.fitting.person import Person
from chairwright.line.choices import CHOICES, NONE
from chairwright.order.justification import Fact
from chairwright.order.justification_sizing import started_from
from chairwright.order.justification_words import (
    Units,
    label_of,
    mass_of,
    range_of,
    value_of,
)
from chairwright.order.order import Order
from chairwright.order.parts_marks import Mark

SETUP = "set-up"
RULES = "targets of the rules"
ORDER = "order"
CONFLICT = "sources conflict"
"""Words of a target's reason when no value satisfies all of its sources."""
DISAGREE = "the sources disagree"


def order_facts(person: Person, order: Order, units: Units) -> Iterator[Fact]:
    """Facts of an order.

    Parameters
    ----------
    person : Person
    order : Order
        Of the person.
    units : {"mm", "in"}

    Yields
    ------
    Fact
        Figures, choices and targets of the set-up; what the chair bears; what is not
        standard; musts that are missed.
    """
    setup = order.setup
    yield from _figures(setup, units)
    for item in setup.judged:
        if not item.target.source.startswith("clinician's decision"):
            yield _rule(item, started_from(person, item.target.figure), units)
    for name, option in setup.options.items():
        if option.code != NONE:
            label, where = CHOICES[name].label.lower(), f"choices: {name}"
            words = f"{option.code} ({option.name})"
            yield Fact(f"setup.choices.{name}", f"{SETUP} file", where, label, words)
    for extra in setup.extras:
        yield Fact(f"setup.extras.{extra.code}", f"{SETUP} file", "extras", extra.name, extra.code)
    yield from _load(order)
    for mark in order.marks:
        yield _mark(mark)
    yield from _unmet(order, units)


def _figures(setup: Described, units: Units) -> Iterator[Fact]:
    for name, value in setup.figures.items():
        figure = FIGURES[name]
        if math.isnan(value):
            continue
        spread = setup.spreads.get(name, 0.0)
        shown = f"{spread:.{figure.digits}f}"
        yield Fact(
            key=f"setup.figures.{name}",
            file=f"{SETUP}, figures",
            field=name,
            label=label_of(figure),
            words=value_of(figure, value, units),
            note=f"± {shown}, two standard uncertainties" if float(shown) > 0.0 else "",
            source=figure.source,
            values=(value, spread),
        )


def _rule(item: Judged, behind: tuple[str, ...], units: Units) -> Fact:
    target = item.target
    figure, kind = FIGURES[target.figure], "must" if target.must else "preference"
    return Fact(
        key=f"rules.{target.figure}.{kind}",
        file=RULES,
        field=f"{target.figure}, {kind}",
        label=label_of(figure),
        words=range_of(figure, target.low, target.high, units),
        note=DISAGREE if CONFLICT in target.reason else "",
        source=target.source,
        standing=item.verdict.word,
        reason=target.reason,
        behind=behind,
    )


def _load(order: Order) -> Iterator[Fact]:
    load = order.load
    if math.isfinite(load.rated_kg):
        codes = ", ".join(dict.fromkeys(each.code for each in load.least))
        yield Fact(
            key="line.rated_load",
            file=f"line file, version {order.setup.line.version}",
            field=f"load_limit_kg: {codes}",
            label="least load limit of the parts",
            words=f"{load.rated_kg:g} kg",
            source="the maker's rated load",
        )
    yield Fact(
        key="order.load",
        file=ORDER,
        field="load: occupant with everything carried",
        label="client with everything carried",
        words=mass_of(load.load_kg),
        standing="holds" if load.bears else "fails",
    )


def _mark(mark: Mark) -> Fact:
    return Fact(
        key=f"order.marks.{mark.choice}",
        file=ORDER,
        field=f"{mark.kind}: {mark.choice}",
        label=f"{mark.label.lower()} {mark.code}, {mark.words}",
        words=mark.kind,
        reason="; ".join(mark.reasons),
    )


def _unmet(order: Order, units: Units) -> Iterator[Fact]:
    for each in order.unmet:
        figure = each.figure
        name, accepted = figure.name, each.accepted
        yield Fact(
            key=f"order.missed.{name}",
            file=ORDER,
            field=f"musts that are missed: {name}",
            label=label_of(figure),
            words=range_of(figure, *each.asked, units),
            source=each.judged.target.source,
            standing="fails",
        )
        if accepted is not None:
            yield Fact(
                key=f"order.accepted.{name}",
                file=ORDER,
                field=f"accepted: {name}, by name, revision {accepted.revision}",
                label=label_of(figure),
                words="accepted",
                reason=accepted.reason_told,
            )
