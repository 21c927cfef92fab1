"""Which options some complete set-up can have, by deduction from the rules alone."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from chairwright.line.model import Line, Rule

Domains = dict[str, int]
"""For each choice the options still open, one bit an option."""


@dataclass(frozen=True)
class _Bits:
    """A rule with its codes as bits."""

    when: Domains
    need: Domains


class Deduction:
    """Decides what the rules allow: by unit deduction and, where that is not enough, by trial.

    Parameters
    ----------
    line : Line
        For its choices and their codes.
    rules : sequence of Rule, optional
        By default the line's own.

    References
    ----------
    Davis M, Logemann G, Loveland D (1962) A machine program for theorem-proving. Commun ACM
    5(7):394-397: the method, here with choices of several options instead of true or false.
    """

    def __init__(self, line: Line, rules: Sequence[Rule] | None = None) -> None:
        self._line = line
        wanted = line.rules if rules is None else rules
        self._rules = [_Bits(self._bits(rule.when), self._bits(rule.need)) for rule in wanted]
        self._all = {name: (1 << len(each.codes)) - 1 for name, each in line.choices.items()}

    def _bits(self, codes: Mapping[str, frozenset[str]]) -> Domains:
        positions = {name: self._line.choices[name].codes for name in codes}
        return {name: sum(1 << positions[name][code] for code in codes[name]) for name in codes}

    def example(self, settled: Mapping[str, frozenset[str]]) -> dict[str, frozenset[str]] | None:
        """Open codes of every choice such that any pick among them obeys the rules.

        Parameters
        ----------
        settled : mapping of str to frozenset of str
            Choices left out are open.

        Returns
        -------
        dict of str to frozenset of str, or None
            Within the settled codes; None when the rules rule them out.
        """
        found = self._search({**self._all, **self._bits(settled)})
        return None if found is None else {name: self._codes(name, found[name]) for name in found}

    def _codes(self, name: str, bits: int) -> frozenset[str]:
        codes = self._line.choices[name].codes
        return frozenset(code for code, position in codes.items() if bits >> position & 1)

    def _search(self, domains: Domains) -> Domains | None:
        if not all(domains.values()) or not self._narrow(domains):
            return None
        name, inside = self._open_condition(domains)
        if not name:
            return domains
        outside = {**domains, name: domains[name] & ~inside}
        return self._search(outside) or self._search({**domains, name: domains[name] & inside})

    def _narrow(self, domains: Domains) -> bool:
        """Apply every rule until nothing changes; False when a choice has no option left."""
        changed = True
        while changed:
            changed = False
            for rule in self._rules:
                for name, bits in _forced(rule, domains).items():
                    if domains[name] & bits != domains[name]:
                        domains[name] &= bits
                        changed = True
                        if not domains[name]:
                            return False
        return True

    def _open_condition(self, domains: Domains) -> tuple[str, int]:
        for rule in self._rules:
            if _held(rule.need, domains) or _excluded(rule.when, domains):
                continue
            for name, bits in rule.when.items():
                if domains[name] & ~bits:
                    return name, bits
        return "", 0


def _held(codes: Domains, domains: Domains) -> bool:
    return all(not domains[name] & ~bits for name, bits in codes.items())


def _excluded(codes: Domains, domains: Domains) -> bool:
    return any(not domains[name] & bits for name, bits in codes.items())


def _forced(rule: _Bits, domains: Domains) -> Domains:
    """What a rule forces: its demands, or the opposite of its one open condition."""
    if _excluded(rule.when, domains):
        return {}
    still_open = [name for name, bits in rule.when.items() if domains[name] & ~bits]
    if not still_open:
        return rule.need
    if len(still_open) == 1 and _excluded(rule.need, domains):
        return {still_open[0]: ~rule.when[still_open[0]]}
    return {}


def blockers(line: Line, settled: Mapping[str, frozenset[str]]) -> list[Rule]:
    """A smallest group of rules that together rule something out.

    Parameters
    ----------
    line : Line
    settled : mapping of str to frozenset of str
        What is not possible.

    Returns
    -------
    list of Rule
        None of them can be left out; empty when it is possible after all.
    """
    rules = list(line.rules)
    if Deduction(line, rules).example(settled) is not None:
        return []
    for rule in line.rules:
        fewer = [each for each in rules if each is not rule]
        if Deduction(line, fewer).example(settled) is None:
            rules = fewer
    return rules
