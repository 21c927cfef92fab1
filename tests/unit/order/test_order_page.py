"""The page on orders shows files that are read, and lists every key."""

from __future__ import annotations

import re
from pathlib import Path

from chairwright.files.order import KEYS as ORDER_KEYS
from chairwright.files.order import read_order
from chairwright.line.load import load_line
from chairwright.order.price_list_checks import check_price_list
from chairwright.order.price_list_read import KEYS as PRICE_KEYS
from chairwright.order.price_list_read import read_price_list

PAGE = (Path(__file__).parents[3] / "docs" / "reference" / "order-file.md").read_text("utf-8")
ORDER, PRICES = re.findall(r"^```yaml\n(.*?)^```$", PAGE, re.MULTILINE | re.DOTALL)


def test_the_order_of_the_page_is_read(tmp_path: Path) -> None:
    path = tmp_path / "order.yaml"
    path.write_text(ORDER, encoding="utf-8")
    found = read_order(path)
    assert (found.client, str(found.total), found.accepted[0].value) == ("AVG-001", "810.70", 238.0)


def test_the_price_list_of_the_page_is_read(tmp_path: Path) -> None:
    path = tmp_path / "prices.yaml"
    path.write_text(PRICES, encoding="utf-8")
    check_price_list(read_price_list(path), load_line("everyday"))


def test_every_key_is_on_the_page() -> None:
    order, prices = PAGE.split("\n## Order file\n")[1].split("\n## Price list\n")
    for part, keys in ((order, ORDER_KEYS), (prices, PRICE_KEYS)):
        rows = [line.split(" | ")[0] for line in part.splitlines() if line.startswith("| `")]
        told = {key for row in rows for key in re.findall(r"`(\w+)`", row)}
        assert set(keys) <= told
