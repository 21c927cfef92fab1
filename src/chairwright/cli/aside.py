"""Processes beside this one, for searches that need not wait for each other."""

from __future__ import annotations

import multiprocessing
from collections.abc import Iterator
from concurrent.futures import Executor, ProcessPoolExecutor
from contextlib import contextmanager

QUICKEST = "fork"
"""Way to start a process that need not load everything again, where there is one."""


@contextmanager
def processes_aside() -> Iterator[Executor]:
    """Two processes that take searches while the block runs.

    Yields
    ------
    Executor
    """
    known = multiprocessing.get_all_start_methods()
    context = multiprocessing.get_context(QUICKEST if QUICKEST in known else None)
    with ProcessPoolExecutor(2, mp_context=context) as pool:
        yield pool
