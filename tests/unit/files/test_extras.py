"""``extras`` in client and set-up files."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.files.client import read_client
from chairwright.files.setup import read_setup, write_setup
from chairwright.line.choices import CHOICES

from .samples import client_file, setup_file


def test_a_client_names_extras_and_their_lines(tmp_path: Path) -> None:
    client = read_client(client_file(tmp_path, "extras:\n  - ET\n  - EB\n"))
    assert client.extras == ("ET", "EB")
    assert client.where["extras.EB"].endswith("client.yaml:11")
    assert read_client(client_file(tmp_path, "extras: ET\n")).extras == ("ET",)
    assert read_client(client_file(tmp_path, "extras: []\n")).extras == ()
    assert read_client(client_file(tmp_path)).extras == ()


@pytest.mark.parametrize(
    ("more", "message"),
    [
        ("extras: [ET, ET]\n", "client.yaml:9: extras: each code must stand once"),
        ("extras:\n", "client.yaml:9: extras: extras must be given; got nothing. Add extras: ET"),
        ("extras: {ET: 1}\n", "client.yaml:9: extras: it must be text"),
    ],
)
def test_extras_that_cannot_be_read_are_refused(tmp_path: Path, more: str, message: str) -> None:
    with pytest.raises(InputError) as refused:
        read_client(client_file(tmp_path, more))
    assert message in str(refused.value)


def test_a_set_up_file_names_extras(tmp_path: Path) -> None:
    found = read_setup(setup_file(tmp_path, "extras: [EB]\n"))
    assert found.extras == ("EB",)
    assert found.where["extras.EB"] == f"{found.path}:{5 + len(CHOICES)}"
    assert read_setup(setup_file(tmp_path)).extras == ()


def test_what_was_written_is_read_again(tmp_path: Path) -> None:
    path, codes = tmp_path / "one.yaml", dict.fromkeys(CHOICES, "X1")
    write_setup(path, tmp_path / "c.yaml", "everyday", codes, extras=["ET", "007"])
    assert read_setup(path).extras == ("ET", "007")
    write_setup(path, tmp_path / "c.yaml", "everyday", codes, overwrite=True)
    assert "extras" not in path.read_text("utf-8")
