"""Whole processes: start to end, and the memory of one fit."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench.machine import Table, timed

AVERAGE = "examples/clients/avg-001.yaml"
PACK = (
    "examples/orders/avg-001-order.yaml", "--from", "examples/setups/avg-001.yaml",
    "--places", "examples/places/avg-001.yaml", "--replace",
)  # fmt: skip
PEAK = """
from pathlib import Path
from chairwright.fitting.trade import usual_objectives
from chairwright.search.best import find_best
from chairwright.search.front import find_front
from tests.bench.clients import whole_space

def peak():
    lines = Path("/proc/self/status").read_text().splitlines()
    return next(line.split()[1] for line in lines if line.startswith("VmHWM"))

space, targets, occupant = whole_space("avg-001")
before = peak()
find_best(space, targets)
find_front(space, targets, usual_objectives(occupant))
print(before, peak())
"""
"""Peak resident memory as Linux counts it since the program was started, in kB."""


def cold_starts() -> Table:
    """Median wall times of new processes, and how many empty Python processes that is."""
    plain = cold("-c", "pass")
    rows = []
    for words, arguments in (
        ("chairwright --help", ["--help"]),
        ("chairwright fit, average adult", ["fit", AVERAGE]),
        ("the same without the trade-off", ["fit", AVERAGE, "--no-front"]),
        ("chairwright figures", ["figures", "examples/setups/avg-001.yaml"]),
    ):
        seconds = cold("-m", "chairwright.cli.main", *arguments)
        rows.append([words, f"{seconds:.2f}", f"{seconds / plain:.0f}"])
    return Table(["command", "s", "empty Python processes"], rows)


def with_places() -> Table:
    """Median wall times of new processes that fit each example client, places included."""
    rows = []
    for path in sorted(Path("examples/places").glob("*.yaml")):
        client = f"examples/clients/{path.name}"
        plain = cold("-m", "chairwright.cli.main", "fit", client, times=3)
        seconds = cold("-m", "chairwright.cli.main", "fit", client, "--places", str(path), times=3)
        rows.append([path.stem.upper(), f"{plain:.2f}", f"{seconds:.2f}", f"{seconds / plain:.1f}"])
    return Table(["client", "without, s", "with places, s", "ratio"], rows)


def pack() -> Table:
    """Wall time of the full pack of papers of one order, beside that of the start alone."""
    start = cold("-m", "chairwright.cli.main", "--help")
    with TemporaryDirectory() as folder:
        seconds = cold("-m", "chairwright.cli.main", "papers", *PACK, "--out", folder)
    row = ["papers of avg-001", f"{start:.2f}", f"{seconds:.2f}", f"{seconds - start:.2f}"]
    return Table(["pack", "start, s", "whole, s", "after start, s"], [row])


def memory() -> Table:
    """Peak memory of best and front of three figures of the average client, in a process alone."""
    words = [sys.executable, "-c", PEAK]
    out = subprocess.run(words, capture_output=True, check=True, text=True).stdout.split()
    before, peak = (float(each) / 1024 for each in out)
    return Table(
        ["process", "MB"],
        [
            ["line, client and libraries loaded", f"{before:.0f}"],
            ["best and front of three figures found", f"{peak:.0f}"],
        ],
    )


def cold(*arguments: str, times: int = 5) -> float:
    """Median wall time of a new process [s]."""
    command = [sys.executable, *arguments]
    return timed(lambda: subprocess.run(command, capture_output=True, check=True), times)
