"""Sentences on the client, and on how the chair is sized to the body."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.order.justification import Evidence, Fact, Sentence
from chairwright.order.justification_order import DISAGREE
from chairwright.order.justification_sizing import ELBOW, LEG, SEAT, SIZED
from chairwright.order.justification_words import joined, quoted

BODY = {
    "hip_width": "the hips are {} wide",
    "trochanter_width": "the bony points of the hips are {} apart",
    "buttock_thigh_depth": "from the back of the buttock to the back of the {}knee is {}",
    "lower_leg_length": "the {}lower leg with the shoe as worn is {} long",
    "axilla_height": "the armpit is {} above the seat",
    "scapula_height": "the lowest point of the shoulder blade is {} above the seat",
    "shoulder_height": "the top of the shoulder is {} above the seat",
    "elbow_height": "the elbow is {} above the seat",
    "upper_arm_length": "the {}upper arm is {} long",
    "forearm_length": "the {}forearm is {} long",
}
"""What a measure says; its side, where it has sides, and its value go into the braces."""

CHAIR = {
    "seat_width_mm": "a seat {} wide",
    "seat_depth_mm": "a seat {} deep",
    SEAT: "the front of the loaded cushion {} above the floor",
    LEG: "a footplate {} from the cushion",
    "back_height_mm": "a back {} above the loaded cushion",
    "arm_height_mm": "arm pads {} above the loaded cushion",
    ELBOW: "an elbow angle of {} with the hand at the top of the rim",
}
"""What the rules ask; their range goes into the braces."""


def who(evidence: Evidence) -> Iterator[Sentence]:
    """How tall and heavy the client is.

    Parameters
    ----------
    evidence : Evidence

    Yields
    ------
    Sentence
        Of the two, or of the one that is on file.
    """
    stature = evidence.get("client.measures.stature.both")
    mass = evidence.get("client.measures.body_mass.both")
    said = [(f"is {_taken(stature)} tall", stature)] if stature else []
    said += [(f"weighs {_taken(mass)}", mass)] if mass else []
    if said:
        text = joined([words for words, _ in said])
        yield Sentence(f"The client {text}.", tuple(fact for _, fact in said))


def _taken(fact: Fact) -> str:
    return f"{fact.words} (estimated, not measured)" if fact.standing == "estimated" else fact.words


def limbs(evidence: Evidence) -> Iterator[Sentence]:
    """Which limbs are lost."""
    for lost in evidence.under("client.amputations."):
        yield Sentence(f"The {lost.label} is amputated{lost.words}.", (lost,))


def moves(evidence: Evidence) -> Iterator[Sentence]:
    """How the chair is moved."""
    how = evidence.get("client.propulsion")
    if how is not None:
        carer = how.words == "a carer"
        own = f"The client moves the chair with {how.words}"
        yield Sentence("A carer pushes the chair." if carer else f"{own}.", (how,))


def carries(evidence: Evidence) -> Iterator[Sentence]:
    """What the chair carries every day."""
    for load in evidence.under("client.carries."):
        yield Sentence(f"Every day the chair carries {load.words}: {load.label}.", (load,))


def note(evidence: Evidence) -> Iterator[Sentence]:
    """The clinician's own words: of a diagnosis the letter says what they hold, and no more."""
    found = evidence.get("client.note")
    if found is not None:
        yield Sentence(f"The note in the client file reads: {quoted(found.reason)}.", (found,))


def sized(evidence: Evidence) -> Iterator[Sentence]:
    """From measures to each dimension of the chair.

    Parameters
    ----------
    evidence : Evidence

    Yields
    ------
    Sentence
        Only where the measures, the range of the rules and the figure are all on file.
    """
    for name in SIZED:
        pair = evidence.every(f"rules.{name}.must", f"setup.figures.{name}")
        if pair is not None:
            rule, figure = pair
            measures = evidence.every(*rule.behind)
            if measures:
                yield _sized(name, measures, rule, figure)


def _sized(name: str, measures: tuple[Fact, ...], rule: Fact, figure: Fact) -> Sentence:
    told = joined([_measured(fact) for fact in measures])
    rules = "the published rules, which disagree," if rule.note == DISAGREE else "the rules"
    asked = f"so {rules} ask for {CHAIR[name].format(rule.words)}"
    text = f"{told[:1].upper()}{told[1:]}, {asked}; the chair {reached(rule, figure)}"
    return Sentence(f"{text}.", (*measures, rule, figure))


def _measured(fact: Fact) -> str:
    _, _, name, side = fact.key.split(".")
    words, value = BODY[name], _taken(fact)
    if words.count("{}") == 1:
        return words.format(value)
    return words.format("" if side == "both" else f"{side} ", value)


def reached(asked: Fact, figure: Fact) -> str:
    """What the chair has, and how it stands to what is asked: ``has 400 mm``.

    Parameters
    ----------
    asked : Fact
        A target, with its standing.
    figure : Fact
    """
    has = f"has {figure.words}"
    if asked.standing == "holds on nominal values":
        return f"{has}, with less to spare than the error of measuring"
    if asked.standing == "fails":
        return f"{has}, {missing(asked, figure)}"
    return has


def missing(asked: Fact, figure: Fact) -> str:
    """Say that a figure misses a target, or just misses it where both print alike."""
    near = figure.words.split()[0] in asked.words.split()
    return "which just misses that (the numbers are rounded)" if near else "which misses that"
