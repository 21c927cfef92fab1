"""Mistakes that people make in scheme files: each is caught with file, line and remedy."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.order.payer_load import SHIPPED, load_scheme

from .seeded_scheme_tests import FACTS, TESTS
from .seeded_schemes import DEMO, FORM, NAMES, Seed

SEEDS = (*FORM, *NAMES, *TESTS, *FACTS)


@pytest.mark.parametrize("seed", SEEDS, ids=lambda seed: seed.name.replace(" ", "-"))
def test_a_mistake_is_named_by_file_line_and_remedy(seed: Seed, tmp_path: Path) -> None:
    path = tmp_path / "scheme.yaml"
    path.write_text(seed.text, encoding="utf-8")
    with pytest.raises(InputError) as caught:
        load_scheme(str(path))
    told = [str(problem) for problem in caught.value.problems]
    mine = [line for line in told if line.startswith(f"{path}:{seed.line}:")]
    assert any(all(words in line for words in seed.words) for line in mine), told
    assert all(problem.remedy for problem in caught.value.problems)


def test_there_are_more_than_twenty_of_them() -> None:
    assert len({seed.name for seed in SEEDS}) == len(SEEDS) > 20


def test_every_mistake_of_a_file_is_told_at_once(tmp_path: Path) -> None:
    path = tmp_path / "scheme.yaml"
    text = DEMO
    for seed in (NAMES[0], TESTS[1], FACTS[10]):
        text = text.replace(seed.old, seed.new)
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as caught:
        load_scheme(str(path))
    told = str(caught.value)
    assert "chair_mass?" in told
    assert "12 and 12" in told
    assert "'never'" in told
    lines = [int(str(problem).split(":")[1]) for problem in caught.value.problems]
    assert lines == sorted(lines)


@pytest.mark.parametrize("name", SHIPPED)
def test_the_shipped_schemes_have_none(name: str, tmp_path: Path) -> None:
    text = (files("chairwright.order") / "schemes" / f"{name}.yaml").read_text("utf-8")
    path = tmp_path / "copy.yaml"
    path.write_text(text, encoding="utf-8")
    assert load_scheme(str(path)).name == load_scheme(name).name == name


@pytest.mark.parametrize(
    ("name", "words"), [("us-hcpc", "Did you mean us-hcpcs?"), ("medicare", "us-hcpcs, demo")]
)
def test_an_unknown_scheme_is_named(name: str, words: str) -> None:
    with pytest.raises(InputError, match="the scheme must be a shipped one") as caught:
        load_scheme(name)
    assert words in str(caught.value)


def test_a_scheme_file_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="the file must exist"):
        load_scheme(str(tmp_path / "none.yaml"))
