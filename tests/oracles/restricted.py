"""The shipped line with a few options of each choice, near those of one set-up."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from chairwright.line.choices import CHOICES
from chairwright.search.space import Space


def restricted(space: Space, most: int, centre: Mapping[str, int]) -> Space:
    """Options near those of a set-up, one more of a choice at a time, up to so many set-ups.

    A choice stops growing when one more option adds none or too many.

    Parameters
    ----------
    space : Space
    most : int
        Set-ups that the rules may leave.
    centre : mapping of str to int
        Option position of every choice of the set-up in the middle.
    """
    near = {
        name: options[np.argsort(np.abs(options - centre[name]), kind="stable")]
        for name, options in space.allowed.items()
    }
    kept = dict.fromkeys(CHOICES, 1)

    def grown(name: str) -> Space:
        more = kept | {name: kept[name] + 1}
        allowed = {each: np.sort(near[each][: more[each]]) for each in CHOICES}
        return replace(space, allowed=allowed)

    small, growing = replace(space, allowed={n: near[n][:1] for n in CHOICES}), list(CHOICES)
    while growing:
        name = growing.pop(0)
        if kept[name] == len(near[name]):
            continue
        larger = grown(name)
        if small.count < larger.count <= most:
            small, kept[name] = larger, kept[name] + 1
            growing.append(name)
    return small
