"""The label of a chair, 100 x 60 mm, as an accessible PDF (PDF/UA-1)."""

from __future__ import annotations

import math
from dataclasses import dataclass

from chairwright.errors import InputError, Problem
from chairwright.order.order import Order
from chairwright.papers.pack.machine_code import (
    MachineCode,
    full_gtin,
    gs1_code,
    plain_code,
    svg_of,
)
from chairwright.papers.pack.words import Data
from chairwright.papers.typeset import Paper, typeset

LONGEST_SERIAL = 80
RATED_WORDS = "Rated load: occupant with everything carried"
PAPER: Paper = "a4"
"""A label has a page of its own size; what it is printed on does not change it."""


@dataclass(frozen=True)
class Label:
    """What stands on the label of one chair.

    Parameters
    ----------
    serial : str
        Empty when the order has no number and none is given: a line to write on.
    set_up, order, line, maker : str
    rated : str
        Empty when no part states a limit.
    code : MachineCode
    """

    serial: str
    set_up: str
    order: str
    line: str
    maker: str
    rated: str
    code: MachineCode


def label_of(order: Order, serial: str = "", gtin: str = "") -> Label:
    """Work out a label.

    Parameters
    ----------
    order : Order
    serial : str
        Of the chair; by default the order's number and revision.
    gtin : str
        The maker's GTIN for the chair, as typed; with it the code is a GS1 Data Matrix.

    Returns
    -------
    Label

    Raises
    ------
    InputError
        When the serial number or the GTIN is none.
    """
    if serial and not (serial.strip() and serial.isprintable() and len(serial) <= LONGEST_SERIAL):
        must = f"a serial number must be one line of 1 to {LONGEST_SERIAL} characters"
        raise InputError(Problem("--serial", must, f"{len(serial)}", "Shorten it."))
    heading, line, rated = order.heading, order.setup.line, order.load.rated_kg
    number = f"{heading.number}-{order.revision}" if heading.number else ""
    serial = serial.strip() or number
    named = f"{heading.number}, revision {order.revision}".removeprefix(", ")
    return Label(
        serial=serial,
        set_up=heading.name,
        order=named,
        line=f"{line.title}, version {line.version}",
        maker=line.maker,
        rated=f"{rated:g} kg" if math.isfinite(rated) else "",
        code=_code(heading.name, named, serial, gtin),
    )


def _code(set_up: str, order: str, serial: str, gtin: str) -> MachineCode:
    if gtin:
        return gs1_code(full_gtin(gtin), serial)
    parts = [f"set-up {set_up}", f"order {order}"]
    return plain_code("; ".join([*parts, f"serial {serial}"] if serial else parts))


def label_pdf(label: Label) -> bytes:
    """Typeset a label.

    Parameters
    ----------
    label : Label
        Text is printed as it stands; nothing in it is read as markup.

    Returns
    -------
    bytes
        A tagged PDF of one small page; the same label gives the same bytes.

    Raises
    ------
    InputError
        When the font does not have a letter of the text.
    """
    return typeset("pack/label.typ", label_content(label), PAPER)


def label_content(label: Label) -> Data:
    """Everything that the template prints.

    Parameters
    ----------
    label : Label
    """
    gs1 = label.code.kind == "GS1 Data Matrix"
    return {
        "serial": label.serial,
        "set_up": label.set_up,
        "order": label.order,
        "line": label.line,
        "maker": label.maker,
        "rated": label.rated,
        "rated_words": RATED_WORDS,
        "code": svg_of(label.code),
        "code_words": label.code.words.replace("(21)", "\n(21)").split("\n") if gs1 else [],
        "code_alt": f"{label.code.kind}: {label.code.words}",
    }
