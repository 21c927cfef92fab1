"""What several figures ask of the same rows, worked out once."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

from chairwright.chair.rows import Rows

Found = TypeVar("Found")


class Once:
    """Keeps what was worked out for the rows asked about last."""

    def __init__(self) -> None:
        self._rows: Rows | None = None
        self._found: dict[str, Any] = {}

    def forget(self) -> None:
        """Forget all: the rows were given more columns."""
        self._rows = None

    def of(self, rows: Rows, key: str, make: Callable[[Rows], Found]) -> Found:
        """What ``make`` says of the rows, worked out at the first time of asking.

        Parameters
        ----------
        rows : Rows
        key : str
        make : callable
        """
        if rows is not self._rows:
            self._rows, self._found = rows, {}
        if key not in self._found:
            self._found[key] = make(rows)
        return self._found[key]  # type: ignore[no-any-return]
