"""Text that is kept elsewhere is read like the file that it would be."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.files.client import LIMIT_BYTES, read_client
from chairwright.files.places import read_places
from chairwright.line.load import load_line
from chairwright.reading import FileText

EXAMPLES = Path(__file__).parents[3] / "examples"
CLIENT = EXAMPLES / "clients" / "avg-001.yaml"


def test_text_reads_as_its_file_does() -> None:
    read = read_client(FileText(str(CLIENT), CLIENT.read_text()))
    assert read == read_client(CLIENT)
    places = EXAMPLES / "places" / "avg-001.yaml"
    assert read_places(FileText(str(places), places.read_text())) == read_places(places)


def test_a_line_reads_from_text() -> None:
    path = Path(load_line("everyday").path)
    assert (
        load_line(FileText("ours", path.read_text())).choices.keys()
        == load_line("everyday").choices.keys()
    )


def test_a_mistake_is_found_at_the_name_and_line() -> None:
    text = CLIENT.read_text().replace("sex: ", "sexx: ", 1)
    with pytest.raises(InputError) as caught:
        read_client(FileText("client AVG-001", text))
    assert caught.value.problems[0].where.startswith("client AVG-001:")


@pytest.mark.parametrize(
    ("text", "told"),
    [("", "empty"), ("a: \x07", "plain text"), ("#" * (LIMIT_BYTES + 1), "larger")],
)
def test_what_a_file_may_not_hold_is_refused_in_text_too(text: str, told: str) -> None:
    with pytest.raises(InputError, match=told):
        read_client(FileText("client", text))
