"""Options of a choice that words in a file mean: by code, by part, by size."""

from __future__ import annotations

import math
from collections.abc import Iterable

from chairwright.line.choices import CHOICES
from chairwright.line.model import Choice


def codes_in(choice: Choice, low: float | None, high: float | None) -> frozenset[str]:
    """Codes of the options whose main size lies in a range, both ends included.

    Parameters
    ----------
    choice : Choice
    low, high : float or None
        In the size's unit; None leaves that end open.

    Returns
    -------
    frozenset of str
        An option without the size, such as one that is not fitted, is never in a range.
    """
    key = CHOICES[choice.name].size
    sizes = {option.code: option.numbers.get(key, math.nan) for option in choice.options}
    return frozenset(
        code
        for code, size in sizes.items()
        if (low is None or size >= low) and (high is None or size <= high) and not math.isnan(size)
    )


def matching_codes(choice: Choice, written: Iterable[str]) -> frozenset[str]:
    """Option codes meant by written ones; a part's code means every option made from it.

    Parameters
    ----------
    choice : Choice
    written : iterable of str

    Returns
    -------
    frozenset of str
    """
    wanted = set(written)
    return frozenset(
        option.code for option in choice.options if option.code in wanted or option.part in wanted
    )
