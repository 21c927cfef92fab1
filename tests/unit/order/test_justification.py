"""Every sentence of a letter follows from facts on file: take one out, and the sentence goes."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass, replace

import pytest

from chairwright.fitting.person import Person, read_person
from chairwright.order.accepted import Acceptance
from chairwright.order.justification import Evidence, Fact, Letter, Sentence, written
from chairwright.order.justification_letter import PLAN, evidence_of, heading_of, make_letter
from chairwright.order.order import Heading, Order, make_order
from chairwright.order.payer import assess
from chairwright.order.payer_facts import facts_of
from chairwright.order.payer_lines import feet_fitted, order_lines
from chairwright.order.payer_load import load_scheme
from chairwright.order.payer_result import Assessment
from chairwright.order.price_list import makers_prices
from chairwright.places.model import Surroundings
from tests.unit.order.letters import DEMO, assessed, opened, ordered, surroundings

NUMBER = re.compile(r"\d+(?:[.:/]\d+)*")
PROMISES = ("will pay", "guarantee", "is entitled", "will be covered", "will be reimbursed")


@dataclass(frozen=True)
class Inputs:
    """All that a letter is made from."""

    person: Person
    order: Order
    payer: Assessment | None
    places: Surroundings | None

    def letter(self) -> Letter:
        return make_letter(self.person, self.order, self.payer, self.places)


def inputs(name: str) -> Inputs:
    return Inputs(opened(name).person, ordered(name), assessed(name), surroundings(name))


def evidence(name: str) -> Evidence:
    found = inputs(name)
    return evidence_of(found.person, found.order, found.payer, found.places)


def drafted(name: str, facts: Evidence) -> Letter:
    return written(heading_of(ordered(name)), facts, PLAN)


@pytest.mark.parametrize("name", DEMO)
def test_without_one_of_its_facts_a_sentence_goes(name: str) -> None:
    whole = evidence(name)
    letter = drafted(name, whole)
    assert len(letter.sentences) > 10
    for sentence in letter.sentences:
        for fact in sentence.facts:
            without = drafted(name, whole.without(fact.key))
            assert sentence.text not in [each.text for each in without.sentences], fact.key
            assert fact.key not in without.numbers


@pytest.mark.parametrize("name", DEMO)
def test_without_any_fact_nothing_is_said(name: str) -> None:
    assert drafted(name, Evidence({})).sections == ()


@pytest.mark.parametrize("name", DEMO)
def test_every_number_of_a_sentence_stands_in_its_facts(name: str) -> None:
    for sentence in inputs(name).letter().sentences:
        assert sentence.facts
        held = " ".join(
            f"{fact.label} {fact.words} {fact.reason} {fact.note}" for fact in sentence.facts
        )
        missing = [number for number in NUMBER.findall(sentence.text) if number not in held]
        assert not missing, sentence.text


def test_a_sentence_without_a_fact_cannot_be_made() -> None:
    with pytest.raises(ValueError, match="must follow from a fact"):
        Sentence("The client is happy.", ())


def _without_places(found: Inputs, key: str) -> Inputs:
    number = int(key.split(".")[1]) - 1
    assert found.places is not None
    kept = tuple(each for at, each in enumerate(found.places.places) if at != number)
    return replace(found, places=replace(found.places, places=kept))


def _without_client(found: Inputs, key: str) -> Inputs:
    _, kind, name, *rest = key.split(".")
    client = found.person.client
    if kind == "carries":
        client = replace(client, carries=())
    elif kind == "amputations":
        client = replace(client, amputations=())
    elif kind == "targets":
        client = replace(client, own_targets=())
    elif kind == "choices":
        client = replace(client, fixed_choices={})
    else:
        measures = tuple(
            each for each in found.person.measures
            if each.name != name or rest[0] not in ("both", each.side)
        )  # fmt: skip
        kept = replace(found.person.measures, measures=measures)
        return replace(found, person=replace(found.person, measures=kept))
    return replace(found, person=replace(found.person, client=client))


def _without_note(found: Inputs, key: str) -> Inputs:
    return replace(
        found, person=replace(found.person, client=replace(found.person.client, note=""))
    )


def _without_figure(found: Inputs, key: str) -> Inputs:
    figures = {**found.order.setup.figures, key.removeprefix("setup.figures."): math.nan}
    setup = replace(found.order.setup, figures=figures)
    return replace(found, order=replace(found.order, setup=setup))


def _without_rule(found: Inputs, key: str) -> Inputs:
    name, must = key.split(".")[1], key.endswith(".must")
    kept = tuple(
        each for each in found.order.setup.judged
        if (each.target.figure, each.target.must) != (name, must)
    )  # fmt: skip
    setup = replace(found.order.setup, judged=kept)
    return replace(found, order=replace(found.order, setup=setup))


def _without_limits(found: Inputs, key: str) -> Inputs:
    return replace(found, order=replace(found.order, load=replace(found.order.load, limits=())))


def _without_payer(found: Inputs, key: str) -> Inputs:
    return replace(found, payer=None)


TAKEN_OUT: dict[str, Callable[[Inputs, str], Inputs]] = {
    "client.note": _without_note,
    "client.carries": _without_client,
    "client.amputations": _without_client,
    "client.targets": _without_client,
    "client.choices": _without_client,
    "client.measures": _without_client,
    "setup.figures": _without_figure,
    "rules.": _without_rule,
    "line.rated_load": _without_limits,
    "places.": _without_places,
    "payer.": _without_payer,
}


@pytest.mark.parametrize("name", DEMO)
def test_without_its_fact_in_the_files_a_sentence_goes(name: str) -> None:
    whole = inputs(name)
    tried = 0
    for sentence in whole.letter().sentences:
        for fact in sentence.facts:
            take = next((each for key, each in TAKEN_OUT.items() if fact.key.startswith(key)), None)
            if take is not None:
                texts = [each.text for each in take(whole, fact.key).letter().sentences]
                assert sentence.text not in texts, fact.key
                tried += 1
    assert tried > 30


@pytest.mark.parametrize("name", DEMO)
def test_nothing_is_promised(name: str) -> None:
    for sentence in inputs(name).letter().sentences:
        assert not any(words in sentence.text.lower() for words in PROMISES)


def test_facts_are_numbered_as_they_are_first_used() -> None:
    letter = inputs("avg-001").letter()
    assert [letter.numbers[fact.key] for fact in letter.facts] == list(
        range(1, len(letter.facts) + 1)
    )
    assert letter.sentences[0].facts[0] == letter.facts[0]


def test_a_fact_says_its_file_and_field() -> None:
    facts = {fact.key: fact for fact in inputs("avg-001").letter().facts}
    hips = facts["client.measures.hip_width.both"]
    assert (hips.file, hips.field) == ("client file", "measures: hip_width")
    assert (hips.words, hips.note) == ("381 mm", "measured, written as 15 in")
    width = facts["rules.seat_width_mm.must"]
    assert "WHO WSTP (restated by a secondary source)" in width.source


def test_a_diagnosis_is_told_only_in_the_words_of_the_note() -> None:
    whole = inputs("hem-004")
    assert "after a stroke" in " ".join(each.text for each in whole.letter().sentences)
    silent = _without_note(whole, "client.note").letter()
    assert "stroke" not in " ".join(each.text for each in silent.sentences)


def test_each_leg_goes_with_what_it_sizes() -> None:
    """The right foot pushes (425 mm), the left one rests on its support (430 mm)."""
    texts = [each.text for each in inputs("hem-004").letter().sentences]
    seat = next(text for text in texts if "the front of the loaded cushion" in text)
    plate = next(text for text in texts if "a footplate" in text)
    assert "right lower leg with the shoe as worn is 425 mm" in seat
    assert "left lower leg with the shoe as worn is 430 mm" in plate


def test_what_nobody_measured_is_called_an_estimate() -> None:
    client = opened("avg-001").person.client
    kept = tuple(each for each in client.measures if each.name != "elbow_height")
    person = read_person(replace(client, measures=kept))
    letter = make_letter(person, ordered("avg-001"))
    (text,) = [each.text for each in letter.sentences if "elbow is" in each.text]
    assert "(estimated, not measured)" in text
    fact = next(each for each in letter.facts if "elbow_height" in each.key)
    assert fact.file == "estimate from the client file"


def low_arms(*said: Acceptance) -> Order:
    """The pads of 250 mm come to 238 mm above the cushion; 245 to 270 mm are asked."""
    from chairwright.fitting.described import describe

    one = opened("avg-001")
    index = {**one.setup.index, "arm_support": one.line.choices["arm_support"].codes["AW-250"]}
    chair = describe(one.line, one.person.occupant, index, one.person.targets)
    return make_order(Heading("low"), one.person, chair, makers_prices(one.line), said)


def test_an_accepted_must_is_told_with_its_reason_and_without_a_name() -> None:
    said = Acceptance("arm_height_mm", "Rowan Amadi", "the pads go under the desk")
    letter = make_letter(opened("avg-001").person, low_arms(said))
    (text,) = [each.text for each in letter.sentences if "accepted" in each.text]
    assert "must be 245 to 270 mm and the chair has 238 mm" in text
    assert "because “the pads go under the desk”" in text
    assert not letter.status
    assert "Amadi" not in repr(letter)


def test_a_refused_order_is_not_to_be_sent() -> None:
    letter = make_letter(opened("avg-001").person, low_arms())
    assert letter.status.startswith("Not to be sent")
    assert any("nobody has accepted this" in each.text for each in letter.sentences)


def test_a_door_that_is_too_narrow_is_told() -> None:
    """610 mm are left, and the chair is 616 mm wide."""
    texts = [each.text for each in inputs("avg-001").letter().sentences]
    (bathroom,) = [text for text in texts if text.startswith("Bathroom door")]
    (office,) = [text for text in texts if text.startswith("Office door")]
    assert "which is wider than that" in bathroom
    assert "which is wider" not in office


def test_inches_are_added_where_they_are_wanted() -> None:
    one = opened("avg-001")
    letter = make_letter(one.person, ordered("avg-001"), units="in")
    assert "The hips are 381 mm (15 in) wide" in " ".join(each.text for each in letter.sentences)


def test_evidence_gives_all_or_nothing() -> None:
    fact = Fact("a", "file", "field", "label", "words")
    assert Evidence({"a": fact}).every("a", "b") is None
    assert Evidence({"a": fact}).every("a") == (fact,)


def test_what_was_told_of_the_hours_stands_where_the_payer_asks_for_them() -> None:
    """The demo scheme asks for an hour a day before any class; the chair's own tests do not."""
    one = opened("avg-001")
    scheme = load_scheme("demo")
    told = {"lives_in_care": "no", "hours_a_day": "8"}
    facts = facts_of(scheme, one.setup, one.person.client, one.person.measures, told)
    payer = assess(scheme, facts, order_lines(scheme, one.setup), feet_fitted(one.setup))
    letter = make_letter(one.person, ordered("avg-001"), payer)
    text = " ".join(each.text for part in letter.sections for each in part.sentences)
    assert "The test of the client for every class is met, by" in text
    assert "time in the chair: 8.0 h a day (asked: at least 1 h a day)" in text
