"""Targets and the engineering: the only file of this app that imports `chairwright`."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Literal

from chairwright.errors import InputError
from chairwright.figures.figure import GROUPS
from chairwright.figures.registry import FIGURES, Figure
from chairwright.files.client import read_client
from chairwright.files.places import read_places
from chairwright.fitting.person import read_person
from chairwright.person.client import Client
from chairwright.person.estimates import complete
from chairwright.reading import FileText
from chairwright.targets.build import targets_for
from chairwright.targets.rules import RULE_SETS
from chairwright.targets.target import Target
from chairwright.units import inches_text
from chairwright_desk.measures.bridge.understood import sentence

Units = Literal["mm", "in"]
RULE_SET_WORDS = tuple((key, each.label) for key, each in RULE_SETS.items())


@dataclass(frozen=True)
class Ends:
    """A range as it is shown: both ends with their unit, empty where open."""

    low: str
    high: str

    @property
    def words(self) -> str:
        """The range in words."""
        if self.low and self.high:
            number, _, unit = self.low.rpartition(" ")
            alike = number and self.high.endswith(f" {unit}")
            first = number if alike else self.low
            return self.low if self.low == self.high else f"{first} to {self.high}"
        return f"at least {self.low}" if self.low else f"at most {self.high}"


@dataclass(frozen=True)
class Asked:
    """One target as it counts, and what the rule says where somebody changed it.

    Parameters
    ----------
    figure, label : str
    must : bool
    ends : Ends
    weight : str
    source, reason : str
    place : str
        Which place asks; empty when none does.
    rule : Asked or None
        Without own targets and weights; None where no rule speaks of the figure.
    """

    figure: str
    label: str
    must: bool
    ends: Ends
    weight: str
    source: str
    reason: str
    place: str
    rule: Asked | None = None

    @property
    def kind(self) -> str:
        """``must`` or ``wish``."""
        return "must" if self.must else "wish"


@dataclass(frozen=True)
class AskedGroup:
    """Targets that answer one question."""

    words: str
    asked: tuple[Asked, ...]


@dataclass(frozen=True)
class Listing:
    """Every target of a client, or why there is none."""

    groups: tuple[AskedGroup, ...]
    troubles: tuple[str, ...] = ()


def listing(client_text: str, places_text: str, units: Units) -> Listing:
    """List every target of a client.

    Parameters
    ----------
    client_text : str
    places_text : str
        Empty when no place is known.
    units : {"mm", "in"}
    """
    try:
        client = read_client(FileText("client", client_text))
        places = read_places(FileText("places", places_text)) if places_text else None
        person = read_person(client, places)
        rules = {
            (each.figure, each.must): each
            for each in targets_for(replace(client, own_targets=(), weights={}), person.measures)
        }
    except InputError as error:
        return Listing((), tuple(sentence(each) for each in error.problems))
    shown = [_asked(each, rules, units) for each in person.targets]
    first = {each.figure: at for at, each in reversed(list(enumerate(shown)))}
    shown.sort(key=lambda each: (first[each.figure], not each.must))
    groups = (
        AskedGroup(words, tuple(a for a in shown if FIGURES[a.figure].group == words))
        for words in GROUPS
    )
    return Listing(tuple(group for group in groups if group.asked))


def rule_of(client_text: str, figure: str, kind: str, units: Units) -> Asked | None:
    """What the rules alone say of a figure; None where they say nothing.

    Parameters
    ----------
    client_text : str
    figure : str
    kind : {"must", "wish"}
    units : {"mm", "in"}
    """
    try:
        client = read_client(FileText("client", client_text))
        every = targets_for(_plain(client), complete(client))
    except InputError:
        return None
    must = kind == "must"
    found = (each for each in every if each.figure == figure and each.must == must)
    return next((_asked(each, {}, units) for each in found), None)


def _plain(client: Client) -> Client:
    return replace(client, own_targets=(), weights={})


def _asked(target: Target, rules: dict[tuple[str, bool], Target], units: Units) -> Asked:
    rule = None if target.place else rules.get((target.figure, target.must))
    figure = FIGURES[target.figure]
    return Asked(
        figure=target.figure,
        label=figure.label,
        must=target.must,
        ends=Ends(_end(figure, target.low, units), _end(figure, target.high, units)),
        weight=f"{target.weight:g}",
        source=target.source,
        reason=target.reason,
        place=target.place,
        rule=None if rule is None else _asked(rule, {}, units),
    )


def _end(figure: Figure, value: float | None, units: Units) -> str:
    if value is None:
        return ""
    if figure.unit == "mm" and units == "in":
        return inches_text(value, 16)
    number = f"{value:.{figure.digits}f}"
    return f"{number} {_unit(figure)}".rstrip()


def _unit(figure: Figure) -> str:
    return "" if figure.unit in ("currency", "1") else figure.unit


def figure_words(figure: str) -> str:
    """Label of a figure with its unit; empty for one that there is not."""
    if figure not in FIGURES:
        return ""
    found = FIGURES[figure]
    return f"{found.label} ({_unit(found)})" if _unit(found) else found.label


def figure_label(figure: str) -> str:
    """Label of a figure; its name where there is none such."""
    return FIGURES[figure].label if figure in FIGURES else figure


def figure_choices() -> list[tuple[str, list[tuple[str, str]]]]:
    """Every figure of which something can be asked, by the question it answers."""
    return [
        (words, [(name, figure_words(name)) for name in FIGURES if FIGURES[name].group == words])
        for words in GROUPS
        if any(FIGURES[name].group == words for name in FIGURES)
    ]


def unit_written(figure: str, typed: str) -> tuple[str, str]:
    """Return the text of an end and the kind of unit that a number alone would need.

    Parameters
    ----------
    figure : str
    typed : str

    Returns
    -------
    text : str
        Without a unit that the figure itself implies.
    dimension : str
        ``"length"``, ``"mass"`` or empty.
    """
    unit = _unit(FIGURES[figure])
    dimension = {"mm": "length", "kg": "mass"}.get(unit, "")
    plain = typed.strip()
    if unit and not dimension and unit != "deg" and plain.endswith(unit):
        plain = plain.removesuffix(unit).strip()
    return plain, dimension


def troubles_of(text: str, field_at: Callable[[str], str]) -> dict[str, list[str]]:
    """What cannot be meant of a client's text with its targets, by field.

    Parameters
    ----------
    text : str
    field_at : callable
    """
    try:
        client = read_client(FileText("client", text))
        targets_for(client, complete(client))
    except InputError as error:
        found: dict[str, list[str]] = {}
        for problem in error.problems:
            found.setdefault(field_at(problem.where), []).append(sentence(problem))
        return found
    return {}
