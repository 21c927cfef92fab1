"""Tables as a workbook (XLSX): a sheet each; text stays text, numbers are numbers."""

from __future__ import annotations

import io
import re
from collections.abc import Sequence
from decimal import Decimal
from typing import Any

import numpy as np

from chairwright.exchange.cells import looks_like_a_formula, whole_text
from chairwright.exchange.order_tables import Cell, Table

NO_DAY = "1980-01-01"
"""Day that is written when the order has none: the first that the container's format knows."""

WIDEST = 60
_LINE_END = re.compile("\r\n|\r")
"""Inside a cell a line ends with a line feed."""

_NEVER_GUESSED = {
    "in_memory": True,
    "strings_to_formulas": False,
    "strings_to_numbers": False,
    "strings_to_urls": False,
}


def workbook_bytes(tables: Sequence[Table], title: str, dated: str = "", digits: int = 2) -> bytes:
    """Write tables as the sheets of a workbook.

    Parameters
    ----------
    tables : sequence of Table
    title : str
        In the properties of the file.
    dated : str
        Day in the properties, such as ``2026-11-25``; there is no clock in it.
    digits : int
        Digits behind the point of amounts of money.

    Returns
    -------
    bytes
        The same tables give the same bytes. A number is held as a binary double, money too.
    """
    import xlsxwriter

    held = io.BytesIO()
    book = xlsxwriter.Workbook(held, _NEVER_GUESSED)
    day = np.datetime64(f"{dated or NO_DAY}T00:00:00", "s").item()
    book.set_properties({"title": whole_text(title), "created": day})
    money = "0." + "0" * digits if digits else "0"
    formats = {
        "head": book.add_format({"bold": True, "bottom": 1}),
        "guarded": book.add_format({"quote_prefix": True}),
        "money": book.add_format({"num_format": money}),
    }
    for table in tables:
        _sheet(book.add_worksheet(table.name.capitalize()), table, formats)
    book.close()
    return held.getvalue()


def _sheet(sheet: Any, table: Table, formats: dict[str, Any]) -> None:
    for column, header in enumerate(table.headers):
        sheet.write_string(0, column, header, formats["head"])
        longest = max((len(str(row[column])) for row in table.rows if row[column] is not None),
                      default=0)  # fmt: skip
        sheet.set_column(column, column, min(WIDEST, max(len(header), longest) + 2))
    for at, row in enumerate(table.rows, 1):
        for column, cell in enumerate(row):
            _write(sheet, (at, column), cell, formats)
    sheet.freeze_panes(1, 0)
    sheet.set_landscape()
    sheet.fit_to_pages(1, 0)


def _write(sheet: Any, at: tuple[int, int], cell: Cell, formats: dict[str, Any]) -> None:
    if cell is None or cell == "":
        return
    if isinstance(cell, str):
        guard = (formats["guarded"],) if looks_like_a_formula(cell) else ()
        sheet.write_string(*at, "\n".join(_LINE_END.split(whole_text(cell))), *guard)
    elif isinstance(cell, Decimal):
        sheet.write_number(*at, float(cell), formats["money"])
    else:
        sheet.write_number(*at, cell)
