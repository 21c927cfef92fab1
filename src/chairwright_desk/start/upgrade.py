"""Bringing a database to this program's shape: copied before, put back when it fails or is killed.

While an upgrade runs, ``upgrade.json`` in the data folder names the copy. A start that finds it
puts the copy back first: the upgrade before did not come to its end.
"""

from __future__ import annotations

import json
import os
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

from chairwright_desk import paths
from chairwright_desk.start.backup import check_database, copy_database, put_back
from chairwright_desk.start.bridge import InputError, Problem

MARK = "upgrade.json"
COPIES = "copies"
KEPT_COPIES = 5
Step = tuple[str, str]


def upgrade_folder(folder: Path, database: Path) -> str:
    """Bring the SQLite database of a data folder up to date.

    Parameters
    ----------
    folder, database : pathlib.Path
        The data folder, which is locked by this process, and the database in it.

    Returns
    -------
    str
        What was done, in a sentence; empty when there was nothing to do.

    Raises
    ------
    InputError
        A database of a newer program, or one that is damaged.
    """
    said = _put_back_unfinished(folder, database)
    if not database.is_file() or database.stat().st_size == 0:
        _guarded(folder, database, None, _make)
        return said
    missing, known = known_steps()
    if _newer(database, known):
        check_database(database, known)
    if not missing:
        return said
    check_database(database, known)
    copy = _copied(folder, database)
    _guarded(folder, database, copy, _migrate)
    return f"{said}The database was brought up to date; the one before is {copy}."


def upgrade_server() -> None:
    """Bring a PostgreSQL database up to date: each step is a transaction of its own there."""
    missing, _ = known_steps()
    if missing:
        _migrate()


def _newer(database: Path, known: set[Step]) -> bool:
    from django.db import connection
    from django.db.migrations.recorder import MigrationRecorder

    return not set(MigrationRecorder(connection).applied_migrations()) <= known


def known_steps() -> tuple[list[Step], set[Step]]:
    """Steps that are missing in the database, and all that the program knows."""
    from django.db import connection
    from django.db.migrations.executor import MigrationExecutor

    executor = MigrationExecutor(connection)
    plan = executor.migration_plan(executor.loader.graph.leaf_nodes())
    return [(step.app_label, step.name) for step, _ in plan], set(executor.loader.disk_migrations)


def _migrate() -> None:
    from django.core.management import call_command

    call_command("migrate", interactive=False, verbosity=0, skip_checks=True)


def _make() -> None:
    """Make a new database that only its owner may read."""
    os.close(os.open(paths.database_file(), os.O_CREAT | os.O_RDWR, 0o600))
    _migrate()


def _close() -> None:
    from django.db import connections

    connections.close_all()


def _copied(folder: Path, database: Path) -> Path:
    place = folder / COPIES
    place.mkdir(exist_ok=True, mode=0o700)
    copy = place / f"before-upgrade-{datetime.now(UTC):%Y%m%d-%H%M%S-%f}.sqlite3"
    copy_database(database, copy)
    for old in sorted(place.glob("before-upgrade-*.sqlite3"))[:-KEPT_COPIES]:
        old.unlink()
    return copy


def _guarded(folder: Path, database: Path, copy: Path | None, change: Callable[[], None]) -> None:
    """Do a change; whatever stops it, the copy comes back, now or at the next start."""
    mark = folder / MARK
    _write(mark, json.dumps({"copy": copy.name if copy else ""}))
    try:
        change()
    except BaseException:
        _back_as_before(copy, database)
        mark.unlink()
        raise
    _close()
    mark.unlink()


def _back_as_before(copy: Path | None, database: Path) -> None:
    """Put the copy back; without one there was no database before, so what was begun goes away."""
    _close()
    if copy is not None:
        put_back(copy, database)
        return
    for ending in ("", "-wal", "-shm"):
        database.with_name(database.name + ending).unlink(missing_ok=True)


def _write(path: Path, text: str) -> None:
    part = path.with_name(path.name + ".part")
    with part.open("w", encoding="utf-8") as file:
        file.write(text)
        file.flush()
        os.fsync(file.fileno())
    os.replace(part, path)


def _put_back_unfinished(folder: Path, database: Path) -> str:
    mark = folder / MARK
    if not mark.is_file():
        return ""
    name = str(json.loads(mark.read_text("utf-8"))["copy"])
    copy = folder / COPIES / name if name else None
    if copy is not None and not copy.is_file():
        must, remedy = "the copy it names must be there", "Put a backup back with desk restore."
        raise InputError(Problem(where=str(mark), must=must, got="no such file", remedy=remedy))
    _back_as_before(copy, database)
    mark.unlink()
    if copy is None:
        return ""
    return "The upgrade before was broken off; the database from before it is back. "
