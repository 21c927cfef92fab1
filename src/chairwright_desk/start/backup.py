"""A copy of the whole database in one file, checked; and back.

A copy carries a check number of all its bytes where SQLite keeps four bytes free for programs
(``user_version``): a byte that was lost or turned over on its way is noticed, also inside a text,
where SQLite's own check does not look. The database that is in use carries none.
"""

from __future__ import annotations

import os
import sqlite3
import zlib
from contextlib import closing, suppress
from pathlib import Path

from chairwright_desk.start.bridge import InputError, Problem
from chairwright_desk.start.restored import let_nobody_in

FIRST_BYTES = b"SQLite format 3\x00"
PAGE_AT, PAGES_AT, CHECK_AT = 16, 28, 60
"""Where SQLite's head holds the size of a page, the number of pages, and the four free bytes."""
NEEDED = {"django_migrations", "accounts_user", "clients_client", "audit_entry"}


def copy_database(source: Path, target: Path) -> None:
    """Copy a database that may be in use, whole or not at all; never over another file.

    Parameters
    ----------
    source, target : pathlib.Path
        SQLite files.
    """
    part = target.with_name(target.name + ".part")
    try:
        _copy(source, part)
        os.replace(part, target)
    except (OSError, sqlite3.OperationalError) as error:
        with suppress(OSError):
            part.unlink(missing_ok=True)
        must, remedy = "a place that takes the file", "Name another place, or free some space."
        raise _wrong(target, must, str(error), remedy) from error
    _to_disk(target.parent)


def _copy(source: Path, part: Path) -> None:
    part.unlink(missing_ok=True)
    os.close(os.open(part, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
    with closing(sqlite3.connect(source)) as old, closing(sqlite3.connect(part)) as new:
        old.backup(new)
        new.execute("PRAGMA journal_mode=DELETE")
    with part.open("r+b") as file:
        file.seek(CHECK_AT)
        file.write(bytes(4))
        file.seek(0)
        number = check_number(file.read())
        file.seek(CHECK_AT)
        file.write(number)
    _to_disk(part)


def check_number(content: bytes) -> bytes:
    """Return the check number of a copy, as it stands in the copy.

    Parameters
    ----------
    content : bytes
        Of the copy; the place of the number itself does not count.
    """
    told = zlib.crc32(content[:CHECK_AT] + bytes(4) + content[CHECK_AT + 4 :])
    return (told or 1).to_bytes(4, "big")


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
    if not file.exists():
        raise _wrong(file, "a desk's database", "no such file", "Check the name and the folder.")
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


def check_bytes(file: Path) -> None:
    """Refuse a copy that is shorter than it says, or whose check number is another.

    Parameters
    ----------
    file : pathlib.Path
        A copy; a database in use may have part of itself in its journal.

    Raises
    ------
    InputError
    """
    if not file.is_file():
        return
    content = file.read_bytes()
    page = int.from_bytes(content[PAGE_AT : PAGE_AT + 2], "big")
    pages = int.from_bytes(content[PAGES_AT : PAGES_AT + 4], "big")
    said = content[CHECK_AT : CHECK_AT + 4]
    whole = len(content) >= pages * (65536 if page == 1 else page)
    if not whole or said not in (bytes(4), check_number(content)):
        got = "a file that was cut off or changed on its way"
        raise _wrong(file, "a sound database", got, "Use another backup.")


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


def put_back(copy: Path, database: Path, *, restored: bool = False) -> None:
    """Put a copy in the database's place, whole or not at all; its journal goes away.

    Parameters
    ----------
    copy, database : pathlib.Path
    restored : bool
        Whether it is a backup of some time ago: then nobody comes in by what was open at that
        time.
    """
    fresh = database.with_name(database.name + ".new")
    copy_database(copy, fresh)
    with closing(sqlite3.connect(fresh)) as made, made:
        made.execute("PRAGMA user_version=0")
        if restored:
            let_nobody_in(made)
    _to_disk(fresh)
    _empty_journal(database)
    for ending in ("-wal", "-shm"):
        database.with_name(database.name + ending).unlink(missing_ok=True)
    os.replace(fresh, database)
    _to_disk(database.parent)
