"""The real worker beside a real desk: progress, a stop at once, and a power cut in the middle."""

from __future__ import annotations

import re
import sqlite3
import time
from contextlib import closing, suppress
from pathlib import Path

import pytest

from ..kit.process import RunningDesk, Visit

PATIENCE_S = 15


def put(folder: Path, kind: str, seconds: float) -> str:
    """Put a job of the owner into the queue and return its id."""
    job = f"j{time.monotonic_ns()}"[:16]
    with closing(sqlite3.connect(folder / "desk.sqlite3")) as database, database:
        database.execute(
            "INSERT INTO jobs_job (id, kind, words, owner_id, team_id, record, back, arguments,"
            " state, done, whole, said, trouble, cancel_asked, created) SELECT ?, ?, 'Waiting',"
            " u.id, t.id, '', '', ?, 'waiting', 0, 0, '', '', 0, '2026-01-01'"
            " FROM accounts_user u, accounts_team t",
            (job, kind, f'{{"seconds": {seconds}}}'),
        )
    return job


def state(folder: Path, job: str) -> tuple[str, int]:
    """Return a job's state and how far it is."""
    with closing(sqlite3.connect(folder / "desk.sqlite3")) as database:
        row = database.execute("SELECT state, done FROM jobs_job WHERE id = ?", (job,)).fetchone()
    return (str(row[0]), int(row[1]))


def wait_for(folder: Path, job: str, wanted: str, done: int = 0) -> None:
    """Wait until a job is in a state and at least so far."""
    end = time.monotonic() + PATIENCE_S
    while state(folder, job)[0] != wanted or state(folder, job)[1] < done:
        assert time.monotonic() < end, (job, state(folder, job), wanted)
        time.sleep(0.05)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "data"


def test_work_reports_and_ends(folder: Path) -> None:
    with RunningDesk(folder) as desk:
        job = put(folder, "jobs.rest", 1.0)
        wait_for(folder, job, "running", 1)
        wait_for(folder, job, "done")
        assert "Done" in desk.visit().get(f"/work/{job}/")[1]


def test_work_that_says_nothing_is_stopped_at_once(folder: Path) -> None:
    with RunningDesk(folder) as desk:
        visit: Visit = desk.visit()
        job = put(folder, "jobs.rest", -60)
        wait_for(folder, job, "running")
        began = time.monotonic()
        assert visit.post(f"/work/{job}/stop/", {}, page=f"/work/{job}/")[0] == 302
        wait_for(folder, job, "cancelled")
        assert time.monotonic() - began < 3
        after = put(folder, "jobs.rest", 0.1)
        wait_for(folder, after, "done")


def test_work_cut_off_by_a_power_cut_is_marked_and_can_be_started_again(folder: Path) -> None:
    desk = RunningDesk(folder)
    visit = desk.visit()
    job = put(folder, "jobs.rest", 3.0)
    wait_for(folder, job, "running", 1)
    desk.kill()
    with RunningDesk(folder) as desk:
        visit.url = desk.url
        wait_for(folder, job, "interrupted")
        text = visit.get(f"/work/{job}/")[1]
        assert "Broken off when the desk stopped" in text
        assert visit.post(f"/work/{job}/again/", {}, page=f"/work/{job}/")[0] == 302
        listed = re.findall(r"/work/(\w{16})/", visit.get("/work/")[1])
        (again,) = set(listed) - {job}
        wait_for(folder, again, "done")


def test_the_worker_goes_with_its_desk_however_early_that_is_killed(folder: Path) -> None:
    for _ in range(3):
        RunningDesk(folder).kill()
    end, mine = time.monotonic() + PATIENCE_S, str(folder).encode()
    while left := _workers(mine):
        assert time.monotonic() < end, left
        time.sleep(0.1)


def _workers(folder: bytes) -> list[str]:
    found = []
    for process in Path("/proc").glob("[0-9]*"):
        with suppress(OSError):
            words, environ = (process / name for name in ("cmdline", "environ"))
            if b"jobs.worker" in words.read_bytes() and folder in environ.read_bytes():
                found.append(process.name)
    return found
