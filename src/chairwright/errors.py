"""The errors that chairwright raises on purpose.

Every message says what must hold, what was got, where, and what to do.
"No set-up fits" is a result, never an error.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Problem:
    """One thing wrong with an input.

    Parameters
    ----------
    where : str
        ``file:line`` or the field's name.
    must : str
        What has to hold, as a full clause.
    got : str
        What was found instead, with its unit.
    remedy : str
        What the reader can do about it.
    """

    where: str
    must: str
    got: str
    remedy: str

    def __str__(self) -> str:
        """Return the problem as one line of text."""
        return f"{self.where}: {self.must}; got {self.got}. {self.remedy}"


class ChairwrightError(Exception):
    """Base of every error that chairwright raises on purpose."""


class InputError(ChairwrightError, ValueError):
    """An input cannot be used; each problem names its place and its remedy.

    Parameters
    ----------
    problems : Problem
        One or more problems, in the order in which they stand in the input.
    """

    def __init__(self, *problems: Problem) -> None:
        self.problems = problems
        super().__init__("\n".join(str(problem) for problem in problems))
