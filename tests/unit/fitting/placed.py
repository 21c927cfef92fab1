"""Set-ups of the examples, as they are and changed at random, in places of a test's own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np

from chairwright.files.client import read_client
from chairwright.files.places import read_places
from chairwright.files.setup import read_setup
from chairwright.fitting.described import Described, describe
from chairwright.fitting.extras import with_extras
from chairwright.fitting.one_change import one_change
from chairwright.fitting.person import Person, read_person
from chairwright.fitting.settled import space_for
from chairwright.fitting.setup import index_of
from chairwright.line.load import load_line
from chairwright.places.model import Place, Surroundings

EXAMPLES = Path(__file__).parents[3] / "examples"


@cache
def example(name: str) -> tuple[Person, Described]:
    """A demo client with their places, and their set-up judged by them."""
    file = read_setup(EXAMPLES / "setups" / f"{name}.yaml")
    where = read_places(EXAMPLES / "places" / f"{name}.yaml")
    person = read_person(read_client(file.client_path), where)
    line = with_extras(load_line(file.line), file.extras, file.where)
    index = index_of(file, line)
    return person, describe(line, person.occupant, index, person.targets, person.surroundings)


def among(person: Person, *places: Place) -> Person:
    """The same client and helpers among other places."""
    known = person.surroundings or Surroundings(person.client.reference, places)
    return read_person(person.client, replace(known, places=places))


def wandered(person: Person, setup: Described, seed: int, changes: int = 5) -> Described:
    """A set-up some random changes away, judged by what is asked of this person."""
    rng, index = np.random.default_rng(seed), dict(setup.index)
    space = space_for(person.client, setup.line, person.occupant)
    for _ in range(changes):
        steps = one_change(space, index, person.targets[:1]).steps
        step = steps[rng.integers(len(steps))]
        options: Sequence[object] = setup.line.choices[step.choice].options
        index[step.choice] = options.index(step.option)
    return describe(setup.line, person.occupant, index, person.targets)
