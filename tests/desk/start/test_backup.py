"""Backup and restore: of a desk in use, checked, and back again."""

from __future__ import annotations

import sqlite3
import stat
import subprocess
from contextlib import closing
from pathlib import Path

from ..kit.process import COMMAND, RunningDesk, command, environment


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


def test_a_byte_lost_or_turned_over_is_noticed_also_inside_a_text(tmp_path: Path) -> None:
    folder, copy = tmp_path / "data", tmp_path / "copy.desk"
    _with_client(folder, "FIRST")
    whole = copy.read_bytes()
    field = b'["keep_until"'
    at = whole.index(field) + 2
    turned = {
        "short.desk": whole[:-1],
        "text.desk": whole[:at] + b"K" + whole[at + 1 :],
        "last.desk": whole[:-1] + bytes([whole[-1] ^ 1]),
        "number.desk": whole[:60] + b"\x01\x02\x03\x04" + whole[64:],
    }
    for name, content in turned.items():
        (tmp_path / name).write_bytes(content)
        refused = command("restore", str(tmp_path / name), folder=folder)
        assert refused.returncode == 2, (name, refused.stdout)
        assert "changed on its way" in refused.stderr
    assert _references(folder) == ["FIRST"]


def test_a_restored_desk_can_be_backed_up_and_restored_again(tmp_path: Path) -> None:
    folder, copy = tmp_path / "data", tmp_path / "copy.desk"
    _with_client(folder, "FIRST")
    assert command("restore", str(copy), folder=folder).returncode == 0
    _with_client(folder, "SECOND")
    again = tmp_path / "again.desk"
    assert command("backup", str(again), folder=folder).returncode == 0
    assert command("restore", str(folder / "desk.sqlite3"), folder=tmp_path / "b").returncode == 0
    assert command("restore", str(again), folder=folder).returncode == 0
    assert _references(folder) == ["FIRST", "SECOND"] == _references(tmp_path / "b")


def test_a_place_that_takes_no_file_is_told_and_nothing_is_left(tmp_path: Path) -> None:
    folder = tmp_path / "data"
    _with_client(folder, "FIRST")
    before = sorted(tmp_path.iterdir())
    refused = command("backup", str(tmp_path / "no" / "such.desk"), folder=folder)
    assert refused.returncode == 2, refused.stderr
    assert "Name another place" in refused.stderr
    full = subprocess.run(
        ["bash", "-c", f"ulimit -f 100; exec {COMMAND[0]} -m chairwright.cli.main desk backup "
         f"{tmp_path / 'full.desk'} --data {folder}"],
        env=environment(), capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert full.returncode == 2, full.stderr
    assert "Traceback" not in full.stderr
    assert sorted(tmp_path.iterdir()) == before
    nothing = command("backup", str(tmp_path / "x.desk"), folder=tmp_path / "empty")
    assert nothing.returncode == 2
    assert "no such file" in nothing.stderr


def test_a_backup_opens_no_door_that_was_shut_since(tmp_path: Path) -> None:
    folder, copy = tmp_path / "data", tmp_path / "copy.desk"
    with RunningDesk(folder) as desk:
        visit = desk.visit()
        page = visit.post("/own/tokens/", {"words": "x", "days": "7", "may": "read"})[1]
        assert "desk_" in page
        assert command("backup", str(copy), folder=folder).returncode == 0
    done = command("restore", str(copy), folder=folder)
    assert "signs in anew" in done.stderr
    with closing(sqlite3.connect(folder / "desk.sqlite3")) as database:
        for words in (
            "SELECT count(*) FROM django_session",
            "SELECT count(*) FROM accounts_signinlink",
            "SELECT count(*) FROM api_token WHERE revoked_at IS NULL",
        ):
            assert database.execute(words).fetchone() == (0,), words
    with RunningDesk(folder) as desk:
        visit.url = desk.url
        assert visit.get("/clients/")[0] == 302


def test_a_client_removed_since_a_backup_is_told_when_it_comes_back(tmp_path: Path) -> None:
    folder, copy = tmp_path / "data", tmp_path / "copy.desk"
    _with_client(folder, "FIRST")
    with closing(sqlite3.connect(folder / "desk.sqlite3")) as database:
        (key,) = database.execute("SELECT id FROM clients_client").fetchone()
    with RunningDesk(folder) as desk:
        address = f"/clients/{key}/keeping/remove/"
        assert desk.visit().post(address, {"reference": "FIRST"})[0] == 302
    assert _references(folder) == []
    done = command("restore", str(copy), folder=folder)
    assert f"/clients/{key}/keeping/remove/" in done.stderr
    assert _references(folder) == ["FIRST"]
