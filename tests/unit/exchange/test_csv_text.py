"""CSV: RFC 4180, UTF-8, numbers as numbers, and nothing that is taken for a formula."""

from __future__ import annotations

import csv
import io
from decimal import Decimal

import pytest

from chairwright.exchange.cells import guarded
from chairwright.exchange.csv_text import csv_text, number_text
from chairwright.exchange.order_tables import Cell, Table, order_tables

from .orders import HOSTILE, hostile_order, priced_order

FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "\0", "＝", "＋", "－", "＠")  # noqa: RUF001


def records(text: str) -> list[list[str]]:
    return list(csv.reader(io.StringIO(text, newline=""), strict=True))


def one_column(*cells: Cell) -> Table:
    return Table("some", ("what",), tuple((cell,) for cell in cells))


def test_it_reads_back_as_it_was_apart_from_the_guard() -> None:
    found = records(csv_text(one_column(*HOSTILE)))
    assert [row[0] for row in found[1:]] == [guarded(text) for text in HOSTILE]


def test_no_text_begins_like_a_formula() -> None:
    for table in order_tables(hostile_order()):
        for cells, row in zip(table.rows, records(csv_text(table))[1:], strict=True):
            texts = [field for cell, field in zip(cells, row, strict=True) if isinstance(cell, str)]
            assert not any(text.lstrip(" ").startswith(FORMULA_STARTS) for text in texts), row


@pytest.mark.parametrize("start", FORMULA_STARTS)
def test_each_start_is_guarded(start: str) -> None:
    assert guarded(f"{start}1+1") == f"'{start}1+1"


def test_plain_text_is_left_alone() -> None:
    assert [guarded(text) for text in ("B-4", "a=b", "", "5", "'=1")] == [
        "B-4", "a=b", "", "5", "'=1"
    ]  # fmt: skip


def test_records_end_in_cr_lf_and_have_as_many_fields_as_the_headers() -> None:
    for table in order_tables(priced_order()):
        text = csv_text(table)
        assert text.endswith("\r\n")
        assert {len(row) for row in records(text)} == {len(table.headers)}


def test_numbers_are_numbers_and_money_is_digit_by_digit() -> None:
    text = csv_text(one_column(420.0, -12.5, -196, Decimal("48.00"), Decimal("-0.10"), None, ""))
    assert text == '"what"\r\n420\r\n-12.5\r\n-196\r\n48.00\r\n-0.10\r\n\r\n\r\n'


def test_no_number_has_an_exponent() -> None:
    assert [number_text(each) for each in (1e-5, 1e15, Decimal("1E+2"), -0.0000001)] == [
        "0.00001", "1000000000000000", "100", "-0"
    ]  # fmt: skip


def test_the_byte_order_mark_stands_there_only_when_asked_for() -> None:
    table = one_column("Grüße")
    assert csv_text(table).encode("utf-8").startswith(b'"what"\r\n')
    assert csv_text(table, mark=True).encode("utf-8") == b"\xef\xbb\xbf" + csv_text(table).encode()


def test_bytes_that_are_no_text_do_not_stop_it() -> None:
    assert csv_text(one_column("a\udcff")).encode("utf-8") == b'"what"\r\n"a\\udcff"\r\n'


def test_the_tables_hold_the_order() -> None:
    # By hand, as in the test of the order: 804.90 less 100.62, 48.00 on, tax 49.30 and 9.12.
    tables = {table.name: table for table in order_tables(priced_order())}
    sums = {row[0]: row[3] for row in tables["sums"].rows}
    assert sums["goods at list price"] == Decimal("804.90")
    assert sums["discount"] == Decimal("100.62")
    assert sums["before tax"] == Decimal("752.28")
    assert sums["total"] == Decimal("810.70")
    assert ("delivery [days]", 20) in tables["order"].rows
    plates = [row for row in tables["parts"].rows if row[0] == "axle_hole"]
    assert plates[0][2:6] == ("XN", "axle plate", 2, "left and right")
    hole = next(row for row in tables["settings"].rows if row[0] == "axle_hole")
    assert hole[2:] == ("E8", "axle plate, column E, row 8", 55.0, -196.0)
    width = next(row for row in tables["dimensions"].rows if row[0] == "seat_width.width_mm")
    assert width[2:4] == (400.0, "mm")
    assert tables["changes"].rows == ()
