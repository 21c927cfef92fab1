"""A copy of the whole database in one file, checked; and back."""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing, suppress
from pathlib import Path

from chairwright_desk.start.bridge import InputError, Problem

FIRST_BYTES = b"SQLite format 3\x00"
NEEDED = {"django_migrations", "accounts_user", "clients_client", "audit_entry"}


def copy_database(source: Path, target: Path) -> None:
    """Copy a database that may be in use, whole or not at all; never over another file.

    Parameters
    ----------
    source, target : pathlib.Path
        SQLite files.
    """
    part = target.with_name(target.name + ".part")
    part.unlink(missing_ok=True)
    with closing(sqlite3.connect(source)) as old, closing(sqlite3.connect(part)) as new:
        old.backup(new)
        new.execute("PRAGMA journal_mode=DELETE")
    part.chmod(0o600)
    _to_disk(part)
    os.replace(part, target)
    _to_disk(target.parent)


def _to_disk(path: Path) -> None:
    if os.name == "nt" and path.is_dir():  # pragma: no cover - Windows has no folder handles
        return
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def check_database(file: Path, known: set[tuple[str, str]] | None = None) -> list[tuple[str, str]]:
    """Return the steps (migrations) a database has been through, if it is a sound desk database.

    Parameters
    ----------
    file : pathlib.Path
        SQLite file; opened read-only.
    known : set of (str, str), optional
        Steps of this program; a database with others was made by a newer one.

    Raises
    ------
    InputError
        No database of a desk, a damaged one, or one of a newer program.
    """
    if not file.is_file() or file.open("rb").read(16) != FIRST_BYTES:
        raise _wrong(file, "a desk's backup", "another file", "Name a file made by desk backup.")
    try:
        steps = _steps(file)
    except sqlite3.DatabaseError as error:
        raise _wrong(file, "a sound database", str(error), "Use another backup.") from error
    newer = [] if known is None else [step for step in steps if step not in known]
    if newer:
        got = f"step {newer[0][0]} {newer[0][1]} of a newer program"
        raise _wrong(file, "made by this program or an older one", got, "Update the program first.")
    return steps


def _steps(file: Path) -> list[tuple[str, str]]:
    with closing(sqlite3.connect(f"{file.absolute().as_uri()}?mode=ro", uri=True)) as database:
        (verdict,) = database.execute("PRAGMA integrity_check").fetchone()
        if verdict != "ok":
            raise sqlite3.DatabaseError(verdict)
        if database.execute("PRAGMA foreign_key_check").fetchone():
            msg = "rows that point at rows which are not there"
            raise sqlite3.DatabaseError(msg)
        tables = {name for (name,) in database.execute("SELECT name FROM sqlite_master")}
        if not tables >= NEEDED:
            msg = "the tables of a desk are not in it"
            raise sqlite3.DatabaseError(msg)
        return list(database.execute("SELECT app, name FROM django_migrations ORDER BY id"))


def _wrong(file: Path, must: str, got: str, remedy: str) -> InputError:
    return InputError(Problem(where=str(file), must=f"must be {must}", got=got, remedy=remedy))


def _empty_journal(database: Path) -> None:
    """Bring what stands in the journal into the file, so that a stop half-way loses nothing."""
    if database.is_file():
        with suppress(sqlite3.DatabaseError), closing(sqlite3.connect(database)) as old:
            old.execute("PRAGMA wal_checkpoint(TRUNCATE)")


def put_back(copy: Path, database: Path) -> None:
    """Put a copy in the database's place, whole or not at all; its journal goes away."""
    fresh = database.with_name(database.name + ".new")
    copy_database(copy, fresh)
    _empty_journal(database)
    for ending in ("-wal", "-shm"):
        database.with_name(database.name + ending).unlink(missing_ok=True)
    os.replace(fresh, database)
    _to_disk(database.parent)
