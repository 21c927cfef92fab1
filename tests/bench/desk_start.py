"""From the command to the desk's first page, in whole processes."""

from __future__ import annotations

import tempfile
import time
from pathlib import Path

from tests.bench.machine import Table
from tests.desk.kit.process import RunningDesk, Visit

RUNS = 5
ASKED_S = 2.5
"""What was promised for a start."""


def first_page() -> Table:
    """Time of a first start, which makes the database, and of later ones."""
    with tempfile.TemporaryDirectory() as folder:
        times = [_start(Path(folder) / "data") for _ in range(RUNS + 1)]
    rows = [
        ["first start, database made", f"{times[0]:.2f}", f"{ASKED_S}"],
        [f"later start, slowest of {RUNS}", f"{max(times[1:]):.2f}", f"{ASKED_S}"],
    ]
    return Table(["start", "s to the first page", "at most"], rows)


def _start(folder: Path) -> float:
    began = time.perf_counter()
    with RunningDesk(folder) as desk:
        Visit(desk.url).get(desk.link)
        return time.perf_counter() - began
