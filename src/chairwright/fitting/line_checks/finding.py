"""One thing that a check of a line says."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from chairwright.errors import Problem

Severity = Literal["mistake", "remark"]


@dataclass(frozen=True)
class Finding:
    """Something that is wrong, or that the line's writer should look at once.

    Parameters
    ----------
    severity : {"mistake", "remark"}
        A mistake must be put right; a remark may be meant so.
    problem : Problem
    """

    severity: Severity
    problem: Problem

    @property
    def line_number(self) -> int:
        """Line of the file; 0 when the finding is about the whole."""
        found = re.search(r":(\d+)(?:: |$)", self.problem.where)
        return int(found[1]) if found else 0


def mistake(where: str, must: str, got: str, remedy: str) -> Finding:
    """A finding that must be put right.

    Parameters
    ----------
    where : str
        ``file:line``.
    must, got, remedy : str
        As of `Problem`.

    Returns
    -------
    Finding
    """
    return Finding("mistake", Problem(where, must, got, remedy))


def remark(where: str, must: str, got: str, remedy: str) -> Finding:
    """A finding that may be meant so.

    Parameters
    ----------
    where : str
        ``file:line``.
    must, got, remedy : str
        As of `Problem`.

    Returns
    -------
    Finding
    """
    return Finding("remark", Problem(where, must, got, remedy))
