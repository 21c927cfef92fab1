"""``chairwright order`` and ``chairwright adjust``: text, JSON, exit codes, files, refusals."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import Any

import pytest

from chairwright.cli import adjust as adjust_command
from chairwright.cli import order as order_command
from chairwright.cli.report import run_quietly
from chairwright.files.order import read_order
from tests.laws.example_sweeps import EXAMPLES, SETUPS

ORDERS = SETUPS.parent / "orders"
PRICES = str(ORDERS / "everyday-2026.yaml")
AVERAGE = str(SETUPS / "avg-001.yaml")
BY, WHY = "R. Amadi, OT", "wants it lower at the desk"


def run(command: Any, *words: str) -> int:
    parser = argparse.ArgumentParser(allow_abbrev=False)
    command.add_arguments(parser)
    return run_quietly(lambda: int(command.run(parser.parse_args(list(words)))))


def order(*words: str) -> int:
    return run(order_command, *words)


def ordered(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, dict[str, Any]]:
    capsys.readouterr()
    code = order(*words, "--json")
    return code, json.loads(capsys.readouterr().out)


def pads_low(folder: Path, code: str = "AW-250") -> str:
    """The average client's set-up with arm pads below what must hold."""
    text = Path(AVERAGE).read_text("utf-8")
    client = (SETUPS.parent / "clients" / "avg-001.yaml").as_posix()
    text = text.replace("../clients/avg-001.yaml", client).replace("AW-275", code)
    path = folder / f"low-{code.lower()}.yaml"
    path.write_text(text, encoding="utf-8")
    return str(path)


def accepted(*words: str) -> tuple[str, ...]:
    return (*words, "--accept", "arm_height_mm", "--by", BY, "--reason", WHY)


