"""A set-up file with its client and its line, read and checked, for commands that need them all."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from chairwright.errors import InputError, Problem
from chairwright.files.client import read_client
from chairwright.files.setup import SetupFile, read_setup
from chairwright.fitting.described import Described, describe
from chairwright.fitting.extras import with_extras
from chairwright.fitting.person import Person, read_person
from chairwright.fitting.setup import check_setup, index_of
from chairwright.fitting.weighed import WeighedClient
from chairwright.line.load import load_line
from chairwright.line.model import Line
from chairwright.places.model import Surroundings


@dataclass(frozen=True)
class Opened:
    """One set-up file with all that it names.

    Parameters
    ----------
    file : SetupFile
    person : Person
    line : Line
    setup : Described
    """

    file: SetupFile
    person: Person
    line: Line
    setup: Described

    @property
    def name(self) -> str:
        """The file's name without its ending: what the set-up is called."""
        return self.file.path.stem


def open_setup(
    path: Path | str,
    surroundings: Surroundings | None = None,
    weighed: WeighedClient | None = None,
) -> Opened:
    """Read a set-up file, its client and its line, and work out its figures.

    Parameters
    ----------
    path : Path or str
    surroundings : Surroundings or None
        Of the client: what its places ask is judged as well.
    weighed : WeighedClient or None
        Of the client: the centre of mass is as measured.

    Returns
    -------
    Opened

    Raises
    ------
    InputError
        When a file cannot be read, or when the line, the client's feet or the floor do not
        allow the set-up.
    """
    return open_file(read_setup(path), surroundings, weighed)


def open_file(
    file: SetupFile,
    surroundings: Surroundings | None = None,
    weighed: WeighedClient | None = None,
) -> Opened:
    """Open what a set-up names and work out its figures.

    Parameters
    ----------
    file : SetupFile
    surroundings : Surroundings or None
    weighed : WeighedClient or None
        As for `open_setup`.

    Returns
    -------
    Opened

    Raises
    ------
    InputError
        As `open_setup`.
    """
    if not file.client_path.exists():
        raise InputError(
            Problem(
                where=f"{file.where['client']}: client",
                must="the set-up's client file must be there",
                got=f"no such file as {file.client_path}",
                remedy="Correct the path; it counts from the set-up file's own folder.",
            )
        )
    person = read_person(read_client(file.client_path), surroundings, weighed)
    line = with_extras(load_line(file.line), file.extras, file.where)
    index = index_of(file, line)
    check_setup(file, line, person.occupant, index)
    return Opened(
        file, person, line, describe(line, person.occupant, index, person.targets, surroundings)
    )


def check_pdf(path: Path, *, replace: bool) -> None:
    """Refuse an output file that is there already, or is no PDF, before any work is done.

    Parameters
    ----------
    path : Path
    replace : bool
        Whether an existing file may be replaced.

    Raises
    ------
    InputError
        With what to do.
    """
    if path.suffix.lower() != ".pdf":
        must = "the file must end in .pdf"
        remedy = "Name it like lesson.pdf."
        raise InputError(Problem("--out", must, repr(str(path)), remedy))
    if path.exists() and not replace:
        remedy = "Say --replace, or choose another name."
        raise InputError(Problem(str(path), "the file must not exist yet", "a file", remedy))
