"""What a measurement was made on, and how its times are taken."""

from __future__ import annotations

import datetime as dt
import os
import platform
import statistics
import time
from collections.abc import Callable
from dataclasses import dataclass
from importlib.metadata import version
from pathlib import Path

BENCHED = ("numpy", "ortools")


@dataclass(frozen=True)
class Table:
    """One table of results: column heads, and rows of words."""

    columns: list[str]
    rows: list[list[str]]


def machine() -> list[str]:
    """Processor, cores, memory, versions and day."""
    info = Path("/proc/cpuinfo")
    lines = info.read_text(encoding="utf-8").splitlines() if info.exists() else []
    names = [line.partition(":")[2].strip() for line in lines if line.startswith("model name")]
    memory = os.sysconf("SC_PAGE_SIZE") * os.sysconf("SC_PHYS_PAGES") / 2**30
    versions = [f"{name} {version(name)}" for name in BENCHED]
    return [
        names[0] if names else platform.processor() or platform.machine(),
        f"{os.cpu_count()} cores",
        f"{memory:.0f} GB",
        platform.system(),
        f"Python {platform.python_version()}",
        *versions,
        dt.datetime.now(tz=dt.UTC).date().isoformat(),
    ]


def timed(run: Callable[[], object], times: int) -> float:
    """Median wall time of some runs [s], after one that loads and caches.

    Parameters
    ----------
    run : callable
    times : int
    """
    run()
    return statistics.median(once(run) for _ in range(times))


def once(run: Callable[[], object]) -> float:
    """Wall time of one run [s]."""
    start = time.perf_counter()
    run()
    return time.perf_counter() - start
