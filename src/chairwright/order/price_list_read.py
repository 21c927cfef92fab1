"""Reading a price list; the format is described in docs/reference/order-file.md."""

from __future__ import annotations

import re
from decimal import Decimal
from pathlib import Path

from chairwright.files.fields import Fields, open_file
from chairwright.files.order_fields import MOST_MONEY, date, decimal, whole
from chairwright.order.price_list import LeadTerms, PriceList, Rate, Surcharge
from chairwright.order.price_money import HUNDRED, USUAL_DIGITS
from chairwright.reading import FileText, read_yaml
from chairwright.validation import shown, suggest

FORMAT = "chairwright price list 1"
REFERENCE = "docs/reference/order-file.md"
LIMIT_BYTES = 500_000
KEYS = (
    "format", "title", "supplier", "line", "line_version", "currency", "digits", "dated",
    "valid_until", "rate", "prices", "discounts", "taxes", "surcharges", "lead_time",
)  # fmt: skip
MOST_DIGITS = 3
REST = "rest"
_CURRENCY = re.compile(r"[A-Z]{3}")
_LONGEST_ITEM = 60


def read_price_list(path: Path | str | FileText) -> PriceList:
    """Read one price list.

    Parameters
    ----------
    path : Path or str or FileText

    Returns
    -------
    PriceList
        Whether the line has its items is for `order.price_list_checks` to say.

    Raises
    ------
    InputError
        With every problem of the file, by line.
    """
    source = read_yaml(path, LIMIT_BYTES)
    fields = open_file(source, FORMAT, REFERENCE)
    fields.check_keys(*KEYS)
    digits = whole(fields, "digits", MOST_DIGITS)
    digits = USUAL_DIGITS if digits is None else digits
    where = {str(key): fields.where(key) for key in fields.data}
    discounts, taxes = _rates(fields, "discounts", where), _rates(fields, "taxes", where)
    found = PriceList(
        title=fields.text("title", example="Prices of 2026") or "",
        supplier=fields.text("supplier") or "",
        line=fields.text("line", example="everyday") or "",
        line_version=fields.text("line_version") or "",
        currency=_currency(fields),
        digits=digits,
        dated=date(fields, "dated", example="2026-11-25"),
        valid_until=date(fields, "valid_until"),
        rate=_exchange(fields),
        prices=_prices(fields, digits, where),
        discounts=discounts,
        taxes=taxes,
        surcharges=_surcharges(fields, digits, taxes, where),
        lead=_lead(fields, where),
        path=path.name if isinstance(path, FileText) else str(path),
        where=where,
    )
    if found.valid_until and found.valid_until < found.dated:
        must = "a list cannot end before it begins"
        got = f"dated {found.dated}, valid until {found.valid_until}"
        fields.refuse("valid_until", must, got, "Correct one of the two days.")
    fields.findings.raise_any()
    return found


def _currency(fields: Fields) -> str:
    text = fields.text("currency", example="EUR", longest=10) or ""
    if text and not _CURRENCY.fullmatch(text):
        must = "it must be three capital letters, as ISO 4217"
        fields.refuse("currency", must, repr(text), "Write it like EUR.")
    return text


def _exchange(fields: Fields) -> Decimal | None:
    rate = decimal(fields, "rate", MOST_MONEY, 9)
    if rate is not None and not rate:
        fields.refuse("rate", "it must be above 0", "0", "Write how much one of the line's is.")
    return rate


def _prices(fields: Fields, digits: int, where: dict[str, str]) -> dict[str, Decimal]:
    inner, found = fields.child("prices"), {}
    for key in () if inner is None else inner.data:
        if inner is not None:
            amount = decimal(inner, key, MOST_MONEY, digits)
            where[f"prices {key}"] = inner.where(key)
            if amount is not None:
                found[str(key)] = amount
            elif inner.data[key] is None:
                inner.refuse(key, "a price must be a number", "nothing", "Write 0 for no charge.")
    return found


