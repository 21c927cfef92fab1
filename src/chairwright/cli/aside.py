"""Processes beside this one, for searches that need not wait for each other."""

from __future__ import annotations

import multiprocessing
from collections.abc import Iterator
from concurrent.futures import Executor, ProcessPoolExecutor
from contextlib import contextmanager

QUICKEST = "fork"
"""Way to start a process that need not load everything again, where there is one."""


PROCESSES = 3
"""The front, the search without places and what else comes up; with two cores one waits little."""


@contextmanager
def processes_aside() -> Iterator[Executor]:
    """Three processes that take searches while the block runs.

    Yields
    ------
    Executor
    """
    known = multiprocessing.get_all_start_methods()
    context = multiprocessing.get_context(QUICKEST if QUICKEST in known else None)
    with ProcessPoolExecutor(PROCESSES, mp_context=context) as pool:
        yield pool
