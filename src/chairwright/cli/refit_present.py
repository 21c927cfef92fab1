"""The chair as it is: a set-up file of a line, or a measured chair of any maker."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from chairwright.cli.opened import open_setup
from chairwright.errors import InputError, Problem
from chairwright.files.client import read_client
from chairwright.files.measured import FORMAT, MeasuredFile, read_measured
from chairwright.fitting.person import Person
from chairwright.line.load import load_line
from chairwright.measured.stands import stands, why_not
from chairwright.order.refit import Present
from chairwright.reading import read_yaml

DEFAULT_LINE = "everyday"


def present_chair(path: str, person: Person, line: str | None, keep: Sequence[str]) -> Present:
    """Read the chair as it is.

    Parameters
    ----------
    path : str
        A set-up file or a measured-chair file.
    person : Person
        The client of today.
    line : str or None
        Of which a new chair is bought, for a measured one.
    keep : sequence of str
        ``CHOICE=CODE``, for a measured one.

    Returns
    -------
    Present

    Raises
    ------
    InputError
        When the file cannot be read, or says what does not go together.
    """
    data = read_yaml(Path(path)).data
    if isinstance(data, dict) and data.get("format") == FORMAT:
        return _measured(read_measured(path), person, line or DEFAULT_LINE, keep)
    given = {"--line": line, "--keep": ", ".join(keep)}
    problems = [
        Problem(option, "it goes with a measured chair", words, "A set-up file names its own line.")
        for option, words in given.items()
        if words
    ]
    if problems:
        raise InputError(*problems)
    opened = open_setup(path)
    return Present(opened.name, opened.setup, opened.person.client, opened.file.line)


def _measured(file: MeasuredFile, person: Person, line: str, keep: Sequence[str]) -> Present:
    """Judge the measured chair by today's measures."""
    reason = why_not(file.values, file.foot_supports, person.occupant)
    if reason:
        must = "the measured chair must be one that stands on its wheels with this client"
        remedy = "Look for a slip with chairwright measured."
        raise InputError(Problem(str(file.path), must, reason, remedy))
    found = stands(
        file.values,
        file.tolerances,
        file.foot_supports,
        person.occupant,
        person.targets,
        name=file.name,
    )
    client = read_client(file.client_path)
    return Present(file.name, found.setup, client, line, load_line(line), _kept(keep))


def _kept(keep: Sequence[str]) -> dict[str, str]:
    pairs = [word.partition("=") for word in keep]
    problems = [
        Problem("--keep", "it must be CHOICE=CODE", repr(word), "Write it like cushion=Q75.")
        for word, (name, _, code) in zip(keep, pairs, strict=True)
        if not name or not code
    ]
    if problems:
        raise InputError(*problems)
    return {name.strip(): code.strip() for name, _, code in pairs}
