"""Letters and handovers of the demo clients, for the tests."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from chairwright.cli.opened import Opened, open_setup
from chairwright.files.places import read_places
from chairwright.order.accepted import Acceptance
from chairwright.order.order import Heading, Order, make_order
from chairwright.order.payer import assess
from chairwright.order.payer_facts import facts_of
from chairwright.order.payer_lines import feet_fitted, order_lines
from chairwright.order.payer_load import load_scheme
from chairwright.order.payer_result import Assessment
from chairwright.order.price_list import makers_prices
from chairwright.places.model import Surroundings
from tests.laws.example_sweeps import SETUPS

DEMO = tuple(sorted(path.stem for path in Path(SETUPS).glob("*.yaml")))
TOLD = {
    "activity_limited": "yes",
    "cane_or_walker_enough": "no",
    "home_access": "yes",
    "used_at_home": "yes",
    "unwilling": "no",
    "hours_a_day": "8",
}


@cache
def opened(name: str) -> Opened:
    return open_setup(SETUPS / f"{name}.yaml")


@cache
def ordered(name: str, *said: Acceptance) -> Order:
    one = opened(name)
    return make_order(Heading(name), one.person, one.setup, makers_prices(one.line), said)


@cache
def surroundings(name: str) -> Surroundings:
    return read_places(SETUPS.parent / "places" / f"{name}.yaml")


@cache
def assessed(name: str, scheme: str = "us-hcpcs") -> Assessment:
    one, found = opened(name), load_scheme(scheme)
    told = {key: value for key, value in TOLD.items() if key in found.asked}
    facts = facts_of(found, one.setup, one.person.client, one.person.measures, told)
    return assess(found, facts, order_lines(found, one.setup), feet_fitted(one.setup))
