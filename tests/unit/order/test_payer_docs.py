"""The page about payer schemes is true: its example loads, every key and word is described."""

from __future__ import annotations

import re
from pathlib import Path
from typing import get_args

import pytest
from pydantic import BaseModel

from chairwright.order import payer_schema
from chairwright.order.payer import assess
from chairwright.order.payer_facts import told_facts
from chairwright.order.payer_load import SHIPPED, load_scheme
from chairwright.order.payer_model import CERTAINTY, FactKind, Provided

PAGE = (Path(__file__).parents[3] / "docs" / "reference" / "payer-schemes.md").read_text("utf-8")
EXAMPLE = re.findall(r"^```yaml\n(.*?)^```$", PAGE, re.MULTILINE | re.DOTALL)


def table(title: str) -> list[str]:
    """Words in code letters of the first column of one table."""
    rows = PAGE.partition(f"| {title} |")[2].partition("\n\n")[0].splitlines()[2:]
    return [word for row in rows for word in re.findall(r"`([^`]+)`", row.split("|")[1])]


def test_the_example_is_read_and_judged(tmp_path: Path) -> None:
    (text,) = EXAMPLE
    path = tmp_path / "ours.yaml"
    path.write_text(text, encoding="utf-8")
    scheme = load_scheme(str(path))
    found = assess(scheme, told_facts(scheme, {"weight": "14.9", "hours": "5", "full_time": "yes"}))
    (light,) = found.groups[0].possible
    assert light.entry.code == "LIGHT"
    assert light.covered is not None
    assert light.covered.truth is None
    found = assess(scheme, told_facts(scheme, {"weight": "15", "hours": "1"}))
    assert [each.entry.code for each in found.groups[0].possible] == ["PLAIN"]


def keys(*models: type[BaseModel]) -> set[str]:
    return {field.alias or name for model in models for name, field in model.model_fields.items()}


@pytest.mark.parametrize(
    ("title", "models"),
    [
        ("key at the top", (payer_schema.WrittenScheme,)),
        ("key of a test", (payer_schema.WrittenTest,)),
        ("key of a fact", (payer_schema.WrittenFact,)),
        ("key of `from`", (payer_schema.WrittenFrom,)),
        (
            "key of a class or an accessory",
            (payer_schema.WrittenClass, payer_schema.WrittenAccessory),
        ),
    ],
)
def test_every_key_is_described(title: str, models: tuple[type[BaseModel], ...]) -> None:
    part = PAGE.partition(f"| {title} |")[2].partition("\n\n")[0]
    told = set(re.findall(r"`([a-z_]+)`", part)) | (
        {"otherwise"} if "otherwise:" in part else set()
    )
    assert keys(*models) <= told
    assert set(table(title)) <= keys(*models)


def test_every_word_is_described() -> None:
    assert table("word of `known`") == list(get_args(Provided))
    assert table("kind") == list(get_args(FactKind))
    assert table("certainty") == list(CERTAINTY)
    for key, words in CERTAINTY.items():
        assert f"\n| `{key}` | {words} |" in PAGE
    assert table("name") == list(SHIPPED)