def test_the_text_has_every_part_of_an_order(capsys: pytest.CaptureFixture[str]) -> None:
    assert order(AVERAGE, "--price-list", PRICES, "--date", "2026-11-25", "--number", "MY-17") == 0
    text = capsys.readouterr().out
    for words in (
        "Order MY-17 for AVG-001, revision 1, dated 2026-11-25",
        "May be sent: every must holds.",
        "axle plate, column E, row 8",
        "55 mm ahead, 196 mm below",
        "Everything is in the standard range.",
        "Rated load 130 kg (side frame SFL): 52.0 kg to spare.",
        "Prices in EUR: Everyday chairs, winter 2026",
        "Delivery in 20 days. The longest path:",
        "rounded by itself, half a unit up",
    ):
        assert words in text, words
    # By hand: 659.90 + 60 + 40 + 45 = 804.90; 12.5 % off each: 82.49, 7.50, 5.00, 5.63 = 100.62;
    # 48 on: 752.28; 7 % of 704.28 = 49.30; 19 % of 48 = 9.12.
    for amount in ("804.90", "-100.62", "752.28", "49.30", "9.12", "810.70"):
        assert f" {amount}" in text, amount


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_example_can_be_ordered(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    code, found = ordered(capsys, str(SETUPS / f"{name}.yaml"), "--price-list", PRICES)
    assert code == 0
    assert not found["refused"]
    assert found["order"]["client"] == name.upper()
    lines = found["prices"]["lines"]
    assert all(isinstance(line["net"], str) for line in lines)
    assert order(str(SETUPS / f"{name}.yaml"), "--units", "in") == 0
    assert max(map(len, capsys.readouterr().out.splitlines())) < 200


def test_a_missed_must_refuses_and_writes_nothing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    setup, out = pads_low(tmp_path), tmp_path / "order.yaml"
    assert order(setup, "--out", str(out)) == 2
    told = capsys.readouterr()
    assert "REFUSED. Do not send this order" in told.out
    assert '--accept arm_height_mm --by NAME --reason "TEXT"' in told.out
    assert "not written, because the order is refused" in told.err
    assert not out.exists()


def test_accepted_by_name_it_is_written_printed_and_kept(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    setup, out = pads_low(tmp_path), tmp_path / "order.yaml"
    assert order(*accepted(setup, "--price-list", PRICES, "--out", str(out))) == 0
    text = capsys.readouterr().out
    assert "apart from what is accepted by name" in text
    assert f"accepted by {BY} in revision 1: {WHY}" in text
    (kept,) = read_order(out).accepted
    assert (kept.figure, kept.by, kept.reason, kept.value) == ("arm_height_mm", BY, WHY, 238.0)
    assert order(str(out)) == 0
    text = capsys.readouterr().out
    assert f"accepted by {BY} in revision 1: {WHY}" in text
    assert "Nothing differs from revision 1." in text
    code, found = ordered(capsys, str(out))
    assert code == 0
    assert found["musts_not_met"][0]["accepted"] == {"by": BY, "reason": WHY, "revision": 1}


def test_a_revision_says_what_differs(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    first, second = tmp_path / "one.yaml", tmp_path / "two.yaml"
    assert order(AVERAGE, "--price-list", PRICES, "--number", "MY-17", "--out", str(first)) == 0
    capsys.readouterr()
    lower = pads_low(tmp_path)
    assert order(lower, "--against", str(first)) == 2
    assert "Revision 2 against revision 1" in capsys.readouterr().out
    assert order(*accepted(lower, "--against", str(first), "--out", str(second))) == 0
    text = capsys.readouterr().out
    assert "Order MY-17 for AVG-001, revision 2" in text
    assert "AW-275, narrow arm support" in text
    assert read_order(second).revision == 2
    # The second order file, shown again, needs no set-up file: it holds every code.
    Path(lower).unlink()
    assert order(str(second)) == 0
    assert "Nothing differs from revision 2." in capsys.readouterr().out


def test_an_order_on_file_tells_that_prices_have_changed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    prices, out = tmp_path / "prices.yaml", tmp_path / "order.yaml"
    text = Path(PRICES).read_text("utf-8")
    prices.write_text(text, encoding="utf-8")
    assert order(AVERAGE, "--price-list", str(prices), "--out", str(out)) == 0
    # 10 more for the chair: 669.90, 12.5 % off 83.74; net 586.16, 8.75 more; tax 49.91: 9.36 more.
    prices.write_text(text.replace("659.90", "669.90"), encoding="utf-8")
    code, found = ordered(capsys, str(out))
    assert code == 0
    assert found["changes"] == [
        {"topic": "total", "label": "Total", "before": "810.70 EUR", "after": "820.06 EUR (+9.36)"}
    ]


def test_the_json_shows_the_longest_path(capsys: pytest.CaptureFixture[str]) -> None:
    _, found = ordered(capsys, AVERAGE)
    assert found["delivery"]["days"] == 17
    assert [step["kind"] for step in found["delivery"]["longest_path"]] == ["standard", "build"]
    assert found["prices"]["total"] == "785.00"
    assert found["remarks"][0].startswith("No price list is named")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--accept", "arm_height_mm"), "each accepted must needs a name and a reason"),
        (("--by", BY), "got 0 --accept, 1 --by, 0 --reason"),
        (("--accept", "arm_height_mm", "--by", BY, "--reason", WHY), "This set-up misses none"),
        (("--date", "25.11.2026"), "--date: it must be a day of the calendar"),
        (("--number", "x" * 81), "--number: a number must be one line"),
        (("--price-list", AVERAGE), "the file must say 'format: chairwright price list 1'"),
        (("--price-list", "nowhere.yaml"), "nowhere.yaml: the file must exist"),
        (("--against", AVERAGE), "the file must say 'format: chairwright order 1'"),
        (("--out", PRICES), "the file must not exist yet"),
    ],
)
def test_what_is_refused(
    words: tuple[str, ...], told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert order(AVERAGE, *words) == 2
    assert told in capsys.readouterr().err


def test_an_order_of_somebody_else(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "order.yaml"
    assert order(AVERAGE, "--out", str(out)) == 0
    capsys.readouterr()
    assert order(str(SETUPS / "tal-002.yaml"), "--against", str(out)) == 2
    told = capsys.readouterr().err
    assert f"{out}:2: client: the order must be for the client of the set-up, TAL-002" in told


def test_the_example_order(capsys: pytest.CaptureFixture[str]) -> None:
    assert order(str(ORDERS / "avg-001-order.yaml")) == 0
    text = capsys.readouterr().out
    assert "Nothing differs from revision" in text
    assert "accepted by" in text


def test_an_adjustment_as_text_and_json(capsys: pytest.CaptureFixture[str]) -> None:
    two = str(SETUPS / "tal-002.yaml")
    assert run(adjust_command, AVERAGE, two) == 0
    text = capsys.readouterr().out
    assert "Adjust avg-001 to tal-002: Everyday folding chair" in text
    assert "Nobody sits in the chair before the last check is done." in text
    assert "   Axle hole: E8 -> D9 (25 mm back, 20 mm down)" in text
    assert run(adjust_command, AVERAGE, two, "--json") == 0
    found = json.loads(capsys.readouterr().out)
    assert found["to"]["axle_hole"] == "D9"
    assert found["steps"][-1]["state"] == "on its wheels"
    assert run(adjust_command, AVERAGE, AVERAGE) == 0
    assert "Nothing differs" in capsys.readouterr().out


PLACES = str(SETUPS.parent / "places" / "avg-001.yaml")
WIDE_DOOR = ("--accept", "overall_width_mm", "--by", BY, "--reason", "the door is widened in May")


def test_places_are_told_and_never_refuse_an_order(capsys: pytest.CaptureFixture[str]) -> None:
    """The bathroom door leaves 610 mm; the chair is 616 mm wide and needs 5 mm on each side."""
    assert order(AVERAGE, "--places", PLACES) == 0
    text = " ".join(capsys.readouterr().out.split())
    assert "May be sent: every must holds." in text
    assert "- bathroom door: fails - office door: holds" in text
    assert "The order may be sent all the same" in text
    assert '--accept overall_width_mm --by NAME --reason "TEXT"' in text
    code, data = ordered(capsys, AVERAGE, "--places", PLACES)
    assert (code, data["refused"], data["musts_not_met"]) == (0, False, [])
    said = {each["name"]: each["verdict"] for each in data["places"]}
    assert (said["bathroom door"], said["office door"]) == ("fails", "holds")
    (door,) = [each for each in data["places_not_met"] if each["place"] == "bathroom door"]
    assert (door["figure"], door["at_most"], door["value"]) == ("overall_width_mm", 600.0, 616.0)
    assert door["accepted"] is None
    _, without = ordered(capsys, AVERAGE)
    assert without["places"] is None
    same = [key for key in without if not key.startswith("places")]
    assert [without[key] for key in same] == [data[key] for key in same]


def test_what_fails_at_a_place_is_accepted_by_name_and_kept(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = str(tmp_path / "order.yaml")
    assert order(AVERAGE, "--places", PLACES, *WIDE_DOOR, "--out", out) == 0
    assert "Fails at a place and is accepted by name:" in capsys.readouterr().out
    (kept,) = read_order(out).accepted
    assert (kept.figure, kept.place, kept.by, kept.revision) == (
        "overall_width_mm", "bathroom door", BY, 1,
    )  # fmt: skip
    again = str(tmp_path / "again.yaml")
    assert order(out, "--out", again) == 0  # the places are not known now: it stands as it was
    assert read_order(again).accepted[0].place == "bathroom door"
    assert read_order(again).revision == 1
    capsys.readouterr()
    code, data = ordered(capsys, again, "--places", PLACES)
    (door,) = [each for each in data["places_not_met"] if each["place"] == "bathroom door"]
    assert (code, door["accepted"]["by"], data["changes"]) == (0, BY, [])


def test_a_door_cannot_be_accepted_without_its_places(capsys: pytest.CaptureFixture[str]) -> None:
    assert order(AVERAGE, *WIDE_DOOR) == 2
    assert "only a must that the set-up misses" in capsys.readouterr().err
    assert order(AVERAGE, "--places", str(SETUPS.parent / "places" / "tal-002.yaml")) == 2
    assert "TAL-002" in capsys.readouterr().err


def test_a_place_that_is_wide_enough_now_drops_what_was_accepted(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out, wider = str(tmp_path / "order.yaml"), tmp_path / "wider.yaml"
    assert order(AVERAGE, "--places", PLACES, *WIDE_DOOR, "--out", out) == 0
    text = Path(PLACES).read_text("utf-8")
    assert text.count("610") == 1
    wider.write_text(text.replace("610", "710"), encoding="utf-8")
    capsys.readouterr()
    code, data = ordered(capsys, out, "--places", str(wider))
    assert (code, [each["figure"] for each in data["places_not_met"]]) == (0, [])
    assert "the must holds now, and the acceptance is dropped" in " ".join(data["remarks"])
