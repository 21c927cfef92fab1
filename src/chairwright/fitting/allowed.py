"""Whether a set-up may be built, and if not, why, in plain words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from chairwright.chair.occupant import SIDES, Occupant
from chairwright.fitting.described import one_row
from chairwright.line.choices import CHOICES
from chairwright.line.codes import codes_in
from chairwright.line.model import Line, Rule
from chairwright.line.size_words import size_words
from chairwright.search.space import obeyed

MOST_CODES = 5


def broken_rules(line: Line, index: Mapping[str, int]) -> tuple[Rule, ...]:
    """The rules of the line that a set-up breaks.

    Parameters
    ----------
    line : Line
    index : mapping of str to int
        Option position of every choice.
    """
    rows = one_row(index)
    return tuple(rule for rule in line.rules if not obeyed(line, [rule], rows)[0])


def why_not_allowed(line: Line, occupant: Occupant, index: Mapping[str, int]) -> tuple[str, ...]:
    """Say which rules of the line or of the client's feet and hands a set-up breaks.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    index : mapping of str to int
        Option position of every choice.

    Returns
    -------
    tuple of str
        One clause for each; empty when it may be built.
    """
    rules = (rule_words(line, rule, index) for rule in broken_rules(line, index))
    return (*dict.fromkeys(rules), *body_words(line, occupant, index))


def rule_words(line: Line, rule: Rule, index: Mapping[str, int]) -> str:
    """One broken rule as a clause: what needs what, and why.

    Parameters
    ----------
    line : Line
    rule : Rule
    index : mapping of str to int
        Option position of every choice.

    Returns
    -------
    str
    """
    codes = {name: line.choices[name].options[at].code for name, at in index.items()}
    when = " and ".join(f"{plain(name)} {codes[name]}" for name in rule.when)
    unmet = {name: known for name, known in rule.need.items() if codes[name] not in known}
    needs = " and ".join(f"{plain(name)} {either(line, name, unmet[name])}" for name in unmet)
    return f"{when} needs {needs}: {rule.because}"


def plain(name: str) -> str:
    """A choice's label in the middle of a sentence."""
    return CHOICES[name].label.lower()


def either(line: Line, name: str, codes: frozenset[str]) -> str:
    """Some codes of a choice in words that stay short, joined by "or".

    Parameters
    ----------
    line : Line
    name : str
        The choice.
    codes : frozenset of str

    Returns
    -------
    str
        In the line's order, a whole part by its own code; many sizes as a range, and of other
        codes the first few.
    """
    options = line.choices[name].options
    split = {option.part for option in options if option.code not in codes}
    shown = list(
        dict.fromkeys(
            option.code if option.part in split or not option.part else option.part
            for option in options
            if option.code in codes
        )
    )
    if not shown:
        return "that this line does not have"
    rest = len(shown) - MOST_CODES
    if rest <= 0:
        return " or ".join(shown)
    return _size_range(line, name, codes) or " or ".join(
        [*shown[:MOST_CODES], f"one of {rest} more"]
    )


def _size_range(line: Line, name: str, codes: frozenset[str]) -> str:
    """The range of main sizes that means exactly these codes; empty when there is none."""
    choice, key = line.choices[name], CHOICES[name].size
    sizes = [option.numbers[key] for option in choice.options if option.code in codes and key]
    if not sizes or codes_in(choice, min(sizes), max(sizes)) != codes:
        return ""
    low, high = (size_words(size, line.typed_in) for size in (min(sizes), max(sizes)))
    return f"from {low} to {high}"


def body_words(line: Line, occupant: Occupant, index: Mapping[str, int]) -> Iterator[str]:
    """What the client's feet and hands forbid of a set-up.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    index : mapping of str to int
        Option position of ``foot_supports`` and ``hand_rim``.

    Yields
    ------
    str
        One clause for each.
    """
    chosen = line.choices["foot_supports"].options[index["foot_supports"]]
    for side in SIDES:
        fitted = chosen.numbers[side] > 0
        if side in occupant.feet_that_push and fitted:
            yield f"the {side} foot pushes on the floor and must have no foot support"
        if side in occupant.feet_that_rest and not fitted:
            yield f"the {side} foot rests and must have a foot support"
    rim = line.choices["hand_rim"].options[index["hand_rim"]]
    if occupant.hands_that_push and not rim.numbers["fitted"]:
        yield "a hand pushes and must have a hand rim"
