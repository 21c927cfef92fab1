"""A client on a line, opened once and kept, and the set-ups that are looked at on it."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from chairwright.chair.buildable import reason_not
from chairwright.chair.rows import Rows
from chairwright.chair.shape_of import shape_of
from chairwright.errors import InputError, Problem
from chairwright.figures.directions import tip_angles
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.outline import plan_outline
from chairwright.figures.registry import FIGURES
from chairwright.files.client import read_client
from chairwright.files.places import read_places
from chairwright.fitting.allowed import why_not_allowed
from chairwright.fitting.described import (
    Described,
    describe,
    judge,
    one_row,
)
from chairwright.fitting.extras import fitted_extras, with_extras
from chairwright.fitting.person import Person, read_person
from chairwright.fitting.settled import space_for
from chairwright.line.choices import CHOICES
from chairwright.line.load import load_line
from chairwright.line.model import Line
from chairwright.reading import FileText
from chairwright.search.space import Space
from chairwright.validation import suggest
from chairwright_desk.bench.bridge.kept import Kept

Units = Literal["mm", "in"]
Codes = Mapping[str, str]
Index = dict[str, int]

BENCHES, STATES, LINES = 64, 512, 16


@dataclass(frozen=True)
class Bench:
    """One client, as measured and asked for in one version, on one line.

    Parameters
    ----------
    key : str
        Stands for everything that was read; the same content has the same key.
    person : Person
    line : Line
        With the extras that were named.
    space : Space
        The standard options open to the client.
    """

    key: str
    person: Person
    line: Line
    space: Space

    @property
    def units(self) -> Units:
        """Inches when most of the client's lengths were typed in inches."""
        typed = [measure.quantity.typed for measure in self.person.client.measures]
        lengths = [each for each in typed if each.endswith((" in", "mm", "cm", " m"))]
        inches = sum(each.endswith(" in") for each in lengths)
        return "in" if 2 * inches > len(lengths) else "mm"


@dataclass(frozen=True)
class State:
    """One set-up on a bench.

    Parameters
    ----------
    bench : Bench
    index : dict of str to int
    setup : Described or None
        None when there is no such chair.
    against : tuple of str
        Why it may not be built or does not stand; empty when nothing is against it.
    sure : bool
        Whether the spreads are this set-up's own; a sketch is judged with those of the set-up
        before it, which takes a fraction of the time.
    """

    bench: Bench
    index: Index
    setup: Described | None
    against: tuple[str, ...] = field(default=())
    sure: bool = True

    @property
    def codes(self) -> dict[str, str]:
        """The chosen code of every choice."""
        choices = self.bench.line.choices
        return {name: choices[name].options[at].code for name, at in self.index.items()}


_LINES: Kept[Line] = Kept(LINES)
_BENCHES: Kept[Bench] = Kept(BENCHES)
_STATES: Kept[State] = Kept(STATES)
_SKETCHES: Kept[State] = Kept(STATES)


def open_line(line: str | FileText) -> Line:
    """A line, read once.

    Parameters
    ----------
    line : str or FileText
        A shipped line's plain name, or the text of a line file.
    """
    return _LINES.of(line, lambda: load_line(line))


def open_bench(
    client_text: str,
    line: str | FileText,
    places_text: str = "",
    extras: tuple[str, ...] | None = None,
) -> Bench:
    """Read a client, the places and a line, once for each content.

    Parameters
    ----------
    client_text : str
        What a client file holds.
    line : str or FileText
    places_text : str
        What a places file holds; empty when no places are known.
    extras : tuple of str or None
        Codes of the accessories that are fitted; None for those that the client file names.

    Returns
    -------
    Bench

    Raises
    ------
    InputError
        With every problem of what was read, by line.
    """
    key = _key(client_text, line, places_text, extras)
    return _BENCHES.of(key, lambda: _opened(key, client_text, line, places_text, extras))


def _opened(
    key: str,
    client_text: str,
    line: str | FileText,
    places_text: str,
    extras: tuple[str, ...] | None,
) -> Bench:
    client = read_client(FileText("client", client_text))
    places = read_places(FileText("places", places_text)) if places_text else None
    person = read_person(client, places)
    wanted = client.extras if extras is None else extras
    fitted = with_extras(open_line(line), wanted, client.where)
    return Bench(key, person, fitted, space_for(client, fitted, person.occupant))


