"""What a backup of some time ago must not bring back unsaid: open doors, and removed clients."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

ANEW = (
    "Everybody signs in anew, and tokens have to be made anew. "
    "People and roles are those of the backup: look through them first."
)
SHUT = {
    "django_session": "DELETE FROM django_session",
    "accounts_signinlink": "DELETE FROM accounts_signinlink",
    "api_token": "UPDATE api_token SET revoked_at = CURRENT_TIMESTAMP WHERE revoked_at IS NULL",
}
REMOVED = "SELECT record FROM audit_entry WHERE kind = 'removal' AND record_kind = 'clients.client'"


def let_nobody_in(database: sqlite3.Connection) -> None:
    """End the sessions, links and tokens of a backup: some were ended since on purpose.

    Parameters
    ----------
    database : sqlite3.Connection
    """
    tables = {name for (name,) in database.execute("SELECT name FROM sqlite_master")}
    for table, words in SHUT.items():
        if table in tables:
            database.execute(words)


def removed_since(database: Path, backup: Path) -> list[str]:
    """Return the ids of clients that are in a backup and were removed from the desk since.

    Parameters
    ----------
    database, backup : pathlib.Path
        The desk as it is, and the file that takes its place.
    """
    if not database.is_file():
        return []
    try:
        removed = _column(database, REMOVED)
    except sqlite3.DatabaseError:
        return []
    return sorted(removed & _column(backup, "SELECT id FROM clients_client"))


def _column(file: Path, words: str) -> set[str]:
    with closing(sqlite3.connect(f"{file.absolute().as_uri()}?mode=ro", uri=True)) as database:
        return {str(row[0]) for row in database.execute(words)}
