"""A client file read and seated, for tests of the command line."""

from __future__ import annotations

from pathlib import Path

from chairwright.files.client import read_client
from chairwright.fitting.person import Person, read_person


def person_of(path: Path) -> Person:
    """Read, complete and seat the client of a file."""
    return read_person(read_client(path))
