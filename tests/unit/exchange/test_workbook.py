"""XLSX: read by another program each cell is what it was, text stays text, no formula is in it."""

from __future__ import annotations

import io
import os
import shutil
import subprocess
import zipfile
from decimal import Decimal
from pathlib import Path

import openpyxl
import pytest

from chairwright.exchange.order_tables import Cell, Table, order_tables
from chairwright.exchange.workbook import workbook_bytes

from .orders import HOSTILE, hostile_order, priced_order

OFFICE = shutil.which("soffice")
READERS = ("openpyxl", *(("office",) if OFFICE else ()))
"""Programs that open the workbook: the office program where there is one."""


def read_by(reader: str, raw: bytes, folder: Path) -> openpyxl.Workbook:
    if reader == "openpyxl":
        return openpyxl.load_workbook(io.BytesIO(raw))
    source = folder / "order.xlsx"
    source.write_bytes(raw)
    out = folder / "out"
    home = f"-env:UserInstallation={(folder / 'home').as_uri()}"
    asked = ["--convert-to", "xlsx", "--outdir", str(out), str(source)]
    subprocess.run(
        [str(OFFICE), home, "--headless", *asked],
        check=True, capture_output=True, timeout=120, env={**os.environ, "HOME": str(folder)},
    )  # fmt: skip
    return openpyxl.load_workbook(out / "order.xlsx")


def plain(cell: Cell) -> str | int | float | None:
    """A cell as every program reads it: money as a number, line ends as line feeds."""
    if isinstance(cell, str):
        return cell.replace("\r\n", "\n").replace("\r", "\n") or None
    return float(cell) if isinstance(cell, Decimal) else cell


def check(book: openpyxl.Workbook, tables: tuple[Table, ...]) -> None:
    assert book.sheetnames == [table.name.capitalize() for table in tables]
    for table in tables:
        sheet = book[table.name.capitalize()]
        assert tuple(cell.value for cell in sheet[1]) == table.headers
        for row, wanted in zip(sheet.iter_rows(min_row=2), table.rows, strict=True):
            for cell, value in zip(row, wanted, strict=False):
                assert cell.data_type != "f", value
                assert cell.value == plain(value), (table.name, value)
                assert (cell.data_type == "s") == (isinstance(value, str) and value != "")


@pytest.mark.parametrize("reader", READERS)
def test_an_order_is_read_back(reader: str, tmp_path: Path) -> None:
    tables = order_tables(priced_order())
    check(read_by(reader, workbook_bytes(tables, "order"), tmp_path), tables)


@pytest.mark.parametrize("reader", READERS)
def test_hostile_words_stay_text(reader: str, tmp_path: Path) -> None:
    tables = order_tables(hostile_order())
    check(read_by(reader, workbook_bytes(tables, "=1+1"), tmp_path), tables)


def test_what_looks_like_a_formula_stays_text_when_it_is_edited() -> None:
    table = Table("some", ("what",), tuple((text,) for text in HOSTILE))
    sheet = openpyxl.load_workbook(io.BytesIO(workbook_bytes((table,), "")))["Some"]
    guarded = [row[0].value for row in sheet.iter_rows(min_row=2) if row[0].quotePrefix]
    assert "=1+1" in guarded
    assert "@SUM(A1)" in guarded
    assert "x" * 400 not in guarded


def test_there_is_no_formula_and_no_link_in_the_file() -> None:
    raw = workbook_bytes(order_tables(hostile_order()), "order")
    with zipfile.ZipFile(io.BytesIO(raw)) as archive:
        for name in archive.namelist():
            text = archive.read(name).decode("utf-8")
            assert "<f>" not in text, name
            assert "<hyperlink" not in text, name


def test_money_shows_its_digits() -> None:
    table = Table("some", ("what",), ((Decimal("48.00"),), (Decimal("-0.10"),)))
    for digits, shown in ((2, "0.00"), (3, "0.000"), (0, "0")):
        sheet = openpyxl.load_workbook(io.BytesIO(workbook_bytes((table,), "", "", digits)))["Some"]
        assert [row[0].number_format for row in sheet.iter_rows(min_row=2)] == [shown, shown]


def test_there_is_no_clock_in_it() -> None:
    tables = order_tables(priced_order())
    raw = workbook_bytes(tables, "order", "2026-11-25")
    assert workbook_bytes(order_tables(priced_order()), "order", "2026-11-25") == raw
    with zipfile.ZipFile(io.BytesIO(raw)) as archive:
        assert {each.date_time[0] for each in archive.infolist()} == {1980}
        core = archive.read("docProps/core.xml").decode("utf-8")
    assert core.count("2026-11-25T00:00:00Z") == 2
    undated = workbook_bytes(tables, "order")
    with zipfile.ZipFile(io.BytesIO(undated)) as archive:
        assert archive.read("docProps/core.xml").decode("utf-8").count("1980-01-01T00:00:00Z") == 2
