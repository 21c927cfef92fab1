"""A set-up file beside its line and its client: known codes, kept rules, a chair that stands."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from chairwright.chair.occupant import SIDES, Occupant
from chairwright.errors import InputError, Problem
from chairwright.files.setup import SetupFile
from chairwright.fitting.allowed import either
from chairwright.fitting.described import one_row, why_not_buildable
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line, Rule
from chairwright.search.space import obeyed
from chairwright.validation import suggest


def index_of(setup: SetupFile, line: Line) -> dict[str, int]:
    """Find the option positions of a set-up file's codes.

    Parameters
    ----------
    setup : SetupFile
    line : Line

    Returns
    -------
    dict of str to int

    Raises
    ------
    InputError
        With ``file:line`` of every code that the line does not have.
    """
    unknown = [
        Problem(
            where=f"{setup.where[name]}: choices.{name}",
            must=f"it must be an option of the line {line.name}",
            got=repr(code),
            remedy=suggest(code, line.choices[name].codes),
        )
        for name, code in setup.choices.items()
        if code not in line.choices[name].codes
    ]
    if unknown:
        raise InputError(*unknown)
    return {name: line.choices[name].codes[code] for name, code in setup.choices.items()}


def check_setup(setup: SetupFile, line: Line, occupant: Occupant, index: Mapping[str, int]) -> None:
    """Refuse a set-up that the line's rules, the client's feet or the floor do not allow.

    Parameters
    ----------
    setup : SetupFile
    line : Line
    occupant : Occupant
    index : mapping of str to int
        From `index_of`.

    Raises
    ------
    InputError
        With ``file:line`` of the choice at fault and the reason in plain words.
    """
    problems = [*_rule_problems(setup, line, index), *_foot_problems(setup, line, occupant, index)]
    if problems:
        raise InputError(*problems)
    reason = why_not_buildable(line, occupant, index)
    if reason:
        raise InputError(
            Problem(
                where=str(setup.path),
                must="the set-up must be a chair that stands on its wheels",
                got=reason,
                remedy="Change one of the choices that the reason is about.",
            )
        )


def _rule_problems(setup: SetupFile, line: Line, index: Mapping[str, int]) -> Iterator[Problem]:
    rows = one_row(index)
    for rule in line.rules:
        if not obeyed(line, [rule], rows)[0]:
            yield _rule_problem(setup, line, rule)


def _rule_problem(setup: SetupFile, line: Line, rule: Rule) -> Problem:
    name = next(name for name, codes in rule.need.items() if setup.choices[name] not in codes)
    first = next(iter(rule.when))
    when = " and ".join(f"{_plain(each)} {setup.choices[each]}" for each in rule.when)
    place = f" (rule at {rule.where})" if rule.where else ""
    codes = either(line, name, rule.need[name]) if rule.need[name] else ""
    return Problem(
        where=f"{setup.where[name]}: choices.{name}",
        must=f"{when} must have a {_plain(name)} that goes with it: {rule.because}{place}",
        got=f"{_plain(name)} {setup.choices[name]}",
        remedy=f"Use {codes}, or change the {_plain(first)}."
        if codes
        else f"Change the {_plain(first)}: nothing of this line goes with it.",
    )


def _foot_problems(
    setup: SetupFile, line: Line, occupant: Occupant, index: Mapping[str, int]
) -> Iterator[Problem]:
    chosen = line.choices["foot_supports"].options[index["foot_supports"]]
    for side in SIDES:
        fitted = chosen.numbers[side] > 0
        pushes, rests = side in occupant.feet_that_push, side in occupant.feet_that_rest
        if (pushes and fitted) or (rests and not fitted):
            need = "pushes and must have no" if pushes else "rests and must have a"
            yield Problem(
                where=f"{setup.where['foot_supports']}: choices.foot_supports",
                must=f"the client's {side} foot {need} foot support",
                got=f"{_plain('foot_supports')} {chosen.code}",
                remedy="Choose the sides that rest: both, left, right or none.",
            )


def _plain(name: str) -> str:
    return CHOICES[name].label.lower()
