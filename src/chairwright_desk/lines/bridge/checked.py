"""A line's text checked: what is wrong or worth a look, by line of the text."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from dataclasses import asdict, dataclass
from functools import lru_cache
from typing import Literal

from chairwright.errors import InputError, Problem
from chairwright.fitting.line_checks.check import check_line
from chairwright.reading import FileText
from chairwright_desk.lines.bridge.texts import NAMED, line_from

MOST_TOLD = 300
MOST_SECONDS = 60
"""What a check of a text from outside is given."""

_PLACE = re.compile(rf"^{re.escape(NAMED)}(?::(\d+))?(?:: (.*))?$")

Severity = Literal["mistake", "remark"]


@dataclass(frozen=True)
class Told:
    """One message.

    Parameters
    ----------
    severity : {"mistake", "remark"}
        A mistake must be put right; a remark may be meant so.
    line : int
        Of the text; 0 when it is about the whole.
    field, must, got, remedy : str
    """

    severity: Severity
    line: int
    field: str
    must: str
    got: str
    remedy: str


@dataclass(frozen=True)
class Checked:
    """What came of a check.

    Parameters
    ----------
    name, title, version : str
        As the text says; empty when it cannot be read.
    told : tuple of Told
        By line.
    more : int
        How many messages are left out.
    """

    name: str
    title: str
    version: str
    told: tuple[Told, ...]
    more: int = 0

    @property
    def good(self) -> bool:
        """Whether set-ups can be made on it."""
        return bool(self.name) and all(each.severity != "mistake" for each in self.told)


def check(text: str) -> Checked:
    """Read and check a line here and now; may take long for a line that is wild.

    Parameters
    ----------
    text : str
    """
    try:
        line = line_from(text)
        found = check_line(line, FileText(NAMED, text))
    except InputError as error:
        return _cut("", "", "", [_told("mistake", each) for each in error.problems])
    told = [_told(each.severity, each.problem) for each in found]
    return _cut(line.name, line.title, line.version, told)


def _cut(name: str, title: str, version: str, told: list[Told]) -> Checked:
    """With the mistakes before the remarks where not all are kept."""
    kept = sorted(told, key=lambda each: each.severity != "mistake")[:MOST_TOLD]
    kept.sort(key=lambda each: each.line)
    return Checked(name, title, version, tuple(kept), len(told) - len(kept))


def _told(severity: Severity, problem: Problem) -> Told:
    place = _PLACE.match(problem.where)
    line, field = (place[1], place[2]) if place else ("", problem.where)
    return Told(severity, int(line or 0), field or "", problem.must, problem.got, problem.remedy)


@lru_cache(maxsize=8)
def checked_here(text: str) -> Checked:
    """A check of a line that is known to be sound, kept.

    Parameters
    ----------
    text : str
    """
    return check(text)


def checked_apart(text: str) -> Checked:
    """Check a text from outside in a process of its own, with bounds on time and memory.

    Parameters
    ----------
    text : str

    Returns
    -------
    Checked
        With one mistake about the whole when a bound was met.
    """
    command = [sys.executable, "-m", "chairwright_desk.lines.bridge.apart"]
    around = {**os.environ, "OPENBLAS_NUM_THREADS": "1"}
    try:
        done = subprocess.run(  # noqa: S603 - our own program, no shell
            command,
            input=text.encode(),
            capture_output=True,
            timeout=MOST_SECONDS,
            check=False,
            env=around,
        )
    except subprocess.TimeoutExpired:
        return _beyond(f"more than {MOST_SECONDS} seconds of work")
    if done.returncode != 0:
        return _beyond("more memory than a check is given")
    return from_json(done.stdout.decode())


def _beyond(got: str) -> Checked:
    told = Told(
        "mistake",
        0,
        "",
        "a line must be small enough to be checked",
        got,
        "Leave out options, holes or sizes; or check it with “chairwright line check”, which has "
        "no such bounds.",
    )
    return Checked("", "", "", (told,))


def to_json(checked: Checked) -> str:
    """A check as text, for another process."""
    return json.dumps(asdict(checked))


def from_json(text: str) -> Checked:
    """A check from such a text."""
    data = json.loads(text)
    return Checked(**{**data, "told": tuple(Told(**each) for each in data["told"])})
