"""Every option of every choice beside the set-up as it stands: chosen, allowed or refused, and why.

One option is tried at a time, everything else kept; all of them at once in arrays.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.buildable import buildable, reason_not
from chairwright.chair.rows import IndexArray
from chairwright.figures.evaluate import realise
from chairwright.figures.registry import FIGURES
from chairwright.fitting.allowed import body_words, rule_words
from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import Choice, Line, Option, Rule
from chairwright.papers.words import measured_words
from chairwright.search.space import obeyed
from chairwright_desk.bench.bridge.kept import Kept
from chairwright_desk.bench.bridge.lifted import DEVICE, lifts
from chairwright_desk.bench.bridge.opened import Bench, Index, State
from chairwright_desk.bench.bridge.things import SLIDERS, THINGS

Pair = tuple[str, int]
Standing = Literal["chosen", "allowed", "refused"]
FEWEST = 3
"""Fewer options need no slider."""

BODY = ("foot_supports", "hand_rim")
"""Choices that the client's feet and hands have a say in."""


@dataclass(frozen=True)
class OptionShown:
    """One option.

    Parameters
    ----------
    code, words : str
    standing : {"chosen", "allowed", "refused"}
    reason : str
        Why it is refused, by the words of the rule; empty otherwise.
    note : str
        Made to order or on request with what that takes; settled otherwise in the client file.
    """

    code: str
    words: str
    standing: Standing
    reason: str
    note: str

    @property
    def label(self) -> str:
        """Code and words in one."""
        return self.words if self.code == NONE else f"{self.code}  {self.words}"


@dataclass(frozen=True)
class ChoiceShown:
    """One choice with its options.

    Parameters
    ----------
    name, label : str
    chosen : OptionShown
    standard, more : tuple of OptionShown
        In the line's order; ``more`` are the sizes made to order and what is on request.
    slider : tuple of OptionShown
        The options that a slider goes along, in rising order: the standard ones that are allowed,
        and the chosen one; empty where none is shown.
    at : int
        Place of the chosen option on the slider.
    """

    name: str
    label: str
    chosen: OptionShown
    standard: tuple[OptionShown, ...]
    more: tuple[OptionShown, ...]
    slider: tuple[OptionShown, ...]
    at: int

    @property
    def last(self) -> int:
        """The slider's last place."""
        return len(self.slider) - 1

    @property
    def options(self) -> tuple[OptionShown, ...]:
        """Every option."""
        return self.standard + self.more

    @property
    def single(self) -> bool:
        """Whether there is nothing to choose."""
        return len(self.options) == 1


@dataclass(frozen=True)
class ThingShown:
    """A thing of the chair with its choices."""

    key: str
    label: str
    choices: tuple[ChoiceShown, ...]


@dataclass(frozen=True)
class Table:
    """What stands for and against every other option of a set-up.

    Parameters
    ----------
    refused : dict of (str, int) to str
        By choice and option position: why it may not take the place of the present one. What the
        set-up breaks already is no reason against another option.
    lifted : dict of (str, int) to int
        Options with which the anti-tip device must go into another hole of its tube, with the
        position of that hole.
    """

    refused: dict[Pair, str]
    lifted: dict[Pair, int]


_TABLES: Kept[Table] = Kept(512)
_WORDS: Kept[str] = Kept(4096)


def choices_shown(state: State) -> tuple[ThingShown, ...]:
    """Every choice of a set-up, by the thing that it belongs to.

    Parameters
    ----------
    state : State

    Returns
    -------
    tuple of ThingShown
    """
    table = table_of(state)
    return tuple(
        ThingShown(key, label, tuple(choice_shown(state, name, table) for name in names))
        for key, (label, names) in THINGS.items()
    )


def choice_shown(state: State, name: str, table: Table) -> ChoiceShown:
    """One choice with its options.

    Parameters
    ----------
    state : State
    name : str
    table : Table
        From `table_of`.

    Returns
    -------
    ChoiceShown
    """
    choice, chosen = state.bench.line.choices[name], state.index[name]
    shown = tuple(_shown(state, choice, at, table) for at in range(len(choice.options)))
    standard = tuple(
        each for each, option in zip(shown, choice.options, strict=True)
        if option.kind == "standard"
    )  # fmt: skip
    more = tuple(
        each for each, option in zip(shown, choice.options, strict=True)
        if option.kind != "standard"
    )  # fmt: skip
    slider = _slider(choice, shown, chosen)
    return ChoiceShown(
        name=name,
        label=CHOICES[name].label,
        chosen=shown[chosen],
        standard=standard,
        more=more,
        slider=slider,
        at=slider.index(shown[chosen]) if slider else 0,
    )


def _shown(state: State, choice: Choice, at: int, table: Table) -> OptionShown:
    option, pair = choice.options[at], (choice.name, at)
    note, reason = _note(state.bench, choice, at), table.refused.get(pair, "")
    standing: Standing = "refused" if reason else "allowed"
    if at == state.index[choice.name]:
        standing = "chosen"
    if pair in table.lifted:
        device = state.bench.line.choices[DEVICE].options[table.lifted[pair]].code
        note = "; ".join(filter(None, (note, f"the anti-tip device goes to {device} with it")))
    return OptionShown(option.code, option.name, standing, reason, note)