def _rates(fields: Fields, key: str, where: dict[str, str]) -> tuple[Rate, ...]:
    found: list[Rate] = []
    for entry in fields.children(key):
        entry.check_keys("name", "percent", "items")
        name = entry.text("name", example="seating", longest=_LONGEST_ITEM)
        percent = decimal(entry, "percent", HUNDRED, 4)
        if percent is None and not entry.has("percent"):
            entry.refuse("percent", "percent must be given", "nothing", "Add percent: 7")
        items = _items(entry, "items", where, f"{key} ")
        if name is None or percent is None or items is None:
            continue
        _refuse_twice(entry, found, name, items)
        found.append(Rate(name, percent, () if items == (REST,) else items))
    return tuple(found)


def _refuse_twice(entry: Fields, found: list[Rate], name: str, items: tuple[str, ...]) -> None:
    """Refuse a name or an item that an earlier entry has."""
    if name in {each.name for each in found}:
        entry.refuse("name", "each name must stand once", repr(name), "Join the two entries.")
    taken = {item for each in found for item in (each.items or (REST,))}
    for item in taken & set(items):
        must = "an item must be in one entry only"
        entry.refuse("items", must, f"{item} a second time", "Take it out of one of them.")


def _items(entry: Fields, key: str, where: dict[str, str], prefix: str) -> tuple[str, ...] | None:
    """Read a list of items, or the word for the rest; None after noting a problem."""
    value = entry.data.get(key)
    if value == REST:
        return (REST,)
    if not isinstance(value, list) or not value:
        must = f"{key} must be a list of items, or the word {REST}"
        remedy = f"Write it like {key}: [base, cushion.Q75]."
        entry.refuse(key, must, shown(value), remedy)
        return None
    inner = entry.inside(key, value)
    names = [inner.text(at, example="cushion", longest=_LONGEST_ITEM) for at in range(len(value))]
    items = [name for name in names if name is not None]
    for at, name in enumerate(items):
        where[f"{prefix}{name}"] = inner.where(at)
    if len(set(items)) < len(items):
        entry.refuse(key, "each item must stand once", ", ".join(items), "Take one out.")
    return tuple(items)


def _surcharges(
    fields: Fields, digits: int, taxes: tuple[Rate, ...], where: dict[str, str]
) -> tuple[Surcharge, ...]:
    found = []
    for entry in fields.children("surcharges"):
        entry.check_keys("name", "amount", "percent", "only_with", "tax")
        name = entry.text("name", example="delivery to the door")
        amount, percent = decimal(entry, "amount", MOST_MONEY, digits), _percent(entry)
        if entry.has("amount") == entry.has("percent"):
            got = "both" if entry.has("amount") else "neither"
            entry.refuse("name", "it must have an amount or a percent", got, "Keep one of them.")
        with_items = _items(entry, "only_with", where, "surcharges ") if entry.has(
            "only_with") else ()  # fmt: skip
        tax = entry.text("tax", longest=_LONGEST_ITEM) or ""
        if tax and tax not in {each.name for each in taxes}:
            names = [each.name for each in taxes]
            entry.refuse("tax", "it must be the name of a tax here", repr(tax), suggest(tax, names))
        if name is not None:
            found.append(Surcharge(name, amount, percent, with_items or (), tax))
    return tuple(found)


def _percent(entry: Fields) -> Decimal | None:
    return decimal(entry, "percent", HUNDRED, 4)


def _lead(fields: Fields, where: dict[str, str]) -> LeadTerms:
    inner = fields.child("lead_time")
    if inner is None:
        return LeadTerms()
    inner.check_keys("handling_days", "transport_days", "days", "after")
    return LeadTerms(
        handling_days=whole(inner, "handling_days") or 0,
        transport_days=whole(inner, "transport_days") or 0,
        days=_days(inner.child("days"), where),
        after=_after(inner.child("after"), where),
    )


def _days(fields: Fields | None, where: dict[str, str]) -> dict[str, int]:
    found = {}
    for key in () if fields is None else fields.data:
        if fields is not None:
            where[f"days {key}"] = fields.where(key)
            days = whole(fields, key)
            if days is not None:
                found[str(key)] = days
            elif fields.data[key] is None:
                fields.refuse(key, "days must be a number", "nothing", "Write 0 for from stock.")
    return found


def _after(fields: Fields | None, where: dict[str, str]) -> dict[str, tuple[str, ...]]:
    found = {}
    for key in () if fields is None else fields.data:
        if fields is not None:
            where[f"after {key}"] = fields.where(key)
            items = _items(fields, str(key), where, "after ")
            if items is not None:
                found[str(key)] = items
    return found
