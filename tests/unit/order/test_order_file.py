"""The order file: written and read again, and every mistake with its line."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.files.order import AcceptedMust, OrderFile, read_order, write_order
from chairwright.files.order_fields import is_date
from chairwright.files.setup import read_setup
from tests.laws.example_sweeps import SETUPS

SETUP = read_setup(SETUPS / "avg-001.yaml")
ACCEPTED = (
    AcceptedMust(
        "tip_rear_locked_deg", 12.0, None, 10.1, 'A. "Nan" Oyé, OT', "tries: with # helper", 1
    ),
    AcceptedMust("foot_reach_mm", 0.0, 25.0, None, "B", "none is fitted", 3),
)


def made(folder: Path, **other: object) -> OrderFile:
    order = OrderFile(
        path=folder / "orders" / "order.yaml",
        client="AVG-001",
        client_path=folder / "clients" / "avg-001.yaml",
        setup_path=folder / "setups" / "avg-001.yaml",
        price_list=folder / "orders" / "prices.yaml",
        number="MY: 17",
        revision=2,
        dated="2026-11-25",
        line="everyday",
        line_version="2026.2",
        total=Decimal("810.70"),
        currency="EUR",
        delivery_days=20,
        choices=SETUP.choices,
        extras=("ET",),
        accepted=ACCEPTED,
    )
    return replace(order, **other)  # type: ignore[arg-type]


def plain(order: OrderFile) -> OrderFile:
    """Without the places in the file, and with paths as they are meant."""
    paths = {
        name: None if path is None else path.resolve()
        for name, path in (
            ("client_path", order.client_path),
            ("setup_path", order.setup_path),
            ("price_list", order.price_list),
        )
    }
    accepted = tuple(replace(each, where="") for each in order.accepted)
    return replace(order, where={}, accepted=accepted, **paths)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "other",
    [
        {},
        {"price_list": None, "number": "", "dated": "", "extras": (), "accepted": ()},
        {"total": Decimal("1234567.805"), "line_version": "1.10"},
        {"total": Decimal(0)},
    ],
)
def test_what_is_written_is_read_again(tmp_path: Path, other: dict[str, object]) -> None:
    order = made(tmp_path, **other)
    write_order(order)
    found = read_order(order.path)
    assert plain(found) == plain(order)
    assert str(found.total) == str(order.total)
    assert found.setup.choices == SETUP.choices
    assert found.setup.client_path.resolve() == order.client_path.resolve()


def test_a_line_file_is_named_from_the_orders_folder(tmp_path: Path) -> None:
    order = made(tmp_path, line=str(tmp_path / "lines" / "ours.yaml"))
    write_order(order)
    assert 'line: "../lines/ours.yaml"' in order.path.read_text("utf-8")
    assert Path(read_order(order.path).line).resolve() == tmp_path / "lines" / "ours.yaml"


def test_a_file_that_is_there_stays(tmp_path: Path) -> None:
    order = made(tmp_path)
    write_order(order)
    with pytest.raises(InputError, match="must not exist yet"):
        write_order(replace(order, revision=3))
    assert read_order(order.path).revision == 2
    write_order(replace(order, revision=3), overwrite=True)
    assert read_order(order.path).revision == 3


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("revision: 2", "revision: 0", "it must be at least 1"),
        ("revision: 2", "revision: two", "it must be a whole number"),
        ('total: "810.70"', "total: -1", "from 0 to"),
        ('total: "810.70"\n', "", "total must be given"),
        ('dated: "2026-11-25"', "dated: 25.11.2026", "a day of the calendar"),
        ("currency: EUR", "", "currency must be given"),
        ("delivery_days: 20", "delivery_days: 1.5", "whole number"),
        ("  seat_width:", "  seat_widht:", "Did you mean seat_width?"),
        ("    at_least: 12.0\n", "", "has at_least or at_most"),
        ('    by: "B"\n', "", "by must be given"),
        ('    reason: "none is fitted"\n', "", "reason must be given"),
        ("client_file:", "client_fil:", "Did you mean client_file?"),
    ],
)
def test_a_mistake_is_told_at_its_line(tmp_path: Path, old: str, new: str, words: str) -> None:
    order = made(tmp_path)
    write_order(order)
    text = order.path.read_text("utf-8")
    assert old in text
    order.path.write_text(text.replace(old, new, 1), encoding="utf-8")
    with pytest.raises(InputError) as caught:
        read_order(order.path)
    assert words in str(caught.value)
    assert f"{order.path}:" in str(caught.value)


@pytest.mark.parametrize(
    ("text", "good"),
    [
        ("2026-11-25", True), ("2024-02-29", True), ("2000-02-29", True), ("2100-02-29", False),
        ("2026-02-29", False), ("2026-04-31", False), ("2026-13-01", False), ("2026-00-10", False),
        ("2026-1-1", False), ("2026-11-25 ", False), ("", False),
    ],
)  # fmt: skip
def test_days_of_the_calendar(text: str, good: bool) -> None:
    # Leap years: by 4, not by 100, but by 400 (the Gregorian calendar).
    assert is_date(text) == good
