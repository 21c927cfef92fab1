"""Rules that contradict each other, never fire, or demand what holds anyway."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from chairwright.fitting.line_checks.finding import Finding, mistake, remark
from chairwright.line.model import Choice, Line, Rule
from chairwright.line.reachable import Deduction, blockers

Settled = Mapping[str, frozenset[str]]


def rule_findings(line: Line) -> Iterator[Finding]:
    """Judge each rule that stands in the file against all the others.

    Parameters
    ----------
    line : Line

    Yields
    ------
    Finding
        A mistake for a rule whose condition cannot come about, or whose demand cannot be met;
        a remark for one that demands nothing new.
    """
    for rule in written_rules(line):
        others = replace(line, rules=tuple(each for each in line.rules if each is not rule))
        if not _possible(others, rule.when):
            yield _never_fires(line, rule, blockers(others, rule.when))
        elif not _possible(line, rule.when):
            yield _contradiction(line, rule, blockers(line, rule.when))
        else:
            spare = _demanded_anyway(others, rule)
            if spare is not None:
                yield _superfluous(line, rule, spare)


def written_rules(line: Line) -> list[Rule]:
    """The rules under the key ``rules``; those that follow from sizes are left out."""
    parts = {option.where for choice in line.choices.values() for option in choice.options}
    return [rule for rule in line.rules if rule.where not in parts]


def _possible(line: Line, settled: Settled) -> bool:
    return Deduction(line).example(settled) is not None


def _demanded_anyway(others: Line, rule: Rule) -> list[Rule] | None:
    """The other rules that leave no way to break this one; None when there is a way."""
    spare: list[Rule] = []
    for name, codes in rule.need.items():
        outside = frozenset(others.choices[name].codes) - codes
        broken = {**rule.when, name: rule.when.get(name, outside) & outside}
        if _possible(others, broken):
            return None
        spare += blockers(others, broken)
    return spare


def _never_fires(line: Line, rule: Rule, why: Sequence[Rule]) -> Finding:
    return mistake(
        rule.where,
        f"the rule's condition ({_side(line, rule.when)}) must be possible in at least one set-up",
        f"none: {reasons(why)}",
        "Correct the codes under when, or take the rule out.",
    )


def _contradiction(line: Line, rule: Rule, group: Sequence[Rule]) -> Finding:
    others = [each for each in group if each is not rule]
    return mistake(
        rule.where,
        f"with {_side(line, rule.when)} the rule's demand ({_side(line, rule.need)}) must be "
        "possible",
        f"a contradiction to: {reasons(others) or 'itself'}",
        "Correct one of them; to rule a combination out, demand under need what is left.",
    )


def _superfluous(line: Line, rule: Rule, why: Sequence[Rule]) -> Finding:
    return remark(
        rule.where,
        f"a rule should demand something new of {_side(line, rule.when)}",
        f"what holds anyway: {reasons(why) or 'need names every option there is'}",
        "Correct its codes when something else was meant; otherwise take it out.",
    )


def reasons(rules: Sequence[Rule]) -> str:
    """Why rules rule something out, with the line of each."""
    told = (f"{rule.because} (line {rule.where.rpartition(':')[2]})" for rule in rules)
    return "; ".join(dict.fromkeys(told))


MOST_CODES = 4


def _side(line: Line, codes: Settled) -> str:
    return " and ".join(
        f"{choice.label.lower()} {_listed(_named(choice, codes[name]))}"
        for name in codes
        for choice in [line.choices[name]]
    )


def _named(choice: Choice, codes: frozenset[str]) -> list[str]:
    """Parts of which every option is meant, and the codes of other options."""
    of_part: dict[str, set[str]] = {}
    for option in choice.options:
        of_part.setdefault(option.part, set()).add(option.code)
    meant = (option for option in choice.options if option.code in codes)
    names = (
        option.part if option.part and of_part[option.part] <= codes else option.code
        for option in meant
    )
    return list(dict.fromkeys(names))


def _listed(names: Sequence[str]) -> str:
    rest = len(names) - MOST_CODES
    shown = " or ".join(names[:MOST_CODES])
    return shown if rest <= 0 else f"{shown} or {rest} more"