def _key(
    client_text: str, line: str | FileText, places_text: str, extras: tuple[str, ...] | None
) -> str:
    named = (line.name, line.text) if isinstance(line, FileText) else (line,)
    told = hashlib.sha256()
    for part in (client_text, places_text, *named, *([] if extras is None else ("+", *extras))):
        raw = part.encode("utf-8", "surrogatepass")
        told.update(f"{len(raw)}:".encode() + raw)
    return told.hexdigest()


def extras_of(bench: Bench) -> tuple[tuple[str, str, bool], ...]:
    """The accessories of the line: code, words, whether it is fitted.

    Parameters
    ----------
    bench : Bench
    """
    fitted = {part.code for part in fitted_extras(bench.line)}
    return tuple(
        (part.code, f"{part.code}  {part.name}", part.code in fitted) for part in bench.line.extras
    )


def state_of(bench: Bench, codes: Codes) -> State:
    """One set-up with its figures, kept.

    Parameters
    ----------
    bench : Bench
    codes : mapping of str to str
        Code of every choice.

    Returns
    -------
    State

    Raises
    ------
    InputError
        When a choice is missing or the line does not have one of the codes.
    """
    index = index_of(bench.line, codes)
    key = (bench.key, *index.values())
    return _STATES.of(key, lambda: _described(bench, index))


def index_of(line: Line, codes: Codes) -> Index:
    """Option positions of codes.

    Parameters
    ----------
    line : Line
    codes : mapping of str to str
        Code of every choice.

    Returns
    -------
    dict of str to int

    Raises
    ------
    InputError
        With every choice that is missing or unknown.
    """
    wrong = [
        Problem(
            where=f"choices.{name}",
            must=f"it must be an option of the line {line.name}",
            got=repr(codes.get(name, "")),
            remedy=suggest(codes.get(name, ""), line.choices[name].codes),
        )
        for name in CHOICES
        if codes.get(name) not in line.choices[name].codes
    ]
    if wrong:
        raise InputError(*wrong)
    return {name: line.choices[name].codes[codes[name]] for name in CHOICES}


def sketch_of(bench: Bench, codes: Codes, before: State | None) -> State:
    """One set-up at once, judged with the spreads of the one before it.

    Parameters
    ----------
    bench : Bench
    codes : mapping of str to str
        Code of every choice.
    before : State or None

    Returns
    -------
    State
        The set-up itself when it is known already.

    Raises
    ------
    InputError
        As `state_of`.
    """
    index = index_of(bench.line, codes)
    key = (bench.key, *index.values())
    known = _STATES.known(key)
    if known is not None:
        return known
    spreads = {} if before is None or before.setup is None else before.setup.spreads
    return _SKETCHES.of(key, lambda: _sketched(bench, index, spreads))


def _against(bench: Bench, index: Index) -> tuple[Rows, str, tuple[str, ...]]:
    """The set-up as one row, why it does not stand, and everything that is against it."""
    line, occupant = bench.line, bench.person.occupant
    rules = why_not_allowed(line, occupant, index)
    rows, _ = realise(line, occupant, one_row(index))
    unbuildable = reason_not(rows)
    return rows, unbuildable, ((*rules, unbuildable) if unbuildable else rules)


def _described(bench: Bench, index: Index) -> State:
    _, unbuildable, against = _against(bench, index)
    if unbuildable:
        return State(bench, index, None, against)
    person = bench.person
    setup = describe(bench.line, person.occupant, index, person.targets)
    return State(bench, index, setup, against)


def _sketched(bench: Bench, index: Index, spreads: Mapping[str, float]) -> State:
    rows, unbuildable, against = _against(bench, index)
    if unbuildable:
        return State(bench, index, None, against)
    occupant, targets = bench.person.occupant, bench.person.targets
    names = tuple(dict.fromkeys([*FIGURES, *(target.figure for target in targets)]))
    values = figures_of(rows, occupant, names)
    figures = {name: float(each[0]) for name, each in values.items()}
    directions, angles = tip_angles(rows)
    setup = Described(
        line=bench.line,
        index=dict(index),
        figures=figures,
        spreads=dict(spreads),
        judged=judge(figures, spreads, targets),
        masses=(),
        shape=shape_of(rows, occupant, figures, plan_outline(rows)),
        directions_deg=directions,
        angles_deg=angles,
    )
    return State(bench, index, setup, against, sure=False)
