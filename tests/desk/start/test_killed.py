"""Power cuts: the desk is killed during saves and during an upgrade; what it acknowledged stays."""

from __future__ import annotations

import sqlite3
import subprocess
import sys
import threading
from contextlib import closing
from http.client import HTTPException
from pathlib import Path

import pytest

from ..kit.process import RunningDesk, command, environment

SAVES = 200
CUTS = (31, 77, 120, 166)

BACKWARDS = """
import sys
from pathlib import Path
from chairwright_desk import paths
paths.prepare(Path(sys.argv[1]))
import django
django.setup()
from django.core.management import call_command
call_command("migrate", "jobs", "zero", verbosity=0)
"""
HALF_WAY = """
import sys, time
from pathlib import Path
from chairwright_desk import paths
folder = paths.prepare(Path(sys.argv[1]))
import django
django.setup()
from django.db import connection
from chairwright_desk.start import upgrade

def half():
    with connection.cursor() as cursor:
        cursor.execute("CREATE TABLE jobs_job (broken integer)")
        if sys.argv[2] != "new":
            cursor.execute("DELETE FROM clients_client")
    print("half-way", flush=True)
    if sys.argv[2] == "fail":
        raise RuntimeError("the step failed")
    time.sleep(60)

upgrade._migrate = half
upgrade.upgrade_folder(folder, paths.database_file())
"""


def _rows(folder: Path, query: str) -> list[tuple[str, ...]]:
    with closing(sqlite3.connect(folder / "desk.sqlite3")) as database:
        return list(database.execute(query))


def _references(folder: Path) -> set[str]:
    return {row[0] for row in _rows(folder, "SELECT reference FROM clients_client")}


def _sound(folder: Path) -> bool:
    return _rows(folder, "PRAGMA integrity_check") == [("ok",)] and not _rows(
        folder, "PRAGMA foreign_key_check"
    )


def test_no_acknowledged_save_is_lost_when_the_desk_is_killed(tmp_path: Path) -> None:
    folder = tmp_path / "data"
    desk = RunningDesk(folder)
    visit = desk.visit()
    team = _rows(folder, "SELECT id FROM accounts_team")[0][0]
    acknowledged: set[str] = set()
    cuts = 0
    for number in range(SAVES):
        if number in CUTS:
            threading.Timer(0.004 * (cuts + 1), desk.kill).start()
        reference = f"CUT-{number:03d}"
        try:
            status, text = visit.post("/clients/new/", {"reference": reference, "team": team})
            assert status == 302, text[:1000]
            acknowledged.add(reference)
        except (OSError, HTTPException):
            cuts += 1
            desk.kill()
            assert acknowledged <= _references(folder)
            assert _sound(folder)
            desk = RunningDesk(folder)
            visit.url = desk.url
    desk.kill()
    assert cuts == len(CUTS)
    assert acknowledged <= _references(folder)
    assert len(acknowledged) >= SAVES - len(CUTS)
    assert _sound(folder)
    # Each save and its line in the trail are one: there is no client without its line.
    noted = _rows(folder, "SELECT record FROM audit_entry WHERE record_kind = 'clients.client'")
    kept = _rows(folder, "SELECT id FROM clients_client")
    assert {row[0] for row in kept} == {row[0] for row in noted}


@pytest.fixture
def older(tmp_path: Path) -> Path:
    """A desk with a client, of a program that had no jobs yet."""
    folder = tmp_path / "data"
    with RunningDesk(folder) as desk:
        team = _rows(folder, "SELECT id FROM accounts_team")[0][0]
        made = desk.visit().post("/clients/new/", {"reference": "KEPT-1", "team": team})
        assert made[0] == 302
    subprocess.run(
        [sys.executable, "-c", BACKWARDS, str(folder)], env=environment(), check=True, timeout=60
    )
    return folder


def _half(folder: Path, how: str) -> subprocess.Popen[str]:
    process = subprocess.Popen(
        [sys.executable, "-c", HALF_WAY, str(folder), how],
        env=environment(),
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
    )
    assert process.stdout is not None
    assert process.stdout.readline() == "half-way\n"
    return process


def test_an_upgrade_killed_half_way_is_undone_and_done_again(older: Path) -> None:
    with _half(older, "hang") as process:
        process.kill()
    assert _references(older) == set(), "the half-way state is really a broken one"
    with RunningDesk(older) as desk:
        assert "KEPT-1" in desk.visit().get("/clients/")[1]
    assert "the database from before it is back" in (older.parent / "data.log").read_text()
    assert _sound(older)
    assert not (older / "upgrade.json").exists()


def test_an_upgrade_that_fails_leaves_the_database_as_it_was(older: Path) -> None:
    before = (older / "desk.sqlite3").read_bytes()
    with _half(older, "fail") as process:
        assert process.wait(30) != 0
    assert _references(older) == {"KEPT-1"}
    assert len((older / "desk.sqlite3").read_bytes()) == len(before)
    assert not (older / "upgrade.json").exists()
    copies = list((older / "copies").glob("before-upgrade-*.sqlite3"))
    assert len(copies) == 1


@pytest.mark.parametrize("after_s", [0.35, 0.5, 0.65, 0.8])
def test_a_start_killed_at_any_moment_of_its_upgrade_leaves_a_sound_desk(
    older: Path, after_s: float
) -> None:
    words = [sys.executable, "-m", "chairwright.cli.main", "desk", "--no-open", "--port", "0"]
    process = subprocess.Popen(
        [*words, "--data", str(older)],
        env=environment(),
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    timer = threading.Timer(after_s, process.kill)
    timer.start()
    process.wait(30)
    timer.join()
    with RunningDesk(older) as desk:
        visit = desk.visit()
        assert "KEPT-1" in visit.get("/clients/")[1]
        assert visit.get("/work/")[0] == 200
    assert _sound(older)


def test_a_first_start_killed_half_way_begins_anew(tmp_path: Path) -> None:
    folder = tmp_path / "data"
    folder.mkdir()
    (folder / "desk.sqlite3").touch()
    with _half(folder, "new") as process:
        process.kill()
    assert [row[0] for row in _rows(folder, "SELECT name FROM sqlite_master")] == ["jobs_job"]
    with RunningDesk(folder) as desk:
        assert desk.visit().get("/clients/")[0] == 200


def test_a_database_of_a_newer_program_is_refused(older: Path) -> None:
    with closing(sqlite3.connect(older / "desk.sqlite3")) as database, database:
        database.execute(
            "INSERT INTO django_migrations (app, name, applied) VALUES ('jobs', '0999_later', 0)"
        )
    refused = command("--no-open", folder=older)
    assert refused.returncode == 2
    assert "a newer program" in refused.stderr
    assert _references(older) == {"KEPT-1"}
