"""The published tables: every one is cited, readable and as printed."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

import pytest

from chairwright.tables.load import find_row, load_sidecar, load_sources, load_table

ROOT = files("chairwright.tables")
TOPICS = (
    "body", "population", "wheels", "experiments", "statistics", "sizing", "access", "rolling",
)  # fmt: skip
TABLES = [
    (topic, place.name.removesuffix(".csv"))
    for topic in TOPICS
    for place in sorted(ROOT.joinpath(topic).iterdir(), key=lambda p: p.name)
    if place.name.endswith(".csv")
]
KEYS = [
    "title",
    "source",
    "citation",
    "place",
    "tag",
    "units",
    "sample",
    "precision",
    "how_read",
    "notes",
]


def test_there_are_tables() -> None:
    assert len(TABLES) >= 18


@pytest.mark.parametrize(("topic", "name"), TABLES)
def test_every_table_has_rows_and_a_full_citation(topic: str, name: str) -> None:
    rows = load_table(topic, name)
    assert rows
    assert all(None not in row and None not in row.values() for row in rows)
    sidecar = load_sidecar(topic, name)
    assert list(sidecar) == KEYS
    assert all(sidecar[key] for key in KEYS)
    assert sidecar["source"] in load_sources()


def test_every_source_is_used() -> None:
    used = {load_sidecar(topic, name)["source"] for topic, name in TABLES}
    rows = [row for topic, name in TABLES for row in load_table(topic, name)]
    used |= {row["source"] for row in rows if "source" in row}
    assert used <= set(load_sources())
    # What no table holds must be named beside a formula.
    formulas = Path(str(files("chairwright"))).joinpath("figures").glob("*.py")
    text = " ".join(" ".join(path.read_text(encoding="utf-8") for path in formulas).split())
    assert [name for name in set(load_sources()) - used if name not in text] == []


def test_find_row_wants_exactly_one() -> None:
    assert find_row("body", "osterkamp1995_amputation", part="foot")["description"] == "foot"
    with pytest.raises(LookupError, match="one row"):
        find_row("body", "osterkamp1995_amputation", part="tail")
    with pytest.raises(LookupError, match="got 2"):
        find_row("experiments", "loane_kirby1985_axle_position", chair="lightweight")


def test_missing_table() -> None:
    with pytest.raises(FileNotFoundError):
        load_table("body", "no_such_table")


@pytest.mark.parametrize(
    ("marking", "outside_mm"),
    [("25-501", 551), ("25-540", 590), ("37-540", 614), ("25-559", 609), ("25-590", 640)],
)
def test_tyre_outside_diameter_is_bead_seat_plus_twice_the_width(
    marking: str, outside_mm: float
) -> None:
    row = find_row("wheels", "iso5775_tyre_sizes", marking=marking)
    width, bead_seat = (float(part) for part in marking.split("-"))
    assert (float(row["tyre_width_mm"]), float(row["bead_seat_diameter_mm"])) == (width, bead_seat)
    assert float(row["outside_diameter_mm"]) == outside_mm == bead_seat + 2 * width


@pytest.mark.parametrize(
    ("name", "by_rule", "measured"),
    [
        ("26 x 1.0", 609.8, 610),
        ("26 x 1", 621.8, 622),
        ("26 x 1 3/8", 660, 660),
        ("20 x 1 1/4", 514.5, 514),
    ],
)
def test_measured_radii_agree_with_the_rule(name: str, by_rule: float, measured: float) -> None:
    row = find_row("wheels", "gearing_measured_radii", name=name)
    rule = float(row["bead_seat_diameter_mm"]) + 2 * float(row["tyre_width_mm"])
    assert rule == pytest.approx(by_rule, abs=0.05)
    assert 2 * float(row["measured_radius_mm"]) == measured
    assert rule == pytest.approx(measured, abs=3.0)


def test_surrogate_chair_as_printed() -> None:
    rows = load_table("experiments", "iso10865_surrogate_chair")
    values = {row["quantity"]: float(row["value"]) for row in rows}
    assert values["wheelbase_casters_trailing"] == 360
    assert values["rear_track"] == 465
    assert values["caster_track"] == 275
    assert values["rear_wheel_diameter"] == 609
    assert values["caster_trail"] == 45
    assert values["com_forward_of_axle"] == 115
    assert values["com_height"] == 600


def test_axle_and_anti_tip_experiments_as_printed() -> None:
    axles = load_table("experiments", "loane_kirby1985_axle_position")
    assert [row["rear_free_deg"] for row in axles] == ["28.6", "21.7", "9.4"]
    anti_tip = {r["quantity"]: r["value"] for r in load_table("experiments", "kirby1994_anti_tip")}
    assert anti_tip["added_rear_stability_least"] == "-1.0"
    assert anti_tip["added_rear_stability_most"] == "27.1"
