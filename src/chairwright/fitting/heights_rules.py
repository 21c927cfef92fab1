"""Which cells of a seat-height chart the line's rules allow, and the reason where they do not."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import IndexArray
from chairwright.line.model import Line, Rule
from chairwright.line.reachable import Deduction, blockers
from chairwright.search.space import obeyed

Masks = NDArray[np.bool_]
Index = Mapping[str, IndexArray]
NO_RULE = -1


class ChartRules:
    """The rules of a line as a chart needs them.

    Rules that speak only of what the chart settles are checked for all rows at once. Whether
    the others can still be kept by some choice that the chart leaves open is decided once for
    every way in which they can be met.

    Parameters
    ----------
    line : Line
    chosen : iterable of str
        Every choice that has one option in each row.
    """

    def __init__(self, line: Line, chosen: Iterable[str]) -> None:
        self._line = line
        self._chosen = tuple(chosen)
        self._inner = [rule for rule in line.rules if rule.choices <= set(self._chosen)]
        self._outer = [rule for rule in line.rules if not rule.choices <= set(self._chosen)]
        self._deduction = Deduction(line, self._outer)
        mentioned = {name for rule in self._outer for name in rule.choices}
        self._shared = tuple(name for name in self._chosen if name in mentioned)
        self._known: dict[bytes, int] = {}
        self.reasons: list[str] = []

    def broken(self, index: Index) -> IndexArray:
        """Why the rules forbid each row.

        Parameters
        ----------
        index : mapping of str to ndarray of int, shape (n,)
            Every chosen choice.

        Returns
        -------
        ndarray of int, shape (n,)
            Place of the reason in ``reasons``; -1 for what is allowed.
        """
        count = len(next(iter(index.values())))
        found = np.full(count, NO_RULE, dtype=np.intp)
        for rule in self._inner:
            wrong = (found == NO_RULE) & ~obeyed(self._line, [rule], index)
            if wrong.any():
                found[wrong] = self._number([rule])
        kept = np.nonzero(found == NO_RULE)[0]
        if self._shared and len(kept):
            found[kept] = self._left_open({name: array[kept] for name, array in index.items()})
        return found

    def _left_open(self, index: Index) -> IndexArray:
        """Rows alike in what the outer rules see are judged by the first of them."""
        seen = [self._sees(name)[:, index[name]] for name in self._shared]
        bits = np.packbits(np.concatenate(seen), axis=0)
        kinds, first, which = np.unique(bits, axis=1, return_index=True, return_inverse=True)
        judged = [
            self._judge(kinds[:, at].tobytes(), {name: int(index[name][row]) for name in index})
            for at, row in enumerate(first)
        ]
        return np.array(judged, dtype=np.intp)[which.ravel()]

    def _sees(self, name: str) -> Masks:
        """Which options of a choice each mention of it in the outer rules means."""
        codes = [
            rule_codes[name]
            for rule in self._outer
            for rule_codes in (rule.when, rule.need)
            if name in rule_codes
        ]
        masks = [self._line.rule_matches(each, name) for each in codes]
        return np.array(masks).reshape(len(codes), len(self._line.choices[name].options))

    def _judge(self, kind: bytes, places: Mapping[str, int]) -> int:
        if kind not in self._known:
            options = {name: self._line.choices[name].options[at] for name, at in places.items()}
            settled = {name: frozenset({option.code}) for name, option in options.items()}
            possible = self._deduction.example(settled) is not None
            self._known[kind] = NO_RULE if possible else self._number(blockers(self._line, settled))
        return self._known[kind]

    def _number(self, rules: Sequence[Rule]) -> int:
        words = "; ".join(dict.fromkeys(rule.because for rule in rules))
        if words not in self.reasons:
            self.reasons.append(words)
        return self.reasons.index(words)
