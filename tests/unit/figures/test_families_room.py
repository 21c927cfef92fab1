"""Names of figures of a place's sizes, what they are called, and what they hang on."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from chairwright.chair.steps import STEPS
from chairwright.figures.families import FAMILIES, resolve
from chairwright.figures.registry import FIGURES

PAGE = (Path(__file__).parents[3] / "docs" / "reference" / "figures.md").read_text("utf-8")


@pytest.mark.parametrize(
    ("name", "label"),
    [
        ("corner_free_mm@950", "Way out of a corner needed, way in 950 mm, moving to and fro"),
        ("corner_arc_mm@950.5", "Way out of a corner needed, way in 950.5 mm, in one turn"),
        ("door_turn_mm@780", "Corridor needed to turn into a door of 780 mm, in one turn"),
        (
            "device_spare_deg@slope_4.76",
            "Pitch to spare before the anti-tip device grounds at the foot of a 4.8 deg slope",
        ),
        (
            "device_spare_deg@step_30",
            "Pitch to spare before the anti-tip device grounds at a step of 30 mm",
        ),
        (
            "boot_missing_mm@1000x600x800_off",
            "Folded chair, wheels off: what the boot lacks (below zero: to spare)",
        ),
    ],
)
def test_a_name_with_its_place(name: str, label: str) -> None:
    figure = resolve(name)
    assert figure is not None
    assert (figure.name, figure.label) == (name, label)
    assert FIGURES[name].unit == ("deg" if "deg@" in name else "mm")


@pytest.mark.parametrize(
    "name",
    [
        "corner_free_mm@",
        "corner_free_mm@0",
        "corner_free_mm@-950",
        "corner_free_mm@950x900",
        "corner_arc_mm@wide",
        "door_turn_mm@1e3",
        "device_spare_deg@4.76",
        "device_spare_deg@slope_-4",
        "device_spare_deg@kerb_30",
        "boot_missing_mm@1000x600_off",
        "boot_missing_mm@1000x600x800",
        "boot_missing_mm@1000x600x800_without",
        "corner_mm@950",
    ],
)
def test_a_name_of_no_figure(name: str) -> None:
    assert resolve(name) is None


def test_an_outline_is_whole_once_the_device_is_chosen() -> None:
    """What moves the outline is chosen by then, and a boot waits for nothing later."""
    order = [name for step in STEPS for name in step.choices]
    for name in ("corner_free_mm@950", "door_turn_mm@780", "boot_missing_mm@900x700x500_on"):
        figure = FIGURES[name]
        assert order.index(figure.after) < len(order) - 1
    assert FIGURES["corner_free_mm@950"].after == "anti_tip"
    assert FIGURES["boot_missing_mm@900x700x500_on"].after == "push_handle"


@pytest.mark.parametrize("name", FAMILIES)
def test_the_page_lists_every_family(name: str) -> None:
    family = FAMILIES[name]
    (row,) = re.findall(rf"^\| `{name}@` \| (.*) \|$", PAGE, re.MULTILINE)
    _, unit, step, meaning = row.split(" | ")
    assert (unit, step) == (family.unit, f"{family.scale:g} {family.unit}")
    assert len(meaning) > 10


def test_every_example_on_the_page_is_a_figure() -> None:
    (line,) = re.findall(r"^Examples: (.*?)\.\n", PAGE, re.MULTILINE | re.DOTALL)
    names = re.findall(r"`([^`]+)`", line)
    assert len(names) > 5
    assert all(resolve(name) for name in names)
