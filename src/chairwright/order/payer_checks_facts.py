"""Facts of a scheme file: units, words, and where a fact is read from."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from chairwright.errors import InputError, Problem
from chairwright.figures.registry import FIGURES
from chairwright.line.choices import CHOICES
from chairwright.order.payer_model import MEASURED, FactKind
from chairwright.order.payer_schema import WrittenFact, WrittenScheme
from chairwright.order.payer_values import BASE_UNITS, UNITS, declared
from chairwright.reading import YamlSource
from chairwright.validation import place, shown, suggest
from chairwright.yaml_events import KeyPath

KNOWN_KINDS: dict[str, FactKind] = {
    "bare chair mass": "mass",
    "rated load": "mass",
    "client mass": "mass",
    "extras": "words",
}
"""Kind of what the program works out; yes or no where nothing stands here."""
READ = {
    "size": MEASURED,
    "figure": MEASURED,
    "part": ("word",),
    "positions": ("number", "yes or no"),
}


def mistakes_of_facts(written: WrittenScheme, source: YamlSource) -> Iterator[Problem]:
    """What is wrong with the facts of a scheme file.

    Parameters
    ----------
    written : WrittenScheme
    source : YamlSource

    Yields
    ------
    Problem
    """
    read: dict[tuple[str, str], str] = {}
    for name, fact in written.facts.items():
        at: KeyPath = ("facts", name)
        yield from _units(at, fact, source)
        yield from _words(at, fact, source)
        yield from _origin(at, fact, source)
        yield from _default(at, name, fact, source)
        if fact.from_ is not None and fact.from_.part is not None:
            earlier = read.setdefault(("part", fact.from_.part), name)
            if earlier != name:
                must = "one fact at most may be read from the parts of a choice"
                got = f"{earlier} and {name} from {fact.from_.part}"
                remedy = "Join the two into one list of words."
                yield Problem(place(source, (*at, "from", "part")), must, got, remedy)


def _units(at: KeyPath, fact: WrittenFact, source: YamlSource) -> Iterator[Problem]:
    if fact.kind not in MEASURED:
        if fact.unit is not None:
            must = f"a fact of kind {fact.kind} has no unit"
            yield Problem(place(source, (*at, "unit")), must, shown(fact.unit), "Take it out.")
        return
    if fact.unit is None:
        must = f"a fact of kind {fact.kind} must have a unit"
        yield Problem(place(source, at), must, "nothing", "Add unit, such as in, lb or kg.")
    elif fact.kind in UNITS and fact.unit not in UNITS[fact.kind]:
        known = tuple(UNITS[fact.kind])
        must = f"the unit of a {fact.kind} must be one of {', '.join(known)}"
        remedy = suggest(fact.unit, known)
        yield Problem(place(source, (*at, "unit")), must, shown(fact.unit), remedy)


def _words(at: KeyPath, fact: WrittenFact, source: YamlSource) -> Iterator[Problem]:
    needs = fact.kind in ("word", "words")
    if needs and fact.words is None:
        must = f"a fact of kind {fact.kind} must have words"
        yield Problem(place(source, at), must, "nothing", "List each word with what it means.")
    if not needs and fact.words is not None:
        must = f"a fact of kind {fact.kind} has no words"
        yield Problem(place(source, (*at, "words")), must, "a list", "Take it out.")


def _origin(at: KeyPath, fact: WrittenFact, source: YamlSource) -> Iterator[Problem]:
    if fact.from_ is None:
        return
    given = fact.from_.model_dump(exclude_none=True)
    here = (*at, "from")
    if len(given) != 1:
        must = "from must have exactly one key"
        got = ", ".join(given) or "none"
        yield Problem(place(source, here), must, got, "Keep one of them.")
        return
    ((key, name),) = given.items()
    kinds = READ.get(key, (KNOWN_KINDS.get(name, "yes or no"),))
    if fact.kind not in kinds:
        must = f"what is read from {key} {name} must be of kind {' or '.join(kinds)}"
        yield Problem(
            place(source, (*at, "kind")), must, fact.kind, "Correct the kind or the from."
        )
    if (name == "extras") != (at[-1] == "extras"):
        must = "the fact that is read from the extras must be called extras, and no other"
        yield Problem(place(source, at), must, str(at[-1]), "Rename it, or correct the from.")
    yield from _exists((*here, key), key, name, fact, source)


def _exists(
    at: KeyPath, key: str, name: str, fact: WrittenFact, source: YamlSource
) -> Iterator[Problem]:
    if key == "figure":
        if name not in FIGURES:
            must = "from must name a figure that there is"
            yield Problem(place(source, at), must, shown(name), suggest(name, FIGURES))
        elif fact.kind in BASE_UNITS and FIGURES[name].unit != BASE_UNITS[fact.kind]:
            must = f"a {fact.kind} must be read from a figure in {BASE_UNITS[fact.kind]}"
            got = f"{name} in {FIGURES[name].unit or 'no unit'}"
            yield Problem(place(source, at), must, got, "Name another figure.")
    elif key in ("size", "part", "positions"):
        known = [each for each, kind in CHOICES.items() if key != "size" or kind.size]
        if name not in known:
            must = "from must name a choice" + (" that has a size" if key == "size" else "")
            yield Problem(place(source, at), must, shown(name), suggest(name, known))


def _default(at: KeyPath, name: str, fact: WrittenFact, source: YamlSource) -> Iterator[Problem]:
    if fact.unless_told is None:
        return
    where = place(source, (*at, "unless_told"))
    typed = fact.unless_told
    if isinstance(typed, Decimal) and fact.kind not in MEASURED:
        yield Problem(where, "it must be one of the fact's words", str(typed), "Write the word.")
        return
    try:
        unit, words = fact.unit or "", fact.words or {}
        declared(str(typed), fact.kind, unit, fact.digits, tuple(words), where)
    except InputError as error:
        yield from error.problems
