"""A second search beside the first, in a process of its own: the best set-up without places."""

from __future__ import annotations

import multiprocessing
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager

from chairwright.files.client import read_client
from chairwright.fitting.fit import Index, best_alone
from chairwright.fitting.to_order import ToOrder
from chairwright.fitting.weighed import WeighedClient
from chairwright.line.load import load_line
from chairwright.places.model import Surroundings

QUICKEST = "fork"
"""Way to start a process that need not load everything again, where there is one."""


@contextmanager
def searched_aside(
    surroundings: Surroundings | None,
    client: str,
    line: str,
    to_order: ToOrder,
    weighed: WeighedClient | None = None,
) -> Iterator[Callable[[], Index | None]]:
    """Search without the places while the block runs.

    Parameters
    ----------
    surroundings : Surroundings or None
        None searches nothing.
    client, line : str
        Client file; line as it was named.
    to_order : {"when-needed", "always", "never"}
    weighed : WeighedClient or None

    Yields
    ------
    callable
        Waits for what was found; None is found without places.
    """
    if surroundings is None:
        yield lambda: None
        return
    known = multiprocessing.get_all_start_methods()
    context = multiprocessing.get_context(QUICKEST if QUICKEST in known else None)
    with ProcessPoolExecutor(1, mp_context=context) as pool:
        found = pool.submit(_search, client, line, to_order, weighed)
        yield found.result


def _search(
    client: str, line: str, to_order: ToOrder, weighed: WeighedClient | None
) -> Index | None:
    return best_alone(read_client(client), load_line(line), to_order, weighed)
