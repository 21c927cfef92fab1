"""The tables of rules and limits: every row is cited, and the reference page is true."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.figures.registry import FIGURES
from chairwright.person.measures import CATALOGUE
from chairwright.tables.load import load_sources, load_table
from chairwright.targets.envelope import DEFAULT_ORDER
from chairwright.targets.rules import ENVELOPE, RULE_SETS, all_rules

PAGE = Path(__file__).parents[3] / "docs" / "reference" / "rule-sets.md"
AUDIENCES = {
    "any", "hands", "no_hands", "foot_propelling", "foot_supports", "feet_on_supports", "child",
}  # fmt: skip
# The legend of certainty, one wording for each tag.
WORDS = {
    "R": "read in the source",
    "A": "read in the abstract only",
    "R2": "restated by a secondary source",
    "R2, weak": "restated by a secondary source, one weak witness",
    "R2/M": "restated by a secondary source, landmark from memory, unverified",
    "M": "from memory, unverified",
    "D": "derived",
    "common": "common practice, no source",
}
TABLES = ("sizing_rules", "chair_limits")
ROWS = [(name, row) for name in TABLES for row in load_table("sizing", name)]
IDS = [row.get("rule") or f"{row['figure']} {row['kind']}" for _, row in ROWS]


@pytest.mark.parametrize("row", [row for _, row in ROWS], ids=IDS)
def test_each_row_names_a_source_with_its_certainty(row: dict[str, str]) -> None:
    assert row["certainty"] == WORDS[row["tag"]]
    assert row["place"]
    assert load_sources()[row["source"]]


@pytest.mark.parametrize(("table", "row"), ROWS, ids=IDS)
def test_each_row_speaks_to_somebody(table: str, row: dict[str, str]) -> None:
    assert row["applies_to"] in AUDIENCES


@pytest.mark.parametrize(("table", "row"), ROWS, ids=IDS)
def test_the_page_prints_each_row(table: str, row: dict[str, str]) -> None:
    page = PAGE.read_text(encoding="utf-8")
    if table == "sizing_rules":
        ends = f"{row['add_low']} to {row['add_high']} {row['unit']}"
        cells: tuple[str, ...] = (row["rule"], row["dimension"], row["rule_set"], row["base"], ends)
    else:
        ends = f"{row['low']} to {row['high']}"
        cells = (row["figure"], row["kind"], ends, row["weight"])
    assert f"| {' | '.join(cells)} |" in page
    assert f"{row['source']}, {row['place']}" in page


def test_rules_start_from_measures_in_the_catalogue() -> None:
    bases = {rule.base for rule in all_rules().values()}
    assert bases - set(CATALOGUE) == {"none", "chair_seat_width"}


def test_rule_keys_are_unique() -> None:
    assert len(all_rules()) == len(load_table("sizing", "sizing_rules"))


def test_each_rule_set_has_rules_and_a_place_in_the_order() -> None:
    used = {rule.rule_set for rule in all_rules().values()} - {"other"}
    assert used == set(RULE_SETS) - {ENVELOPE}
    assert set(DEFAULT_ORDER) == used


def test_limits_are_about_figures_and_have_an_end() -> None:
    rows = load_table("sizing", "chair_limits")
    assert {row["figure"] for row in rows} <= set(FIGURES)
    assert all(row["low"] or row["high"] for row in rows)


def test_a_figure_from_memory_or_a_child_rule_never_counts() -> None:
    counting = [rule for rule in all_rules().values() if rule.use in ("range", "bound")]
    assert not [rule.key for rule in counting if "M" in rule.tag]
    assert [rule.key for rule in counting if rule.applies_to == "child"] == ["werner_child_depth"]
