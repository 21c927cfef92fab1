"""Sweeps of the example set-ups, each worked out once."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from chairwright.cli.opened import Opened, open_setup
from chairwright.fitting.runs import runs_of
from chairwright.fitting.sweep import Sweep, SweptRun, sweep

SETUPS = Path(__file__).parents[2] / "examples" / "setups"
EXAMPLES = tuple(path.stem for path in sorted(SETUPS.glob("*.yaml")))


@cache
def example(name: str) -> Opened:
    """One example set-up with its client and its line."""
    return open_setup(SETUPS / f"{name}.yaml")


@cache
def swept(name: str, choice: str) -> Sweep:
    """One choice of an example, in the runs that are usual for it."""
    opened = example(name)
    runs = runs_of(opened.line.choices[choice], opened.setup.index[choice])
    return sweep(opened.person, opened.setup, choice, runs)


def run_along(name: str, choice: str, along: str) -> SweptRun:
    """The run of a sweep in which one number rises."""
    return next(run for run in swept(name, choice).runs if run.run.along == along)


def values(run: SweptRun, figure: str) -> list[float]:
    """One figure of the options that stand, in the order of the run, not rounded."""
    return [setup.figures[figure] for setup in run.setups()]
