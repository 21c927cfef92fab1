"""A real desk whose disk is full, whose database is held, or which is sent 51 MB."""

from __future__ import annotations

import resource
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from ..kit.process import RunningDesk


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with a desk in it."""
    with RunningDesk(tmp_path / "data"):
        pass
    return tmp_path / "data"


def _team(folder: Path) -> str:
    with closing(sqlite3.connect(folder / "desk.sqlite3")) as database:
        return str(database.execute("SELECT id FROM accounts_team").fetchone()[0])


def test_no_space_left_is_told_and_the_input_kept(folder: Path) -> None:
    # The journal may grow to a size that a few saves reach: then the system refuses to write.
    most = 600_000

    def full() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (most, most))

    with RunningDesk(folder, before=full) as desk:
        visit, team, status, saved = desk.visit(), _team(folder), 302, []
        for number in range(200):
            reference = f"FULL-{number:03d}"
            status, text = visit.post("/clients/new/", {"reference": reference, "team": team})
            if status != 302:
                break
            saved.append(reference)
        assert status == 503, "the limit was reached"
        assert f'name="reference" value="{reference}"' in text
        assert "cannot save just now" in text
    with RunningDesk(folder) as desk:
        listed = desk.visit().get("/clients/")[1]
    assert [each for each in saved if each not in listed] == []


def test_a_database_held_by_another_program_is_told_and_the_input_kept(folder: Path) -> None:
    with RunningDesk(folder) as desk:
        visit, fields = desk.visit(), {"reference": "LOCK-1", "team": _team(folder)}
        with closing(sqlite3.connect(folder / "desk.sqlite3")) as other:
            other.execute("BEGIN IMMEDIATE")
            status, text = visit.post("/clients/new/", fields)
            assert status == 503
            assert 'name="reference" value="LOCK-1"' in text
            assert visit.get("/clients/")[0] == 200, "reading goes on"
            other.rollback()
        assert visit.post("/clients/new/", fields)[0] == 302


def test_51_megabytes_get_a_clear_page(folder: Path) -> None:
    with RunningDesk(folder) as desk:
        fields = {"reference": "x" * 51_000_000}
        status, text = desk.visit().post("/clients/new/", fields)
    assert status == 413
    assert "up to 50 MB" in text


def test_the_log_holds_nothing_of_what_was_typed(folder: Path) -> None:
    log = folder.parent / "data.log"
    with RunningDesk(folder) as desk:
        visit = desk.visit()
        words = "Wilhelmine-T6"
        visit.post("/clients/new/", {"reference": words, "team": _team(folder)})
        visit.post("/clients/new/", {"reference": words, "team": "wrong"})
        visit.post("/clients/", {"search": words})
        visit.post("/drafts/clients.new/", {"reference": words}, page="/clients/new/")
        visit.get("/no/such/page/")
        again = {"reference": words, "team": _team(folder)}
        with closing(sqlite3.connect(folder / "desk.sqlite3")) as other:
            other.execute("ALTER TABLE clients_client RENAME TO elsewhere")
            other.commit()
        assert visit.post("/clients/", {"search": words}, page="/own/")[0] == 503
        assert visit.post("/clients/new/", again, page="/own/")[0] == 503
    told = log.read_text()
    assert "OperationalError" in told, "the fault itself is told"
    assert "clients/views.py" in told, "and its place"
    assert words not in told
