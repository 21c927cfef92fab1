"""Random targets whose ends come from what a small line can reach."""

from __future__ import annotations

import numpy as np

from chairwright.figures.registry import FIGURES
from chairwright.targets.target import Target

from .brute_force import Everything

Rng = np.random.Generator
SOURCE = "drawn for a test"
OF_THE_ORDER = ("price", "lead_days", "custom_surcharge", "load_margin_kg")


def targets(rng: Rng, everything: Everything, musts: int, preferences: int) -> list[Target]:
    """Draw musts and preferences; ends often lie exactly on a value that a set-up has."""
    names = _names(rng, everything, musts + preferences)
    return [_target(rng, everything, name, must=at < musts) for at, name in enumerate(names)]


def aims(rng: Rng, everything: Everything, count: int) -> list[tuple[str, str]]:
    """Draw figures to trade off, with their senses."""
    names = rng.permutation(_varied(everything))[:count]
    return [(str(name), "max" if rng.random() < 0.5 else "min") for name in names]


def _varied(everything: Everything) -> list[str]:
    return [
        name
        for name, values in everything.figures.items()
        if name in FIGURES and np.unique(values[~np.isnan(values)]).size > 1
    ]


def _names(rng: Rng, everything: Everything, count: int) -> list[str]:
    """Mostly figures that differ between set-ups; now and then one without any value.

    Price, days, surcharge and load margin come more often than each of the others.
    """
    varied = _varied(everything)
    others = [name for name in everything.figures if name not in varied]
    picked = [str(name) for name in rng.choice(varied or others, count)]
    ordered = [name for name in OF_THE_ORDER if name in varied]
    for at in range(count):
        if ordered and rng.random() < 0.25:
            picked[at] = str(rng.choice(ordered))
    if others and rng.random() < 0.3:
        picked[int(rng.integers(count))] = str(rng.choice(others))
    return picked


def _target(rng: Rng, everything: Everything, name: str, *, must: bool) -> Target:
    values = everything.figures[name]
    values = np.sort(values[~np.isnan(values)])
    if not len(values):
        values = np.zeros(1)
    low, high = sorted(float(v) for v in rng.choice(values, 2))
    if rng.random() < 0.5:
        nudge = FIGURES[name].scale * rng.uniform(-0.5, 0.5, 2)
        low, high = sorted((low + float(nudge[0]), high + float(nudge[1])))
    if rng.random() < 0.15:  # out of reach
        low = high = float(values[-1]) + FIGURES[name].scale * float(rng.uniform(0.1, 3.0))
    ends = rng.random()
    return Target(
        figure=name,
        low=None if ends < 0.25 else low,
        high=None if ends > 0.75 else high,
        must=must,
        weight=float(rng.choice([0.5, 1.0, 2.0, 3.7])),
        source=SOURCE,
        reason=SOURCE,
    )
