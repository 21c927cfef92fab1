"""Reading and writing an order file; see docs/reference/order-file.md."""

from __future__ import annotations

import json
import os
from collections.abc import Iterator
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path

from chairwright.files.fields import Fields, open_file
from chairwright.files.order_fields import MOST_DAYS, MOST_MONEY, date, decimal, whole
from chairwright.files.setup import SetupFile
from chairwright.files.wishes import read_extras
from chairwright.files.writing import write_file
from chairwright.line.choices import CHOICES
from chairwright.reading import read_yaml

FORMAT = "chairwright order 1"
REFERENCE = "docs/reference/order-file.md"
KEYS = (
    "format", "client", "client_file", "setup", "price_list", "number", "revision", "dated",
    "line", "line_version", "total", "currency", "delivery_days", "choices", "extras", "accepted",
)  # fmt: skip
LIMIT_BYTES = 200_000
LONGEST_PATH = 400
LONGEST_CODE = 24
LONGEST_NAME = 80
LONGEST_REASON = 600
PRIVATE = "private:"
"""Start of a reason that leaves the order file for no paper and no exported file."""
KEPT = "the reason is kept by who accepted it"
MOST_REVISIONS = 999
LARGEST = 100_000.0
DIGITS = 3


@dataclass(frozen=True)
class AcceptedMust:
    """A must that is not met and that somebody has accepted by name.

    Parameters
    ----------
    figure : str
        What the must is about.
    low, high : float or None
        What was asked, as printed, in the figure's unit.
    value : float or None
        What was reached, as printed; None when the set-up has no such figure.
    by, reason : str
        Who accepts it, and why.
    revision : int
        In which it was accepted.
    place : str
        Name of the client's place that asks for it; empty when none does.
    where : str
        ``file:line``; empty when it is new.
    """

    figure: str
    low: float | None
    high: float | None
    value: float | None
    by: str
    reason: str
    revision: int
    place: str = ""
    where: str = ""

    @property
    def reason_told(self) -> str:
        """The reason as papers and exported files have it: not one that is marked private."""
        return KEPT if self.reason.lower().startswith(PRIVATE) else self.reason


@dataclass(frozen=True)
class OrderFile:
    """One order as it stands in a file: it holds every code, so the set-up file may change.

    Parameters
    ----------
    path : Path
        The file itself.
    client : str
        The client's reference.
    client_path, setup_path : Path
        Found from the order file's own folder; the set-up file is where the codes came from.
    price_list : Path or None
    number : str
        The order's own number; empty when it has none.
    revision : int
    dated : str
        Day of the order; empty when not said.
    line, line_version : str
    total : Decimal
        With tax, in ``currency``.
    currency : str
    delivery_days : int
    choices : dict of str to str
        Option code of every choice.
    extras : tuple of str
    accepted : tuple of AcceptedMust
    where : dict of str to str
        ``file:line`` of every key, choice and ``extras.CODE``.
    """

    path: Path
    client: str
    client_path: Path
    setup_path: Path
    price_list: Path | None
    number: str
    revision: int
    dated: str
    line: str
    line_version: str
    total: Decimal
    currency: str
    delivery_days: int
    choices: dict[str, str]
    extras: tuple[str, ...] = ()
    accepted: tuple[AcceptedMust, ...] = ()
    where: dict[str, str] = field(default_factory=dict)

    @property
    def setup(self) -> SetupFile:
        """The set-up as it was ordered."""
        return SetupFile(
            path=self.path,
            client_path=self.client_path,
            line=self.line,
            choices=self.choices,
            where={**self.where, "client": self.where.get("client_file", str(self.path))},
            extras=self.extras,
        )


def read_order(path: Path | str) -> OrderFile:
    """Read one order file.

    Parameters
    ----------
    path : Path or str

    Returns
    -------
    OrderFile

    Raises
    ------
    InputError
        With every problem of the file, by line.
    """
    path = Path(path)
    fields = open_file(read_yaml(path, LIMIT_BYTES), FORMAT, REFERENCE)
    fields.check_keys(*KEYS)
    inner = fields.child("choices") or Fields(fields.findings, {}, ("choices",))
    inner.check_keys(*CHOICES)
    codes = {
        name: inner.text(name, example="a code of the line", longest=LONGEST_CODE)
        for name in CHOICES
    }
    extras = read_extras(fields)
    line = fields.text("line", example="everyday", longest=LONGEST_PATH) or ""
    price_list = fields.text("price_list", longest=LONGEST_PATH)
    found = OrderFile(
        path=path,
        client=fields.text("client", example="WR-014", longest=40) or "",
        client_path=path.parent / (_path(fields, "client_file", "../clients/wr-014.yaml")),
        setup_path=path.parent / (_path(fields, "setup", "../setups/wr-014.yaml")),
        price_list=None if price_list is None else path.parent / price_list,
        number=fields.text("number", longest=LONGEST_NAME) or "",
        revision=_needed(fields, "revision", 1, MOST_REVISIONS),
        dated=date(fields, "dated"),
        line=str(path.parent / line) if "/" in line or "." in line else line,
        line_version=fields.text("line_version", example='"2026.2"') or "",
        total=_total(fields),
        currency=fields.text("currency", example="EUR", longest=3) or "",
        delivery_days=_needed(fields, "delivery_days", 0, 3 * MOST_DAYS),
        choices={name: code for name, code in codes.items() if code is not None},
        extras=tuple(extras),
        accepted=tuple(_accepted(fields)),
        where={str(key): fields.where(key) for key in fields.data}
        | {name: inner.where(name) for name in CHOICES}
        | {f"extras.{code}": where for code, where in extras.items()},
    )
    fields.findings.raise_any()
    return found


