"""The example clients' spaces and targets."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from chairwright.chair.occupant import Occupant
from chairwright.files.client import read_client
from chairwright.fitting.person import read_person
from chairwright.fitting.settled import space_for
from chairwright.line.load import load_line
from chairwright.search.best import Best, find_best
from chairwright.search.space import Space
from chairwright.targets.target import Target

CLIENTS = Path("examples/clients")
FITTED = ("avg-001", "tal-002", "foo-003", "hem-004", "amp-005", "bar-006", "chi-007", "car-009")


@cache
def whole_space(name: str) -> tuple[Space, tuple[Target, ...], Occupant]:
    """Space and targets of an example client on the everyday line, and who sits in the chair."""
    client = read_client(CLIENTS / f"{name}.yaml")
    person = read_person(client)
    space = space_for(client, load_line("everyday"), person.occupant)
    return space, tuple(person.targets), person.occupant


@cache
def best_of(name: str) -> Best:
    """The best set-up of a client's whole space."""
    space, targets, _ = whole_space(name)
    best = find_best(space, targets)
    if best is None:
        raise LookupError(name)
    return best
