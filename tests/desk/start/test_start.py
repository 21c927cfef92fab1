"""The command from an empty folder: what it makes, who gets in, what it says when it cannot."""

from __future__ import annotations

import sqlite3
import stat
import subprocess
from contextlib import closing
from pathlib import Path

from ..kit.process import COMMAND, RunningDesk, Visit, command, environment


def test_an_empty_folder_becomes_a_desk_and_the_link_opens_it_once(tmp_path: Path) -> None:
    folder = tmp_path / "data"
    with RunningDesk(folder) as desk:
        assert desk.url.startswith("http://127.0.0.1:")
        stranger = Visit(desk.url)
        assert stranger.get("/clients/")[0] == 302
        looked = Visit(desk.url)
        assert looked.get(desk.link)[0] == 200
        assert looked.get(desk.link)[0] == 200, "a look does not use the link up"
        visit = desk.visit()
        assert visit.get("/clients/")[0] == 200
        assert stranger.get(desk.link)[0] == 404
    for name in ("secret", "desk.sqlite3"):
        assert stat.S_IMODE((folder / name).stat().st_mode) == 0o600, name
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700


def test_a_second_start_keeps_data_secret_and_sessions(tmp_path: Path) -> None:
    folder = tmp_path / "data"
    with RunningDesk(folder) as desk:
        visit = desk.visit()
        team = _team(folder)
        made = visit.post("/clients/new/", {"reference": "BAR-006", "team": team})
        assert made[0] == 302
    secret = (folder / "secret").read_text()
    with RunningDesk(folder) as desk:
        visit.url = desk.url
        assert "BAR-006" in visit.get("/clients/")[1]
        assert (folder / "secret").read_text() == secret


def test_the_database_is_set_to_keep_every_save(tmp_path: Path) -> None:
    from chairwright_desk.settings import sqlite

    options = sqlite(tmp_path / "a.sqlite3")["OPTIONS"]
    assert options["transaction_mode"] == "IMMEDIATE"
    with closing(sqlite3.connect(tmp_path / "a.sqlite3")) as database:
        database.executescript(options["init_command"])
        asked = ("journal_mode", "synchronous", "foreign_keys", "busy_timeout")
        found = [database.execute(f"PRAGMA {name}").fetchone()[0] for name in asked]
    assert found == ["wal", 2, 1, 5000]


def test_two_desks_on_one_folder_are_refused(tmp_path: Path) -> None:
    with RunningDesk(tmp_path / "data"):
        second = command("--no-open", folder=tmp_path / "data")
    assert second.returncode == 2
    assert "no other desk may have it open" in second.stderr


def test_a_port_in_use_is_named(tmp_path: Path) -> None:
    with RunningDesk(tmp_path / "one") as desk:
        port = desk.url.rpartition(":")[2]
        second = command("--no-open", "--port", port, folder=tmp_path / "two")
    assert second.returncode == 2
    assert f"--port {port}" in second.stderr


def test_a_folder_that_cannot_be_written_is_named(tmp_path: Path) -> None:
    folder = tmp_path / "data"
    with RunningDesk(folder):
        pass
    folder.chmod(0o500)
    # Root may write anywhere: without these two capabilities it is like everybody else.
    bare = ["setpriv", "--bounding-set", "-dac_override,-dac_read_search"]
    for file in folder.iterdir():
        file.chmod(0o400)
    result = subprocess.run(
        [*bare, *COMMAND, "--no-open", "--data", str(folder)],
        env=environment(),
        capture_output=True,
        text=True,
        check=False,
        timeout=30,
    )
    folder.chmod(0o700)
    assert result.returncode == 2
    assert "it must be possible to read and write here" in result.stderr
    assert str(folder) in result.stderr


def test_people_are_added_from_the_command_line(tmp_path: Path) -> None:
    folder = tmp_path / "data"
    with RunningDesk(folder) as desk:
        wrong = command("adduser", "anna", "--team", "My team", "--role", "king", folder=folder)
        assert wrong.returncode == 2
        added = command("adduser", "anna", "--team", "My team", "--role", "builder", folder=folder)
        assert added.returncode == 0, added.stderr
        link = "/sign-in/" + added.stdout.strip().rpartition("/sign-in/")[2]
        visit = Visit(desk.url)
        assert visit.post(link, {})[0] == 302
        assert visit.get("/clients/new/")[0] == 403


def _team(folder: Path) -> str:
    with closing(sqlite3.connect(folder / "desk.sqlite3")) as database:
        return str(database.execute("SELECT id FROM accounts_team").fetchone()[0])


def test_the_database_is_brought_up_to_date_without_opening_the_desk(tmp_path: Path) -> None:
    for _ in range(2):
        done = command("upgrade", folder=tmp_path / "data")
        assert done.returncode == 0, done.stderr
        assert "up to date" in done.stdout
    with closing(sqlite3.connect(tmp_path / "data" / "desk.sqlite3")) as database:
        assert database.execute("SELECT count(*) FROM accounts_user").fetchone() == (0,)
