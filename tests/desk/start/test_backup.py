"""Backup and restore: of a desk in use, checked, and back again."""

from __future__ import annotations

import sqlite3
import stat
from contextlib import closing
from pathlib import Path

from ..kit.process import RunningDesk, command


def _with_client(folder: Path, reference: str) -> None:
    with RunningDesk(folder) as desk:
        visit = desk.visit()
        with closing(sqlite3.connect(folder / "desk.sqlite3")) as database:
            team = database.execute("SELECT id FROM accounts_team").fetchone()[0]
        fields = {"reference": reference, "team": team}
        assert visit.post("/clients/new/", fields)[0] == 302
        if reference == "FIRST":
            done = command("backup", str(folder.parent / "copy.desk"), folder=folder)
            assert done.returncode == 0, done.stderr
            assert "checked" in done.stdout


def _references(folder: Path) -> list[str]:
    with closing(sqlite3.connect(folder / "desk.sqlite3")) as database:
        rows = database.execute("SELECT reference FROM clients_client ORDER BY reference")
        return [row[0] for row in rows]


def test_a_backup_of_a_desk_in_use_comes_back_whole(tmp_path: Path) -> None:
    folder, copy = tmp_path / "data", tmp_path / "copy.desk"
    _with_client(folder, "FIRST")
    assert stat.S_IMODE(copy.stat().st_mode) == 0o600
    _with_client(folder, "SECOND")
    assert _references(folder) == ["FIRST", "SECOND"]
    done = command("restore", str(copy), folder=folder)
    assert done.returncode == 0, done.stderr
    assert _references(folder) == ["FIRST"]
    (before,) = (folder / "copies").glob("before-restore-*.sqlite3")
    assert command("restore", str(before), folder=folder).returncode == 0
    assert _references(folder) == ["FIRST", "SECOND"]


def test_a_backup_comes_back_into_an_empty_folder(tmp_path: Path) -> None:
    _with_client(tmp_path / "data", "FIRST")
    other = tmp_path / "other"
    assert command("restore", str(tmp_path / "copy.desk"), folder=other).returncode == 0
    with RunningDesk(other) as desk:
        assert "FIRST" in desk.visit().get("/clients/")[1]


def test_a_backup_never_goes_over_a_file(tmp_path: Path) -> None:
    _with_client(tmp_path / "data", "FIRST")
    copy = tmp_path / "copy.desk"
    before = copy.read_bytes()
    again = command("backup", str(copy), folder=tmp_path / "data")
    assert again.returncode == 2
    assert "must not be there yet" in again.stderr
    assert copy.read_bytes() == before


def test_restore_refuses_while_the_desk_is_open(tmp_path: Path) -> None:
    _with_client(tmp_path / "data", "FIRST")
    with RunningDesk(tmp_path / "data"):
        refused = command("restore", str(tmp_path / "copy.desk"), folder=tmp_path / "data")
    assert refused.returncode == 2
    assert "close it first" in refused.stderr


def test_restore_refuses_what_is_no_sound_backup(tmp_path: Path) -> None:
    folder, copy = tmp_path / "data", tmp_path / "copy.desk"
    _with_client(folder, "FIRST")
    whole = copy.read_bytes()
    middle = len(whole) // 2
    damaged = {
        "other.desk": b"not a database at all",
        "cut.desk": whole[: middle // 4096 * 4096],
        "torn.desk": whole[:8192] + b"\xff" * (len(whole) - 8192),
        "missing.desk": None,
    }
    for name, content in damaged.items():
        if content is not None:
            (tmp_path / name).write_bytes(content)
        refused = command("restore", str(tmp_path / name), folder=folder)
        assert refused.returncode == 2, (name, refused.stderr)
        assert name in refused.stderr
        assert "Traceback" not in refused.stderr
        assert _references(folder) == ["FIRST"], name


def test_restore_refuses_a_backup_of_a_newer_program(tmp_path: Path) -> None:
    _with_client(tmp_path / "data", "FIRST")
    with closing(sqlite3.connect(tmp_path / "copy.desk")) as database, database:
        database.execute(
            "INSERT INTO django_migrations (app, name, applied) VALUES ('jobs', '0999_later', 0)"
        )
    refused = command("restore", str(tmp_path / "copy.desk"), folder=tmp_path / "data")
    assert refused.returncode == 2
    assert "Update the program first" in refused.stderr
