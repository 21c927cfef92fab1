"""Set-up files: written whole or not at all, and read back with every mistake by line."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.files.setup import read_setup, write_setup
from chairwright.files.writing import write_file
from chairwright.line.choices import CHOICES

from .samples import setup_file

CODES = dict.fromkeys(CHOICES, "X1")
CUSHION = 5 + list(CHOICES).index("cushion")
"""Line of the sample's cushion: format, client, line and choices come first."""
PAST_END = 5 + len(CHOICES)


def refused(path: Path) -> list[str]:
    with pytest.raises(InputError) as caught:
        read_setup(path)
    return [str(problem).removeprefix(f"{path.parent}/") for problem in caught.value.problems]


@pytest.mark.parametrize(
    "code", ["A1", "FM-2", "1E5", "007", "none", "null", "true", "-", "a: b", "é#"]
)
@pytest.mark.parametrize("line", ["everyday", "lines/mine.yaml"])
def test_what_was_written_is_read_back(tmp_path: Path, code: str, line: str) -> None:
    path = tmp_path / "setups" / "one.yaml"
    line = line if line == "everyday" else str(tmp_path / line)
    write_setup(path, tmp_path / "clients" / "t-1.yaml", line, CODES | {"cushion": code})
    found = read_setup(path)
    assert found.choices == CODES | {"cushion": code}
    assert list(found.choices) == list(CHOICES)
    assert found.client_path.resolve() == tmp_path / "clients" / "t-1.yaml"
    assert found.line == line or Path(found.line).resolve() == Path(line)
    assert 'client: "../clients/t-1.yaml"' in path.read_text(encoding="utf-8")
    assert found.where["cushion"].startswith(f"{path}:")


def test_paths_count_from_the_set_up_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    write_setup("a/one.yaml", "b/t-1.yaml", "./mine.yaml", CODES)
    assert read_setup("a/one.yaml").client_path == Path("a/../b/t-1.yaml")
    assert os.path.normpath(read_setup("a/one.yaml").line) == "mine.yaml"


@pytest.mark.parametrize(
    ("more", "swap", "line", "part"),
    [
        ("", ("set-up 2", "set-up 1"), 1, "format: chairwright set-up 2"),
        ("", ("chairwright set-up 2", "chairwright client 1"), 1, "format: chairwright set-up 2"),
        ("", ("client: client.yaml\n", ""), 1, "client must be given"),
        ("", ("line: everyday", "line:"), 3, "line must be given"),
        ("", ("  cushion: X1\n", ""), 4, "cushion must be given; got nothing. Add cushion:"),
        ("", ("  cushion: X1", "  cushion: [X1]"), CUSHION, "it must be text"),
        ("", ("  cushion: X1", "  cusion: X1"), CUSHION, "Did you mean cushion?"),
        ("extra: 1\n", ("", ""), PAST_END, "got 'extra'"),
        (
            "  cushion: X2\n",
            ("", ""),
            PAST_END,
            f"'cushion' a second time (first on line {CUSHION})",
        ),
    ],
)
def test_each_mistake_is_answered_with_its_line(
    tmp_path: Path, more: str, swap: tuple[str, str], line: int, part: str
) -> None:
    messages = refused(setup_file(tmp_path, more, swap))
    assert any(m.startswith(f"setup.yaml:{line}: ") and part in m for m in messages)


def test_an_existing_file_is_replaced_only_when_asked(tmp_path: Path) -> None:
    path = tmp_path / "a.txt"
    write_file(path, "first")
    with pytest.raises(InputError, match="must not exist yet"):
        write_file(path, "second")
    assert path.read_text(encoding="utf-8") == "first"
    write_file(path, b"second", overwrite=True)
    assert path.read_bytes() == b"second"
    assert [each.name for each in tmp_path.iterdir()] == ["a.txt"]


def test_a_failed_write_leaves_the_old_file_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "a.txt"
    write_file(path, "first")

    def full(_descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("chairwright.files.writing.os.fsync", full)
    with pytest.raises(InputError, match="no space left on device"):
        write_file(path, "second", overwrite=True)
    assert path.read_text(encoding="utf-8") == "first"
    assert [each.name for each in tmp_path.iterdir()] == ["a.txt"]


def test_a_folder_that_cannot_be_made_is_named(tmp_path: Path) -> None:
    (tmp_path / "plain").write_text("x", encoding="utf-8")
    with pytest.raises(InputError, match="it must be possible to write here"):
        write_file(tmp_path / "plain" / "a.txt", "x")
    with pytest.raises(InputError, match="it must be possible to write here"):
        write_file(tmp_path, "x", overwrite=True)


def test_a_new_file_has_the_usual_permissions(tmp_path: Path) -> None:
    mask = os.umask(0o022)
    try:
        write_file(tmp_path / "a.txt", "x")
    finally:
        os.umask(mask)
    assert (tmp_path / "a.txt").stat().st_mode & 0o777 == 0o644
