"""Sentences on what the clinician asks, what holds the client safely, and what is chosen."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.order.justification import Evidence, Fact, Sentence
from chairwright.order.justification_body import missing, reached
from chairwright.order.justification_words import quoted


def own_targets(evidence: Evidence) -> Iterator[Sentence]:
    """What the clinician asks of the chair, with the reason.

    Parameters
    ----------
    evidence : Evidence

    Yields
    ------
    Sentence
        Without what the chair has, where that is not on file.
    """
    for asked in evidence.under("client.targets."):
        name, _, kind = asked.key.removeprefix("client.targets.").rpartition(".")
        verb = "must be" if kind == "must" else "is preferred to be"
        reason = f", because {quoted(asked.reason)}" if asked.reason.strip() else ""
        text = f"The {asked.label} {verb} {asked.words}{reason}"
        figure = evidence.get(f"setup.figures.{name}")
        if figure is None:
            yield Sentence(f"{text}.", (asked,))
        else:
            yield Sentence(f"{text}; the chair {reached(asked, figure)}.", (asked, figure))


def load(evidence: Evidence) -> Iterator[Sentence]:
    """What the chair must bear, and what it is rated for."""
    found = evidence.every("order.load", "line.rated_load")
    if found is not None:
        weight, rated = found
        over = "but the weakest of its parts is rated for only"
        words = over if weight.standing == "fails" else "and the weakest of its parts is rated for"
        text = f"With everything carried the chair must bear {weight.words}, {words} {rated.words}"
        yield Sentence(f"{text}.", found)


def steady(evidence: Evidence) -> Iterator[Sentence]:
    """How the chair stands, unless the clinician asks for a figure of their own."""
    name = "tip_rear_locked_deg"
    own = evidence.under(f"client.targets.{name}.")
    found = evidence.every(f"rules.{name}.preference", f"setup.figures.{name}")
    if found is not None and not own:
        asked, figure = found
        tail = ""
        if asked.standing == "holds on nominal values":
            tail = ", with less to spare than the error of the reckoning"
        elif asked.standing == "fails":
            tail = f", {missing(asked, figure)}"
        text = f"{asked.words[:1].upper()}{asked.words[1:]} is preferred for the {figure.label}"
        yield Sentence(f"{text}; the chair has {figure.words}{tail}.", found)


def anti_tip(evidence: Evidence) -> Iterator[Sentence]:
    """Whether an anti-tip device is fitted, and when it touches."""
    name = "pitch_to_anti_tip_deg"
    found = evidence.every("setup.choices.anti_tip", f"setup.figures.{name}", f"rules.{name}.must")
    if found is not None:
        device, figure, asked = found
        late = ", which is too late" if asked.standing == "fails" else ""
        yield Sentence(
            f"An anti-tip device is ordered, {device.words}; it touches the floor once the chair "
            f"has pitched back by {figure.words}{late}, and {asked.words} is asked.",
            found,
        )


def settled(evidence: Evidence) -> Iterator[Sentence]:
    """What the clinician has settled, and what is ordered."""
    for asked in evidence.under("client.choices."):
        name = asked.key.removeprefix("client.choices.")
        chosen = evidence.get(f"setup.choices.{name}")
        if chosen is not None:
            yield Sentence(
                f"The clinician has settled the {asked.label} on {asked.words}; ordered is "
                f"{chosen.words}.",
                (asked, chosen),
            )


def extras(evidence: Evidence) -> Iterator[Sentence]:
    """Which accessories the clinician asks for."""
    for asked in evidence.under("client.extras."):
        fitted = evidence.get(f"setup.extras.{asked.words}")
        if fitted is not None:
            text = f"The clinician asks for the accessory {asked.words}, {asked.label}"
            yield Sentence(f"{text}; it is ordered.", (asked, fitted))


def marks(evidence: Evidence) -> Iterator[Sentence]:
    """What is made to order or on request, with the reason."""
    for mark in evidence.under("order.marks."):
        text = f"{mark.label[:1].upper()}{mark.label[1:]}, is {mark.words}"
        yield Sentence(f"{text}{f': {mark.reason}' if mark.reason else ''}.", (mark,))


def missed(evidence: Evidence) -> Iterator[Sentence]:
    """Musts that the chair misses, and why that is accepted.

    Parameters
    ----------
    evidence : Evidence

    Yields
    ------
    Sentence
        By whom it is accepted stands on the order, never in the letter.
    """
    for must in evidence.under("order.missed."):
        name = must.key.removeprefix("order.missed.")
        figure, accepted = evidence.get(f"setup.figures.{name}"), evidence.get(_accepted(name))
        has = f"the chair has {figure.words}" if figure else "the chair misses it"
        text = f"The {must.label} must be {must.words} and {has}"
        facts: tuple[Fact, ...] = tuple(fact for fact in (must, figure, accepted) if fact)
        if accepted is None:
            yield Sentence(f"{text}; nobody has accepted this on the order.", facts)
        else:
            yield Sentence(f"{text}; it is accepted, because {quoted(accepted.reason)}.", facts)


def _accepted(name: str) -> str:
    return f"order.accepted.{name}"
