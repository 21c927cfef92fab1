"""The page about the exchange files names every table, layer, code, unit and option there is."""

from __future__ import annotations

import argparse
import io
import re
from collections.abc import Callable

import pytest
from ezdxf import filemanagement

from chairwright.chair.shape import Shape
from chairwright.cli import export, import_measures
from chairwright.drawing.plan_view import plan_sheet
from chairwright.drawing.sheet import Sheet
from chairwright.drawing.side_view import side_sheet
from chairwright.exchange.dxf import dxf_text
from chairwright.exchange.fhir_codes import HCPCS, OURS
from chairwright.exchange.fhir_measures import CODES, TAKEN
from chairwright.exchange.fhir_reading import LIMIT_BYTES
from chairwright.exchange.fhir_values import UNITS
from chairwright.exchange.order_tables import order_tables
from tests.house.tree import ROOT
from tests.unit.drawing.shapes import average_adult

from .orders import priced_order

PAGE = (ROOT / "docs" / "reference" / "exchange.md").read_text("utf-8")


def rows(start: str) -> list[str]:
    return [line for line in PAGE.splitlines() if line.startswith(start)]


def test_every_table_has_a_row() -> None:
    for table in order_tables(priced_order()):
        assert f"`{table.name}`" in PAGE


@pytest.mark.parametrize("sheet", [side_sheet, plan_sheet])
def test_every_layer_that_is_drawn_on_is_named(sheet: Callable[[Shape], Sheet]) -> None:
    document = filemanagement.read(io.StringIO(dxf_text(sheet(average_adult()))))
    layers = {each.dxf.layer for each in document.modelspace()}
    assert len(layers) > 5
    assert {name for name in layers if f"`{name}`" not in PAGE} == set()


@pytest.mark.parametrize(("measure", "dimension"), [("stature", "length"), ("body_mass", "mass")])
def test_codes_and_units_of_the_import(measure: str, dimension: str) -> None:
    (row,) = rows(f"| `{measure}` |")
    _, _, loinc, units, _ = row.split("|")
    assert re.findall(r"`([^`]+)`", loinc) == list(CODES[measure])
    assert re.findall(r"`([^`]+)`", units) == list(UNITS[dimension])  # type: ignore[index]


def test_statuses_systems_and_the_limit() -> None:
    assert all(f"`{status}`" in PAGE for status in TAKEN)
    assert f"`{HCPCS}`" in PAGE
    assert f"`{OURS}/`" in PAGE
    assert LIMIT_BYTES == 5_000_000
    assert "over 5 MB" in PAGE


@pytest.mark.parametrize("command", [export, import_measures])
def test_every_option_is_described(command: object) -> None:
    parser = argparse.ArgumentParser(add_help=False)
    command.add_arguments(parser)  # type: ignore[attr-defined]
    options = re.findall(r"--[a-z-]+", parser.format_help())
    assert {option for option in options if f"`{option}" not in PAGE} == set()
