"""Facts of one set-up and its client, in a scheme's units, with what somebody declares."""

from __future__ import annotations

import math
from collections.abc import Mapping

from chairwright.errors import InputError, Problem
from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described
from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import Option
from chairwright.order.payer_model import Fact, Scheme
from chairwright.order.payer_values import Known, Value, declared, in_unit, value_words
from chairwright.person.client import Client
from chairwright.person.estimates import MeasureSet
from chairwright.person.measures import BODY_MASS
from chairwright.validation import suggest

WHERE = "--fact"
EXTRAS = "extras"
OTHER = "other"
"""Word for a part that a scheme has no code for."""
ANY = "*"
FRONT_RIGGING = ("hanger", "foot_plate")


def told_facts(scheme: Scheme, told: Mapping[str, str]) -> dict[str, Known]:
    """Facts that somebody declares, and those that are taken when nobody does.

    Parameters
    ----------
    scheme : Scheme
    told : mapping of str to str
        Fact to its value as typed.

    Returns
    -------
    dict of str to Known

    Raises
    ------
    InputError
        For a name or a value that the scheme does not know; every one of them.
    """
    found = {
        name: Known(_typed(fact, fact.unless_told, name), "unless told", "unless told otherwise")
        for name, fact in scheme.facts.items()
        if fact.unless_told
    }
    return found | _declared(scheme, told)


def _declared(scheme: Scheme, told: Mapping[str, str]) -> dict[str, Known]:
    found, problems, asked = {}, [], scheme.asked
    for name, typed in told.items():
        if name not in asked:
            must = f"a fact must be one that the scheme {scheme.name} asks about"
            problems.append(Problem(WHERE, must, repr(name), suggest(name, asked)))
            continue
        try:
            found[name] = Known(_typed(asked[name], typed, name), "declared", "declared")
        except InputError as error:
            problems += error.problems
    if problems:
        raise InputError(*problems)
    return found


def _typed(fact: Fact, typed: str, name: str) -> Value:
    words = tuple(fact.words or ())
    return declared(typed, fact.kind, fact.unit, fact.digits, words, f"{WHERE} {name}")


def facts_of(
    scheme: Scheme,
    setup: Described,
    client: Client,
    measures: MeasureSet,
    told: Mapping[str, str] | None = None,
) -> dict[str, Known]:
    """Every fact that is known of a set-up and its client.

    Parameters
    ----------
    scheme : Scheme
    setup : Described
    client : Client
    measures : MeasureSet
        An estimated body mass does not count as known.
    told : mapping of str to str, optional
        What somebody declares, as typed; it goes before what the files say.

    Returns
    -------
    dict of str to Known

    Raises
    ------
    InputError
        For a declared name or value that the scheme does not know.
    """
    said = _declared(scheme, told or {})
    read = _Reader(scheme, setup, client, measures)
    found = told_facts(scheme, {}) | read.every()
    for name, known in said.items():
        earlier = found.get(name)
        found[name] = known if earlier is None else _beside(scheme.asked[name], known, earlier)
    return found


def _beside(fact: Fact, known: Known, earlier: Known) -> Known:
    """What is declared beside what the files say: lists are joined, the rest is told apart."""
    if isinstance(known.value, tuple) and isinstance(earlier.value, tuple):
        return Known(tuple(dict.fromkeys((*earlier.value, *known.value))), "declared", "declared")
    if earlier.how not in ("set-up", "client") or earlier.value == known.value:
        return known
    words = value_words(fact, earlier.value)
    return Known(known.value, "declared", f"declared; the {earlier.how} says {words}")


