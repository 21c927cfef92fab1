"""A schema's complaints as problems with line, field and remedy."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import pytest
from pydantic import BaseModel, ConfigDict, Field

from chairwright.errors import InputError
from chairwright.reading import read_yaml
from chairwright.validation import check_model, suggest


class Part(BaseModel):
    """A part of the sample schema."""

    model_config = ConfigDict(extra="forbid")
    code: str
    side: Literal["left", "right"] | None = None


class Sample(BaseModel):
    """A sample schema with every shape that a file may have."""

    model_config = ConfigDict(extra="forbid")
    mass_kg: Annotated[float, Field(gt=0)]
    parts: list[Part] = []
    named: dict[str, Part] = {}
    holes: dict[int, float] = {}
    one: Part | None = None


def check(tmp_path: Path, text: str) -> list[str]:
    path = tmp_path / "a.yaml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as caught:
        check_model(Sample, read_yaml(path))
    return [str(problem).removeprefix(f"{tmp_path}/") for problem in caught.value.problems]


def test_a_good_file_becomes_the_model(tmp_path: Path) -> None:
    path = tmp_path / "a.yaml"
    path.write_text("mass_kg: 3\nholes: {1: 64}\n", encoding="utf-8")
    assert check_model(Sample, read_yaml(path)) == Sample(mass_kg=3.0, holes={1: 64.0})


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("mass_kg: -3\n", "a.yaml:1: mass_kg: it must be greater than 0; got -3. "),
        ("parts: []\n", "a.yaml:1: mass_kg must be given; got nothing. Add mass_kg here."),
        ("mass_kg: 1\nmas_kg: 2\n", "a.yaml:2: mas_kg: a key must be one that this file knows; "
         "got 'mas_kg'. Did you mean mass_kg?"),
        ("mass_kg: 1\nparts:\n  - {code: A, sde: left}\n", "a.yaml:3: parts.sde: a key must be "
         "one that this file knows; got 'sde'. Did you mean side?"),
        ("mass_kg: 1\nnamed:\n  x: {code: A, sde: left}\n", "a.yaml:3: named.x.sde: a key must "
         "be one that this file knows; got 'sde'. Did you mean side?"),
        ("mass_kg: 1\none:\n  code: A\n  sde: left\n", "a.yaml:4: one.sde: a key must be one "
         "that this file knows; got 'sde'. Did you mean side?"),
        ("mass_kg: 1\nparts:\n  - code: A\n    side: lft\n", "a.yaml:4: parts.side: it must be "
         "'left' or 'right'; got 'lft'. Did you mean left?"),
        ("mass_kg: 1\nholes:\n  2: x\n", "a.yaml:3: holes: it must be a valid number, "),
    ],
)  # fmt: skip
def test_each_complaint_has_line_field_and_remedy(tmp_path: Path, text: str, message: str) -> None:
    (found,) = check(tmp_path, text)
    assert found.startswith(message)


def test_all_complaints_come_sorted_by_line(tmp_path: Path) -> None:
    found = check(tmp_path, "parts:\n  - {code: A, side: x}\n  - {cod: B}\nmass_kg: none\n")
    assert [message.split(": ")[0] for message in found] == [
        "a.yaml:2", "a.yaml:3", "a.yaml:3", "a.yaml:4",
    ]  # fmt: skip


def test_a_far_off_word_is_answered_with_what_is_known() -> None:
    assert suggest("xyz", ["left", "right"]) == "Known here: left, right."
    assert suggest("xyz", map(str, range(20))).endswith("10, 11 and 8 more.")
    assert suggest("xyz", []) == "Take it out."
