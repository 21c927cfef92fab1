"""One desk a data folder: a lock that goes away with its process, however that ends."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path


class Busy(Exception):
    """Another desk has the folder open."""


def _lock(handle: int) -> None:
    try:
        import fcntl
    except ImportError:  # pragma: no cover - Windows
        import msvcrt

        msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined]
    else:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)


class FolderLock:
    """Hold the folder; use it with ``with``.

    Parameters
    ----------
    folder : pathlib.Path
        The data folder.
    """

    def __init__(self, folder: Path) -> None:
        self.path = folder / "desk.lock"
        self._handle = -1

    def __enter__(self) -> FolderLock:
        self._handle = os.open(self.path, os.O_RDWR | os.O_CREAT, 0o600)
        try:
            _lock(self._handle)
        except OSError as error:
            os.close(self._handle)
            raise Busy(str(self.path.parent)) from error
        return self

    def __exit__(self, *_: object) -> None:
        with suppress(OSError):
            os.close(self._handle)
