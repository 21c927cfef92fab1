"""Several set-ups beside each other: which choices differ, which figures, which verdicts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from chairwright.figures.registry import FIGURES, Figure
from chairwright.fitting.described import Described
from chairwright.fitting.ledger import Row, ledger
from chairwright.fitting.moved import moved_figures
from chairwright.fitting.person import Person
from chairwright.line.choices import CHOICES
from chairwright.line.model import Option
from chairwright.person.client import Client

FEWEST, MOST = 2, 4
"""How many set-ups are laid beside each other."""


@dataclass(frozen=True)
class Side:
    """One of the set-ups.

    Parameters
    ----------
    name : str
        What it is called.
    person : Person
    setup : Described
    """

    name: str
    person: Person
    setup: Described


@dataclass(frozen=True)
class Comparison:
    """Set-ups beside each other; the first is what the others are compared with.

    Parameters
    ----------
    sides : tuple of Side
        Two to four.
    """

    sides: tuple[Side, ...]

    @property
    def first(self) -> Described:
        """What the others are compared with."""
        return self.sides[0].setup

    @property
    def setups(self) -> tuple[Described, ...]:
        """Every set-up, the first one included."""
        return tuple(side.setup for side in self.sides)

    @property
    def same_client(self) -> bool:
        """Whether all are for one client, measured alike and asked for alike."""
        first = self.sides[0].person.client
        return all(same_person(first, side.person.client) for side in self.sides[1:])

    @property
    def same_line(self) -> bool:
        """Whether all are of one line in one version."""
        lines = {(side.setup.line.name, side.setup.line.version) for side in self.sides}
        return len(lines) == 1

    @property
    def choices(self) -> tuple[str, ...]:
        """Choices in which not all are alike, in the order of the choices."""
        return tuple(
            name
            for name in CHOICES
            if any(not _alike(self.first.options[name], s.options[name]) for s in self.setups[1:])
        )

    @property
    def figures(self) -> tuple[Figure, ...]:
        """Figures that do not all print alike, in the order of the registry."""
        return moved_figures(self.first, self.setups[1:])

    @property
    def ledgers(self) -> tuple[dict[str, Row], ...]:
        """For each set-up, every figure with what is asked of it."""
        return tuple({row.figure.name: row for row in ledger(setup)} for setup in self.setups)

    @property
    def judged(self) -> tuple[Figure, ...]:
        """Figures that do not all get the same word, in the order of the registry."""
        words = [{name: row.word for name, row in rows.items()} for rows in self.ledgers]
        return tuple(
            figure
            for name, figure in FIGURES.items()
            if any(each[name] != words[0][name] for each in words[1:])
        )


def compare(sides: Sequence[Side]) -> Comparison:
    """Lay set-ups beside each other.

    Parameters
    ----------
    sides : sequence of Side
        Two to four.

    Returns
    -------
    Comparison

    Raises
    ------
    ValueError
        When there are fewer or more.
    """
    if not FEWEST <= len(sides) <= MOST:
        message = f"a comparison needs {FEWEST} to {MOST} set-ups; got {len(sides)}"
        raise ValueError(message)
    return Comparison(tuple(sides))


def same_person(one: Client, other: Client) -> bool:
    """Whether two clients are the same for every figure and target, wherever they are written.

    Parameters
    ----------
    one, other : Client
    """
    return _asked(one) == _asked(other)


def _asked(client: Client) -> tuple[object, ...]:
    measures = {(each.name, each.side, each.value, each.tolerance) for each in client.measures}
    targets = {
        (each.figure, each.low, each.high, each.must, each.weight) for each in client.own_targets
    }
    return (
        client.reference,
        client.sex,
        measures,
        client.propulsion,
        client.amputations,
        client.carries,
        targets,
        client.rule_set,
        client.leg_mass_factor,
    )


def _alike(one: Option, other: Option) -> bool:
    return (one.code, one.name, str(one.numbers)) == (other.code, other.name, str(other.numbers))
