"""Times and memory, as ratios against a named alternative in the same run; nothing is asserted.

``make bench`` prints the table. The alternative to the exact search is full enumeration of the
same restricted space with the same vectorised formulas.
"""

from __future__ import annotations

import platform
import resource
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.buildable import buildable
from chairwright.chair.occupant import seat
from chairwright.cli.table import text_table
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.registry import FIGURES
from chairwright.files.client import read_client
from chairwright.line.choices import CHOICES
from chairwright.line.load import load_line
from chairwright.person.estimates import complete
from chairwright.search.best import find_best
from chairwright.search.front import Objective, find_front
from chairwright.search.reasons import find_reasons
from chairwright.search.space import Space, obeyed, open_space
from chairwright.targets.build import targets_for
from chairwright.targets.target import Target
from chairwright.targets.verdict import broken, penalty

CLIENTS = Path("examples/clients")
AIMS = (
    Objective("tip_least_deg", "max"),
    Objective("overall_width_mm", "min"),
    Objective("push_reach_deg", "min"),
)
FEW = {
    "side_frame": 2, "rear_wheel": 2, "camber": 1, "axle_hole": 54, "caster": 2, "fork": 7,
    "caster_housing": 8, "stem_setting": 4, "seat_width": 1, "arm_support": 1, "seat_depth": 3,
    "cushion": 3, "back_angle": 2, "back_support": 1, "foot_supports": 1, "hanger": 1,
    "leg_length": 4, "back_height": 1, "wheel_lock": 1, "anti_tip": 2,
}  # fmt: skip
"""Options kept of each choice, spread evenly, for the space that is also enumerated."""

CHUNK = 200_000


def main() -> None:
    """Print the table."""
    rows = [*cold_starts(), ["peak memory of such a fit", f"{peak_of_fits_mb():.0f} MB", ""]]
    rows += [*searches(), *against_enumeration()]
    print(f"Python {platform.python_version()}, NumPy {np.__version__}, {platform.machine()}")
    print(text_table(["what", "median", "against"], rows, right="lrl"))


def cold_starts() -> Iterator[list[str]]:
    """Whole processes, start included."""
    average = str(CLIENTS / "avg-001.yaml")
    plain = cold("-c", "pass")
    for words, arguments in (
        ("chairwright --help", ["--help"]),
        ("chairwright fit, average adult", ["fit", average]),
        ("chairwright fit without front", ["fit", average, "--no-front"]),
    ):
        seconds = cold("-m", "chairwright.cli.main", *arguments)
        yield [words, f"{seconds:.2f} s", f"{seconds / plain:.0f} x an empty Python process"]


def searches() -> Iterator[list[str]]:
    """Searches over the whole line, in this process."""
    for name in ("avg-001", "foo-003"):
        space, targets = whole_space(name)
        best = timed(partial(find_best, space, targets), 3)
        front = timed(partial(find_front, space, targets, AIMS), 3)
        size = f"{space.count:.1e} set-ups"
        yield [f"best, {name}", f"{best:.2f} s", size]
        if name == "avg-001":
            yield [f"front of three figures, {name}", f"{front:.2f} s", size]
    space, targets = whole_space("not-008")
    reasons = timed(lambda: find_reasons(space, targets), 1)
    yield ["reasons, not-008", f"{reasons:.2f} s", f"{space.count:.1e} set-ups"]


def against_enumeration() -> Iterator[list[str]]:
    """The exact search and full enumeration of one restricted space."""
    space, targets = whole_space("avg-001")
    small = restricted(space, targets)
    found = find_best(small, targets)
    exact = timed(lambda: find_best(small, targets), 5)
    start = time.perf_counter()
    cost = enumerate_all(small, targets)
    every = time.perf_counter() - start
    same = "no set-up" if found is None else f"{found.cost:.6f} and {cost:.6f}"
    yield [f"best of {small.count:,} set-ups", f"{exact:.3f} s", f"costs {same}"]
    ratio = f"exact search is {every / exact:.0f} x faster"
    yield ["the same by vectorised full enumeration", f"{every:.2f} s", ratio]


def whole_space(name: str) -> tuple[Space, list[Target]]:
    """Space and targets of an example client on the shipped line."""
    client = read_client(CLIENTS / f"{name}.yaml")
    measures = complete(client)
    space = open_space(load_line("everyday"), seat(client, measures), client.fixed_choices)
    return space, targets_for(client, measures)


def restricted(space: Space, targets: list[Target]) -> Space:
    """The space with a few options of each choice, the best set-up's among them."""
    best = find_best(space, targets)
    allowed = {}
    for name, options in space.allowed.items():
        spread = np.linspace(0, len(options) - 1, min(FEW[name], len(options))).round()
        keep = options[np.unique(spread.astype(int))]
        if best is not None and best.index[name] not in keep:
            keep[np.argmin(np.abs(keep - best.index[name]))] = best.index[name]
        allowed[name] = keep
    return replace(space, allowed=allowed)


def enumerate_all(space: Space, targets: list[Target]) -> float:
    """Least cost of all set-ups, each looked at; infinite when none holds every must."""
    sizes = [len(space.allowed[name]) for name in CHOICES]
    least = np.inf
    for start in range(0, int(np.prod(sizes)), CHUNK):
        numbers = np.arange(start, min(start + CHUNK, int(np.prod(sizes))))
        places = np.unravel_index(numbers, sizes)
        index = {n: space.allowed[n][p] for n, p in zip(CHOICES, places, strict=True)}
        fine = obeyed(space.line, space.line.rules, index)
        if fine.any():
            kept = {name: array[fine] for name, array in index.items()}
            least = min(least, float(costs(space, targets, kept).min(initial=np.inf)))
    return least


def costs(
    space: Space, targets: list[Target], index: dict[str, NDArray[np.intp]]
) -> NDArray[np.float64]:
    """Cost of each set-up; infinite where a must is broken or nothing stands."""
    rows, _ = realise(space.line, space.occupant, index)
    found = figures_of(rows, space.occupant, {target.figure for target in targets})
    total = np.where(buildable(rows), 0.0, np.inf)
    for target in targets:
        values = found[target.figure]
        if target.must:
            total = np.where(broken(target, values), np.inf, total)
        else:
            total = total + penalty(target, values, FIGURES[target.figure].scale)
    return total


def cold(*arguments: str) -> float:
    """Median wall time of a new process [s]."""
    command = [sys.executable, *arguments]
    return timed(lambda: subprocess.run(command, capture_output=True, check=True), 5)


def timed(run: Callable[[], object], times: int) -> float:
    """Median wall time of some runs [s]."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        run()
        taken.append(time.perf_counter() - start)
    return statistics.median(taken)


def peak_of_fits_mb() -> float:
    """Peak resident memory of the largest process started so far [MB]."""
    return resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024


if __name__ == "__main__":
    main()
