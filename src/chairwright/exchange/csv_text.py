"""A table as CSV text after RFC 4180: commas, double quotes, CR LF; text is always quoted."""

from __future__ import annotations

from decimal import Decimal

from chairwright.exchange.cells import guarded, whole_text
from chairwright.exchange.order_tables import Cell, Table

BYTE_ORDER_MARK = "\ufeff"
END = "\r\n"


def csv_text(table: Table, *, mark: bool = False) -> str:
    """Write a table as CSV.

    Parameters
    ----------
    table : Table
    mark : bool
        Whether a byte order mark stands before the text. Some spreadsheet programs take UTF-8
        for something else without one; other programs take the mark for a letter.

    Returns
    -------
    str
        One record for the headers and one for each row. Text is quoted, and begins with a single
        quote where it could be taken for a formula; numbers are plain, money digit by digit;
        what is empty has nothing between its commas.
    """
    records = (table.headers, *table.rows)
    text = "".join(",".join(_field(cell) for cell in record) + END for record in records)
    return (BYTE_ORDER_MARK if mark else "") + text


def _field(cell: Cell) -> str:
    if cell is None or cell == "":
        return ""
    if isinstance(cell, str):
        return '"' + guarded(whole_text(cell)).replace('"', '""') + '"'
    return number_text(cell)


def number_text(number: float | Decimal) -> str:
    """A number without exponent and without idle noughts; a decimal digit by digit.

    Parameters
    ----------
    number : int, float or Decimal

    Examples
    --------
    >>> number_text(420.0), number_text(-12.5), number_text(Decimal("48.00"))
    ('420', '-12.5', '48.00')
    """
    if isinstance(number, Decimal):
        return f"{number:f}"
    return f"{number:.6f}".rstrip("0").rstrip(".") if isinstance(number, float) else str(number)