def _slider(choice: Choice, shown: Sequence[OptionShown], chosen: int) -> tuple[OptionShown, ...]:
    key = SLIDERS.get(choice.name)
    if key is None or choice.options[chosen].code == NONE:
        return ()
    places = [
        at
        for at, option in enumerate(choice.options)
        if key in option.numbers
        and option.code != NONE
        and (at == chosen or (option.kind == "standard" and shown[at].standing == "allowed"))
    ]
    if len(places) < FEWEST:
        return ()
    places.sort(key=lambda at: choice.options[at].numbers[key])
    return tuple(shown[at] for at in places)


def _note(bench: Bench, choice: Choice, at: int) -> str:
    option, settled = choice.options[at], bench.person.client.fixed_choices.get(choice.name)
    notes = []
    if option.kind == "made to order":
        notes.append(_to_order(option, bench.line))
    elif option.kind == "on request":
        notes.append("on request")
    if settled and at not in bench.space.allowed[choice.name]:
        notes.append(f"the client's choices settle {' or '.join(settled)}")
    return "; ".join(notes)


def _to_order(option: Option, line: Line) -> str:
    more = measured_words(FIGURES["price"], option.numbers["surcharge"], line)
    return f"made to order, + {more}, {option.numbers['extra_days']:g} days longer"


def table_of(state: State) -> Table:
    """What stands for and against every other option, kept.

    Parameters
    ----------
    state : State

    Returns
    -------
    Table
    """
    key = (state.bench.key, *state.index.values())
    return _TABLES.of(key, lambda: _table(state))


def _table(state: State) -> Table:
    line, index = state.bench.line, state.index
    pairs = [
        (name, at)
        for name, choice in line.choices.items()
        for at in range(len(choice.options))
        if at != index[name]
    ]
    rows = _rows(pairs, index)
    against = _broken(line, index, rows)
    fine = np.ones(len(pairs), dtype=bool)
    for _, mask in against:
        fine &= ~mask
    refused = dict(_by_rules(state, pairs, against, np.nonzero(~fine)[0]))
    for pair, words in _body(state):
        refused[pair] = "; ".join(filter(None, (refused.get(pair, ""), words)))
    falls = dict(_falls(state, pairs, rows, np.nonzero(fine)[0]))
    lifted = lifts(state, [pair for pair, words in falls.items() if words.startswith(GROUNDED)])
    refused |= {pair: words for pair, words in falls.items() if pair not in lifted}
    return Table(refused, lifted)


GROUNDED = "the anti-tip wheel"
"""How the reason begins when it is the anti-tip device that would stand in the floor."""


def _by_rules(
    state: State,
    pairs: Sequence[Pair],
    against: Sequence[tuple[Rule, NDArray[np.bool_]]],
    broken: IndexArray,
) -> Iterator[tuple[Pair, str]]:
    for row in broken:
        changed = {**state.index, pairs[row][0]: pairs[row][1]}
        words = [_words_of(state.bench, rule, changed) for rule, mask in against if mask[row]]
        yield pairs[row], "; ".join(dict.fromkeys(words))


def _words_of(bench: Bench, rule: Rule, index: Index) -> str:
    """A broken rule in words, kept: they hang on the options of its own choices alone."""
    whole = (rule.because, *rule.when.items(), *rule.need.items())
    chosen = (index[name] for name in (*rule.when, *rule.need))
    return _WORDS.of((bench.key, whole, *chosen), lambda: rule_words(bench.line, rule, index))


def _rows(pairs: Sequence[Pair], index: Index) -> dict[str, IndexArray]:
    rows = {name: np.full(len(pairs), at, dtype=np.intp) for name, at in index.items()}
    for row, (name, at) in enumerate(pairs):
        rows[name][row] = at
    return rows


def _broken(
    line: Line, index: Index, rows: dict[str, IndexArray]
) -> list[tuple[Rule, NDArray[np.bool_]]]:
    """The rules that the set-up keeps, each with the rows that break it."""
    one = {name: np.array([at], dtype=np.intp) for name, at in index.items()}
    kept = [rule for rule in line.rules if obeyed(line, [rule], one)[0]]
    return [(rule, ~obeyed(line, [rule], rows)) for rule in kept]


def _body(state: State) -> Iterator[tuple[Pair, str]]:
    line, occupant = state.bench.line, state.bench.person.occupant
    present = set(body_words(line, occupant, state.index))
    for name in BODY:
        for at in range(len(line.choices[name].options)):
            words = body_words(line, occupant, {**state.index, name: at})
            new = [each for each in words if each not in present]
            if new and at != state.index[name]:
                yield (name, at), "; ".join(new)


def _falls(
    state: State, pairs: Sequence[Pair], rows: dict[str, IndexArray], kept: IndexArray
) -> Iterator[tuple[Pair, str]]:
    """Options with which the chair would not stand on its wheels."""
    if state.setup is None or not len(kept):
        return
    line, occupant = state.bench.line, state.bench.person.occupant
    made, _ = realise(line, occupant, {name: array[kept] for name, array in rows.items()})
    for place in np.nonzero(~buildable(made))[0]:
        yield pairs[kept[place]], reason_not(made, int(place))
