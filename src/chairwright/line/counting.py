"""How many set-ups a line's rules allow, exactly, without building any of them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from chairwright.line.model import Line, Rule

Bits = int
"""Option positions of one choice, one bit an option."""
Domains = dict[str, Bits]
"""The options still open, by choice."""
Clash = tuple[tuple[str, Bits], ...]
"""Options that must not all come together: at least one named choice must be outside its bits."""


def count_allowed(line: Line, allowed: Mapping[str, Iterable[int]] | None = None) -> int:
    """Count the set-ups that the rules allow.

    Parameters
    ----------
    line : Line
    allowed : mapping of str to iterable of int, optional
        Option positions that are open, by choice; a choice left out is open altogether.

    Returns
    -------
    int
        Exact, however large.

    References
    ----------
    Bayardo RJ, Pehoushek JD (2000) Counting models using connected components. AAAI-00, 157-162
    (from memory, unverified): branch, simplify, multiply what does not hang together. Here with
    choices of several options: those that no rule tells apart are followed once and multiplied.
    """
    given = allowed or {}
    domains = {
        name: _bits(given[name]) if name in given else (1 << len(choice.options)) - 1
        for name, choice in line.choices.items()
    }
    return _Counter().count(
        domains, [clash for rule in line.rules for clash in _clashes(line, rule)]
    )


def _bits(positions: Iterable[int]) -> Bits:
    return sum(1 << int(at) for at in set(positions))


def _clashes(line: Line, rule: Rule) -> Iterator[Clash]:
    """A rule as what must not come together: its condition with the opposite of one demand."""
    when = {name: _coded(line, name, codes) for name, codes in rule.when.items()}
    for name, codes in rule.need.items():
        outside = ~_coded(line, name, codes)
        yield _clash({**when, name: when.get(name, -1) & outside})


def _coded(line: Line, name: str, codes: frozenset[str]) -> Bits:
    return _bits(at for code, at in line.choices[name].codes.items() if code in codes)


def _clash(parts: Mapping[str, Bits]) -> Clash:
    return tuple(sorted(parts.items()))


class _Counter:
    """Counts by branching; remembers what it has counted."""

    def __init__(self) -> None:
        self._known: dict[tuple[Clash, frozenset[Clash]], int] = {}

    def count(self, domains: Domains, clashes: Iterable[Clash]) -> int:
        left = _simplified(domains, frozenset(clashes))
        if left is None:
            return 0
        domains, open_clashes = left
        total = 1
        for group in _hanging_together(open_clashes):
            inside = {name: domains.pop(name) for name in sorted({n for c in group for n, _ in c})}
            total *= self._group(inside, group)
        for bits in domains.values():
            total *= bits.bit_count()
        return total

    def _group(self, domains: Domains, clashes: frozenset[Clash]) -> int:
        key = _clash(domains), clashes
        if key not in self._known:
            self._known[key] = self._branched(domains, clashes)
        return self._known[key]

    def _branched(self, domains: Domains, clashes: frozenset[Clash]) -> int:
        name = _most_used(clashes)
        rest = {each: bits for each, bits in domains.items() if each != name}
        return sum(
            alike.bit_count() * self.count(dict(rest), _after(clashes, name, alike))
            for alike in _told_apart(domains[name], name, clashes)
        )


def _simplified(
    domains: Domains, clashes: frozenset[Clash]
) -> tuple[Domains, frozenset[Clash]] | None:
    """Drop what cannot clash or is certain; rule out what clashes by itself; None when empty."""
    domains = dict(domains)
    while True:
        if not all(domains.values()):
            return None
        short = [_shortened(clash, domains) for clash in clashes]
        clashes = frozenset(clash for clash in short if clash is not None)
        if () in clashes:
            return None
        alone = [clash[0] for clash in clashes if len(clash) == 1]
        if not alone:
            return domains, clashes
        for name, bits in alone:
            domains[name] &= ~bits


def _shortened(clash: Clash, domains: Domains) -> Clash | None:
    """Keep only the choices of a clash that are still in doubt; None when it cannot come."""
    kept = []
    for name, bits in clash:
        inside = bits & domains[name]
        if not inside:
            return None
        if inside != domains[name]:
            kept.append((name, inside))
    return tuple(kept)


def _hanging_together(clashes: frozenset[Clash]) -> list[frozenset[Clash]]:
    groups: list[tuple[set[str], list[Clash]]] = []
    for clash in clashes:
        names = {name for name, _ in clash}
        joined, members = set(names), [clash]
        apart = []
        for group in groups:
            if group[0] & names:
                joined |= group[0]
                members += group[1]
            else:
                apart.append(group)
        groups = [*apart, (joined, members)]
    return [frozenset(members) for _, members in groups]


def _most_used(clashes: frozenset[Clash]) -> str:
    uses: dict[str, int] = {}
    for clash in clashes:
        for name, _ in clash:
            uses[name] = uses.get(name, 0) + 1
    return max(sorted(uses), key=uses.__getitem__)


def _told_apart(domain: Bits, name: str, clashes: frozenset[Clash]) -> list[Bits]:
    """Split a choice's open options into those that every clash treats alike."""
    parts = [domain]
    for clash in clashes:
        bits = dict(clash).get(name)
        if bits is not None:
            parts = [half for part in parts for half in (part & bits, part & ~bits) if half]
    return parts


def _after(clashes: frozenset[Clash], name: str, alike: Bits) -> Iterator[Clash]:
    """The clashes that are left when a choice takes one of some options that are alike."""
    for clash in clashes:
        bits = dict(clash).get(name)
        if bits is None:
            yield clash
        elif bits & alike:
            yield tuple(each for each in clash if each[0] != name)
