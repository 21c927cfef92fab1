"""A smaller space in which a question about some figures has the same answer."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import numpy as np

from chairwright.chair.rows import IndexArray
from chairwright.chair.steps import STEPS
from chairwright.figures.registry import FIGURES
from chairwright.figures.terms import TERMS
from chairwright.mass_points import FloatArray
from chairwright.search.space import Space
from chairwright.search.sums import Sum


def relevant_space(space: Space, figures: Iterable[str], sums: Iterable[Sum] = ()) -> Space:
    """Keep one of the options of a choice that no figure and no rule tells apart.

    Such options are interchangeable, so a set-up with given values of the figures is in the
    smaller space exactly when one is in the whole; of equals the line's first is kept, which
    also wins ties. What can be built depends on running gear, foot supports and anti-tip device:
    their sizes always tell.

    Parameters
    ----------
    space : Space
    figures : iterable of str
    sums : iterable of Sum
        Sums that must not change either.

    Returns
    -------
    Space
    """
    figures = tuple(figures)
    touched = frozenset[str]().union(ALWAYS, *(FIGURES[name].touched_by for name in figures))
    terms = {term.key for term in TERMS.values()}
    asked = {TERMS[name].key for name in figures if name in TERMS}
    amounts = [column for each in sums for column in each.columns()]
    allowed = {}
    for name, options in space.allowed.items():
        whole = space.line.choices[name].options
        held = dict.fromkeys(key for each in whole for key in each.numbers)
        keys = [key for key in held if key in asked or (name in touched and key not in terms)]
        numbers = [space.line.column(name, key)[options] for key in keys]
        numbers += [column[options] for choice, column in amounts if choice == name]
        allowed[name] = _told_apart(space, name, options, numbers)
    return replace(space, allowed=allowed)


ALWAYS = frozenset(
    {*STEPS[0].choices, "foot_supports", "hanger", "foot_plate", "leg_length", "anti_tip"}
)
"""Choices that decide whether a set-up stands on its wheels with nothing in the floor."""


def _told_apart(
    space: Space, name: str, options: IndexArray, columns: list[FloatArray]
) -> IndexArray:
    codes = [space.line.choices[name].options[place].code for place in options]
    numbers = [_numbers(column) for column in columns]
    uses = [
        codes_of[name]
        for rule in space.line.rules
        for codes_of in (rule.when, rule.need)
        if name in codes_of
    ]
    signatures = [
        (*(code in use for use in uses), *(column[at] for column in numbers))
        for at, code in enumerate(codes)
    ]
    first = {signature: place for place, signature in reversed(list(enumerate(signatures)))}
    return np.asarray(options[sorted(first.values())])


def _numbers(values: FloatArray) -> list[float | None]:
    """Numbers that can be compared: None for no value."""
    return [None if np.isnan(value) else float(value) for value in values]
