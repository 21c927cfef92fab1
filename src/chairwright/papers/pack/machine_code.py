"""The machine code of a label: a GS1 Data Matrix when there is a GTIN, else a QR code of ours.

A GTIN is given out by GS1 to a maker; nothing here makes one up. The check digit is that of the
GS1 General Specifications: from the right, digits count three and one in turn, and the check digit
brings the sum to a multiple of ten.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from chairwright.errors import InputError, Problem

Kind = Literal["GS1 Data Matrix", "QR code"]

GTIN_LENGTHS = (8, 12, 13, 14)
FULL_GTIN = 14
LONGEST_GS1_SERIAL = 20
GS1_LETTERS = frozenset(
    "!\"%&'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz"
)
"""The 82 letters that a GS1 serial number may hold."""

_QUIET = {"GS1 Data Matrix": 2, "QR code": 4}


@dataclass(frozen=True)
class MachineCode:
    """A code with its modules.

    Parameters
    ----------
    kind : {"GS1 Data Matrix", "QR code"}
    words : str
        What is printed below it and what a reader gets: GS1 keys in brackets, or plain words.
    modules : tuple of tuple of bool
        Rows from above; true is dark. Without the quiet zone.
    """

    kind: Kind
    words: str
    modules: tuple[tuple[bool, ...], ...]


def check_digit(digits: str) -> int:
    """The GS1 check digit of a number without it.

    Parameters
    ----------
    digits : str

    Returns
    -------
    int

    References
    ----------
    GS1 General Specifications, standard check digit calculations (restated by the member
    organisations GS1 Hong Kong and GS1 India, whose examples the tests hold).

    Examples
    --------
    >>> check_digit("629104150021")
    3
    """
    threes, ones = digits[::-1][::2], digits[::-1][1::2]
    return -(3 * sum(map(int, threes)) + sum(map(int, ones))) % 10


def full_gtin(typed: str, where: str = "--gtin") -> str:
    """A GTIN with all its 14 digits.

    Parameters
    ----------
    typed : str
        8, 12, 13 or 14 digits, blanks between them allowed.
    where : str
        Who is to blame.

    Returns
    -------
    str

    Raises
    ------
    InputError
        When it is no such number, or its check digit is wrong.
    """
    digits = typed.replace(" ", "")
    if not (digits.isascii() and digits.isdigit() and len(digits) in GTIN_LENGTHS):
        must = "a GTIN must have 8, 12, 13 or 14 digits"
        raise InputError(Problem(where, must, repr(typed), "Write the one that GS1 gave out."))
    wanted = check_digit(digits[:-1])
    if int(digits[-1]) != wanted:
        must = f"the check digit of {digits[:-1]} must be {wanted}"
        raise InputError(Problem(where, must, digits[-1], "A digit is wrong: read it again."))
    return digits.zfill(FULL_GTIN)


def gs1_code(gtin: str, serial: str) -> MachineCode:
    """A GS1 Data Matrix of (01) GTIN and (21) serial number.

    Parameters
    ----------
    gtin : str
        All 14 digits, from `full_gtin`.
    serial : str

    Returns
    -------
    MachineCode

    Raises
    ------
    InputError
        When the serial number is too long for GS1, or has a letter that GS1 does not know.
    """
    if not serial or len(serial) > LONGEST_GS1_SERIAL or not GS1_LETTERS.issuperset(serial):
        must = f"a GS1 serial number must have 1 to {LONGEST_GS1_SERIAL} plain letters or digits"
        remedy = "Say --serial with a shorter one, without blanks; or leave --gtin out."
        raise InputError(Problem("--serial", must, repr(serial), remedy))
    from pystrich.datamatrix import DataMatrixData, DataMatrixEncoder
    from pystrich.gs1 import GS1Fixed, GS1Variable

    text = DataMatrixData.gs1(GS1Fixed("01", gtin), GS1Variable("21", serial))
    drawn = DataMatrixEncoder(text, quiet_zone=0).init_renderer()
    return MachineCode("GS1 Data Matrix", f"(01){gtin}(21){serial}", _dark(drawn.matrix))


def plain_code(words: str) -> MachineCode:
    """A QR code of plain words.

    Parameters
    ----------
    words : str

    Returns
    -------
    MachineCode
    """
    from pystrich.qrcode import QRCodeEncoder

    return MachineCode("QR code", words, _dark(QRCodeEncoder(words).matrix))


def svg_of(code: MachineCode) -> str:
    """Draw a code with its quiet zone; one unit is one module.

    Parameters
    ----------
    code : MachineCode

    Returns
    -------
    str
        SVG with one path, so that no hairline shows between modules.
    """
    quiet = _QUIET[code.kind]
    wide = len(code.modules[0]) + 2 * quiet
    high = len(code.modules) + 2 * quiet
    path = "".join(
        f"M{x + quiet} {y + quiet}h1v1h-1z"
        for y, row in enumerate(code.modules)
        for x, dark in enumerate(row)
        if dark
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}" '
        f'shape-rendering="crispEdges"><path d="{path}" fill="#000000"/></svg>'
    )


def _dark(rows: Sequence[Sequence[int | None]]) -> tuple[tuple[bool, ...], ...]:
    return tuple(tuple(bool(cell) for cell in row) for row in rows)