def _path(fields: Fields, key: str, example: str) -> str:
    return fields.text(key, example=example, longest=LONGEST_PATH) or ""


def _needed(fields: Fields, key: str, low: int, high: int) -> int:
    number = whole(fields, key, high)
    if number is None and not fields.has(key):
        fields.refuse(key, f"{key} must be given", "nothing", f"Add {key}: {low}")
    if number is not None and number < low:
        fields.refuse(key, f"it must be at least {low}", str(number), "Correct the number.")
    return low if number is None else number


def _total(fields: Fields) -> Decimal:
    amount = decimal(fields, "total", MOST_MONEY * 100, DIGITS)
    if amount is None and not fields.has("total"):
        fields.refuse("total", "total must be given", "nothing", 'Add total: "785.00"')
    return Decimal(0) if amount is None else amount


def _accepted(fields: Fields) -> Iterator[AcceptedMust]:
    for entry in fields.children("accepted"):
        entry.check_keys(
            "must", "at_least", "at_most", "value", "by", "reason", "revision", "place"
        )
        figure = entry.text("must", example="tip_rear_locked_deg")
        by = entry.text("by", example="who accepts it", longest=LONGEST_NAME)
        reason = entry.text("reason", example="why", longest=LONGEST_REASON)
        low, high, value = (
            entry.number(key, -LARGEST, LARGEST) for key in ("at_least", "at_most", "value")
        )
        revision = _needed(entry, "revision", 1, MOST_REVISIONS)
        if low is None and high is None:
            must = "an accepted must has at_least or at_most"
            entry.refuse("must", must, "neither", "Write what was asked.")
        if figure is not None and by is not None and reason is not None:
            place = entry.text("place", longest=LONGEST_PATH) or ""
            where = entry.where("must")
            yield AcceptedMust(figure, low, high, value, by, reason, revision, place, where)


def write_order(order: OrderFile, *, overwrite: bool = False) -> None:
    """Write one order file, whole or not at all.

    Parameters
    ----------
    order : OrderFile
        Its paths are written relative to the folder of ``path``.
    overwrite : bool
        False refuses to replace a file that exists.

    Raises
    ------
    InputError
        When the file exists and may not be replaced, or cannot be written.
    """
    write_file(order.path, "\n".join(_rows(order)) + "\n", overwrite=overwrite)


def _rows(order: OrderFile) -> Iterator[str]:
    folder = order.path.parent
    plain = "/" not in order.line and "." not in order.line
    yield f"format: {FORMAT}"
    yield f"client: {_quoted(order.client)}"
    yield f"client_file: {_quoted(_relative(order.client_path, folder))}"
    yield f"setup: {_quoted(_relative(order.setup_path, folder))}"
    if order.price_list is not None:
        yield f"price_list: {_quoted(_relative(order.price_list, folder))}"
    if order.number:
        yield f"number: {_quoted(order.number)}"
    yield f"revision: {order.revision}"
    if order.dated:
        yield f"dated: {_quoted(order.dated)}"
    yield f"line: {_quoted(order.line if plain else _relative(order.line, folder))}"
    yield f"line_version: {_quoted(order.line_version)}"
    yield f"total: {_quoted(f'{order.total:f}')}"
    yield f"currency: {order.currency}"
    yield f"delivery_days: {order.delivery_days}"
    yield "choices:"
    yield from (f"  {name}: {_quoted(order.choices[name])}" for name in CHOICES)
    if order.extras:
        yield f"extras: [{', '.join(_quoted(code) for code in order.extras)}]"
    if order.accepted:
        yield "accepted:"
        for each in order.accepted:
            yield from _accepted_rows(each)


def _accepted_rows(each: AcceptedMust) -> Iterator[str]:
    yield f"  - must: {each.figure}"
    numbers = {"at_least": each.low, "at_most": each.high, "value": each.value}
    yield from (f"    {key}: {number!r}" for key, number in numbers.items() if number is not None)
    yield f"    by: {_quoted(each.by)}"
    yield f"    reason: {_quoted(each.reason)}"
    yield f"    revision: {each.revision}"
    if each.place:
        yield f"    place: {_quoted(each.place)}"


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


def _relative(target: Path | str, folder: Path) -> str:
    text = Path(os.path.relpath(target, folder)).as_posix()
    return text if "/" in text or "." in text else f"./{text}"
