"""What was worked out before, bounded and safe across threads."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import Generic, TypeVar

Thing = TypeVar("Thing")


class Kept(Generic[Thing]):
    """The last things that were asked for, by key; the one not asked for longest goes first.

    Parameters
    ----------
    most : int
        How many are kept.
    """

    def __init__(self, most: int) -> None:
        self._most = most
        self._held: OrderedDict[Hashable, Thing] = OrderedDict()
        self._lock = Lock()

    def of(self, key: Hashable, make: Callable[[], Thing]) -> Thing:
        """Return what is kept under a key; made and kept when there is none.

        Parameters
        ----------
        key : hashable
        make : callable
            Called outside the lock: two threads may make the same thing at once, and the first
            one to be done is kept.
        """
        with self._lock:
            if key in self._held:
                self._held.move_to_end(key)
                return self._held[key]
        made = make()
        with self._lock:
            found = self._held.setdefault(key, made)
            self._held.move_to_end(key)
            while len(self._held) > self._most:
                self._held.popitem(last=False)
        return found

    def known(self, key: Hashable) -> Thing | None:
        """Return what is kept under a key; None when there is nothing."""
        with self._lock:
            return self._held.get(key)

    def __len__(self) -> int:
        """Return how many are kept."""
        with self._lock:
            return len(self._held)