class _Reader:
    """Reads each fact from where the scheme says that it is."""

    def __init__(
        self, scheme: Scheme, setup: Described, client: Client, measures: MeasureSet
    ) -> None:
        self.scheme = scheme
        self.setup = setup
        self.client = client
        self.measures = measures

    def every(self) -> dict[str, Known]:
        found = {}
        for name, fact in self.scheme.facts.items():
            if fact.origin is not None:
                known = getattr(self, f"_{fact.origin.kind}")(fact, fact.origin.name)
                if known is not None:
                    found[name] = known
        return found

    def _figure(self, fact: Fact, name: str) -> Known | None:
        return self._measured(fact, self.setup.figures[name], FIGURES[name].label.lower())

    def _size(self, fact: Fact, choice: str) -> Known | None:
        option = self.setup.options[choice]
        size = option.numbers.get(CHOICES[choice].size, math.nan)
        return self._measured(fact, size, f"{_plain(choice)} {option.code}")

    @staticmethod
    def _measured(fact: Fact, value: float, words: str) -> Known | None:
        if not math.isfinite(value):
            return None
        return Known(in_unit(value, fact.kind, fact.unit, fact.digits), "set-up", words)

    def _part(self, fact: Fact, choice: str) -> Known | None:
        option = self.setup.options[choice]
        if option.code == NONE:
            return Known(NONE, "set-up", f"no {_plain(choice)}") if NONE in _words(fact) else None
        word = part_word(self.scheme, self.setup, choice, option)
        if word is None:
            return None
        return Known(word, "set-up", f"{_plain(choice)} {option.part or option.code}")

    def _positions(self, fact: Fact, choice: str) -> Known:
        part = self.setup.options[choice].part
        options = self.setup.line.choices[choice].options
        count = sum(1 for each in options if each.part == part and each.kind != "made to order")
        words = f"{_plain(choice)} {part}".rstrip()
        if fact.kind == "yes or no":
            return Known(count > 1, "set-up", f"{count} positions of {words}")
        return Known(in_unit(count, fact.kind, fact.unit, fact.digits), "set-up", words)

    def _known(self, fact: Fact, name: str) -> Known | None:
        if name == EXTRAS:
            return self._extras()
        if name == "client mass":
            return self._client_mass(fact)
        if name == "bare chair mass":
            words = "without front rigging, cushion and extras"
            return self._measured(fact, bare_chair_mass_kg(self.setup), words)
        if name == "rated load":
            return self._measured(fact, rated_load_kg(self.setup), "least load limit of its parts")
        if name == "folds":
            folds = not math.isnan(self.setup.figures["folded_width_mm"])
            return Known(folds, "set-up", "cross-brace that folds" if folds else "rigid")
        return self._moved(name)

    def _moved(self, name: str) -> Known | None:
        if name == "carer pushes" and self.client.propulsion != "carer":
            return None
        truth = {
            "client pushes": self.client.propulsion != "carer",
            "client's feet push": bool(self.client.feet_that_push),
            "carer pushes": self.client.propulsion == "carer",
        }[name]
        return Known(truth, "client", "client file")

    def _client_mass(self, fact: Fact) -> Known | None:
        mass = self.measures.find(BODY_MASS)
        if mass is None or mass.estimated:
            return None
        value = in_unit(mass.value, fact.kind, fact.unit, fact.digits)
        return Known(value, "client", f"client file: {mass.quantity.typed}")

    def _extras(self) -> Known:
        line = self.setup.line.name
        words = [word_of(self.scheme, line, EXTRAS, each.code) for each in self.setup.extras]
        known = tuple(dict.fromkeys(word for word in words if word is not None))
        return Known(known, "set-up", "", whole=None not in words)


def _words(fact: Fact) -> dict[str, str]:
    return fact.words or {}


def _plain(choice: str) -> str:
    return CHOICES[choice].label.lower()


def part_word(scheme: Scheme, setup: Described, choice: str, option: Option) -> str | None:
    """What a scheme calls a part of the line; None when it does not say.

    Parameters
    ----------
    scheme : Scheme
    setup : Described
    choice : str
    option : Option
    """
    return word_of(scheme, setup.line.name, choice, option.part or option.code)


def word_of(scheme: Scheme, line: str, choice: str, part: str) -> str | None:
    """Look a part up among the scheme's parts; ``*`` stands for every line or part.

    Parameters
    ----------
    scheme : Scheme
    line : str
    choice : str
        A choice, or ``extras``.
    part : str
        Order code.

    Returns
    -------
    str or None
        The word, the line's own first; None when the scheme does not say.
    """
    for name in (line, ANY):
        codes = scheme.parts.get(name, {}).get(choice, {})
        word = codes.get(part, codes.get(ANY))
        if word is not None:
            return word
    return None


def bare_chair_mass_kg(setup: Described) -> float:
    """Mass of the chair without front rigging, cushion and extras [kg].

    Parameters
    ----------
    setup : Described

    Returns
    -------
    float
    """
    options = setup.options
    sides = (
        options["foot_supports"].numbers["left"] + options["foot_supports"].numbers["right"]
    ) / 2
    rigging = sides * sum(options[name].numbers["mass_kg"] for name in FRONT_RIGGING)
    extras = sum(extra.mass_kg for extra in setup.extras)
    whole = setup.figures["chair_mass_kg"]
    return whole - rigging - options["cushion"].numbers["mass_kg"] - extras


def rated_load_kg(setup: Described) -> float:
    """Least load limit of every part of the chair [kg]; infinite when the line gives none.

    Parameters
    ----------
    setup : Described

    Returns
    -------
    float
    """
    limits = [option.numbers["load_limit_kg"] for option in setup.options.values()]
    return min([*limits, *(part.load_limit_kg for part in setup.line.fixed_parts)])
