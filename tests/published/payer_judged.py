"""The HCPCS scheme judged on declared facts alone, for the tests of its printed criteria."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from chairwright.order.payer import assess
from chairwright.order.payer_facts import told_facts
from chairwright.order.payer_load import load_scheme
from chairwright.order.payer_model import ClassTest, Disputed, FactTest, Test
from chairwright.order.payer_result import Assessment, Judged

SCHEME = load_scheme("us-hcpcs")
ADULT = {"seat_width": "18", "seat_depth": "16"}
"""A seat between all limits: an adult's, and no special size."""
STANDARD = {**ADULT, "chair_weight": "36.1", "seat_height": "19", "capacity": "250"}
AT_HOME = {
    "activity_limited": "yes",
    "cane_or_walker_enough": "no",
    "home_access": "yes",
    "used_at_home": "yes",
    "unwilling": "no",
    "able_to_push": "yes",
    "carer_available": "no",
}
DESCRIPTORS, ARTICLE, POLICY = "descriptors", "article", "policy"
DIMENSION, OPTIONS = "dimension_article", "options"


def judged(**told: str) -> Assessment:
    return assess(SCHEME, told_facts(SCHEME, told))


def base_codes(found: Assessment) -> list[str]:
    return [each.entry.code for each in found.groups[0].possible]


def codes(found: Assessment, line: str) -> list[str]:
    mine = [each for each in found.accessories if each.entry.line == line]
    assert all(each.truth is not None for each in mine if each.entry.code != "K0056")
    return [each.entry.code for each in mine if each.truth]


def of(found: Assessment, code: str) -> Judged:
    every = (*found.groups[0].classes, *found.accessories)
    return next(each for each in every if each.entry.code == code)


def facts_asked(test: Test | None) -> Iterator[FactTest]:
    if isinstance(test, FactTest):
        yield test
    elif isinstance(test, Disputed):
        for reading in test.readings:
            yield from facts_asked(reading.test)
    elif test is not None and not isinstance(test, ClassTest):
        for each in test.tests:
            yield from facts_asked(each)


def backing_of(code: str, fact: str, limit: str, line: str = "") -> set[tuple[str, str]]:
    """Source and certainty of every test of a code that has this limit on this fact."""
    groups = [entry for group in SCHEME.groups for entry in group.classes]
    found: set[tuple[str, str]] = set()
    for entry in (*groups, *SCHEME.accessories):
        if entry.code == code and (not line or entry.line == line):
            for test in (*facts_asked(entry.when), *facts_asked(entry.covered)):
                ends = (test.above, test.at_least, test.below, test.at_most)
                if test.fact == fact and Decimal(limit) in ends:
                    found.add((test.backing.source.key, test.backing.certainty))
    return found


def covered(code: str, **told: str) -> bool | None:
    step = of(judged(**{**AT_HOME, **told}), code).covered
    assert step is not None
    return step.truth


CUSHIONS = {
    "general": ("E2601", "E2602"),
    "skin": ("E2603", "E2604"),
    "positioning": ("E2605", "E2606"),
    "both": ("E2607", "E2608"),
    "custom": ("E2609", "E2609"),
    "adjustable skin": ("E2622", "E2623"),
    "adjustable both": ("E2624", "E2625"),
}
BACKS = {
    "general": ("E2611", "E2612"),
    "posterior": ("E2613", "E2614"),
    "posterior-lateral": ("E2615", "E2616"),
    "custom": ("E2617", "E2617"),
    "planar-lateral": ("E2620", "E2621"),
}
