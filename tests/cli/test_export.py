"""``chairwright export``: every format, files whole or not at all, refused orders, refusals."""

from __future__ import annotations

import argparse
import io
import json
from pathlib import Path

import openpyxl
import pytest
from ezdxf import filemanagement

from chairwright.cli import export as export_command
from chairwright.cli import order as order_command
from chairwright.cli.report import run_quietly
from tests.cli.test_order import AVERAGE, BY, ORDERS, PRICES, WHY, pads_low
from tests.unit.exchange.fhir import refusals

ORDER = str(ORDERS / "avg-001-order.yaml")
TABLES = {
    "order", "parts", "settings", "dimensions", "load", "prices", "sums", "delivery", "musts",
    "changes", "remarks",
}  # fmt: skip
FILES = {"json": "a.json", "xlsx": "a.xlsx", "fhir": "a.json", "csv": "", "dxf": ""}


def export(*words: str | Path) -> int:
    parser = argparse.ArgumentParser(allow_abbrev=False)
    export_command.add_arguments(parser)
    typed = [str(word) for word in words]
    return run_quietly(lambda: export_command.run(parser.parse_args(typed)))


def place(folder: Path, kind: str) -> Path:
    return folder / "out" / FILES[kind] if FILES[kind] else folder / "out"


def contents(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}


def test_json_is_what_the_order_prints(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    parser = argparse.ArgumentParser()
    order_command.add_arguments(parser)
    order_command.run(parser.parse_args([AVERAGE, "--price-list", PRICES, "--json"]))
    printed = capsys.readouterr().out
    out = tmp_path / "order.json"
    assert export(AVERAGE, "--price-list", PRICES, "--to", "json", "--out", out) == 0
    assert out.read_text("utf-8") == printed


def test_csv_is_a_file_a_table(tmp_path: Path) -> None:
    assert export(AVERAGE, "--to", "csv", "--out", tmp_path / "new" / "out") == 0
    found = contents(tmp_path)
    assert set(found) == {f"avg-001-{name}.csv" for name in TABLES}
    assert not any(raw.startswith(b"\xef\xbb\xbf") for raw in found.values())
    words = (AVERAGE, "--to", "csv", "--out", tmp_path / "new" / "out", "--replace")
    assert export(*words, "--byte-order-mark") == 0
    assert all(raw.startswith(b"\xef\xbb\xbf") for raw in contents(tmp_path).values())


def test_xlsx_has_a_sheet_a_table(tmp_path: Path) -> None:
    out = tmp_path / "order.xlsx"
    assert export(ORDER, "--to", "xlsx", "--out", out) == 0
    book = openpyxl.load_workbook(out)
    assert {name.lower() for name in book.sheetnames} == TABLES
    assert book["Musts"]["H2"].value == "R. Amadi, occupational therapist (invented)"


def test_dxf_is_two_drawings(tmp_path: Path) -> None:
    assert export(AVERAGE, "--to", "dxf", "--units", "in", "--out", tmp_path) == 0
    found = contents(tmp_path)
    assert set(found) == {"avg-001-side.dxf", "avg-001-plan.dxf"}
    for raw in found.values():
        assert not filemanagement.read(io.StringIO(raw.decode("utf-8"))).audit().errors
        assert b" in) " in raw


def test_fhir_is_a_valid_bundle(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "bundle.json"
    words = ("--to", "fhir", "--out", out, "--date", "2026-11-25", "--measured", "2026-11-20")
    facts = ("--scheme", "us-hcpcs", "--fact", "base=K0005")
    assert export(AVERAGE, *words, *facts, "--serial", "SN-7") == 0
    assert capsys.readouterr().err == f"wrote {out}\n"
    whole = json.loads(out.read_text("utf-8"))
    assert refusals(whole) == []
    text = out.read_text("utf-8")
    for part in ('"K0005"', '"SN-7"', '"2026-11-20"', '"2026-11-25T00:00:00Z"'):
        assert part in text


def test_a_class_that_is_not_settled_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    heavy = Path(AVERAGE).with_name("tal-002.yaml")
    words = ("--to", "fhir", "--out", tmp_path / "b.json", "--scheme", "demo")
    assert export(heavy, *words) == 0
    told = capsys.readouterr().err
    whole = json.loads((tmp_path / "b.json").read_text("utf-8"))
    (request,) = [
        entry["resource"]
        for entry in whole["entry"]
        if entry["resource"]["resourceType"] == "DeviceRequest"
    ]
    # The scheme has three ladders: each gives a code, or it is told that it is not settled.
    assert len(request["codeCodeableConcept"]["coding"]) - 1 + told.count("not settled") == 3


@pytest.mark.parametrize("kind", FILES)
def test_the_same_input_gives_the_same_bytes(kind: str, tmp_path: Path) -> None:
    found = []
    for folder in (tmp_path / "one", tmp_path / "two"):
        assert export(ORDER, "--to", kind, "--out", place(folder, kind)) == 0
        found.append(contents(folder))
    assert found[0] == found[1]
    assert found[0]


@pytest.mark.parametrize("kind", FILES)
def test_nothing_is_replaced_silently(
    kind: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = place(tmp_path, kind)
    assert export(AVERAGE, "--to", kind, "--out", out) == 0
    first = contents(tmp_path)
    capsys.readouterr()
    assert export(AVERAGE, "--to", kind, "--out", out) == 2
    assert "must not exist yet" in capsys.readouterr().err
    assert {name: raw for name, raw in contents(tmp_path).items() if name in first} == first
    assert export(AVERAGE, "--to", kind, "--out", out, "--replace") == 0


def test_one_file_in_the_way_keeps_all_from_being_written(tmp_path: Path) -> None:
    (tmp_path / "avg-001-remarks.csv").write_text("mine", encoding="utf-8")
    assert export(AVERAGE, "--to", "csv", "--out", tmp_path) == 2
    assert contents(tmp_path) == {"avg-001-remarks.csv": b"mine"}


@pytest.mark.parametrize("kind", FILES)
def test_a_refused_order_is_not_written_but_its_drawings_are(
    kind: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    low = pads_low(tmp_path)
    out = place(tmp_path, kind)
    code = export(low, "--to", kind, "--out", out)
    told = capsys.readouterr().err
    assert code == (0 if kind == "dxf" else 2)
    assert out.exists() == (kind == "dxf")
    assert ("arm_height_mm" in told) == (kind != "dxf")
    accepted = ("--accept", "arm_height_mm", "--by", BY, "--reason", WHY, "--replace")
    assert export(low, "--to", kind, "--out", out, *accepted) == 0


def test_who_accepted_stands_in_the_bundle(tmp_path: Path) -> None:
    out = tmp_path / "b.json"
    assert export(ORDER, "--to", "fhir", "--out", out) == 0
    assert "accepted by R. Amadi, occupational therapist (invented)" in out.read_text("utf-8")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--to", "csv", "--serial", "7"), "--serial: it goes with --to fhir"),
        (("--to", "json", "--byte-order-mark"), "--byte-order-mark: it goes with --to csv"),
        (("--to", "fhir", "--units", "in"), "--units: it goes with --to dxf"),
        (("--to", "fhir", "--fact", "base=K0005"), "--fact: a scheme must be named"),
        (("--to", "fhir", "--scheme", "us-hcpcs", "--fact", "base=K9"), "--fact base"),
        (("--to", "fhir", "--measured", "2026-02-30"), "--measured: it must be a day"),
        (("--to", "fhir", "--serial", "a\nb"), "--serial: a serial number must be one line"),
        (("--to", "fhir", "--serial", " "), "--serial: a serial number must be one line"),
        (("--to", "json", "--accept", "arm_height_mm"), "needs a name and a reason"),
        (("--to", "json", "--date", "tomorrow"), "--date: it must be a day"),
    ],
)
def test_what_is_refused(
    words: tuple[str, ...], told: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert export(AVERAGE, *words, "--out", tmp_path / "x") == 2
    assert told in capsys.readouterr().err
    assert contents(tmp_path) == {}


def test_a_folder_is_no_file_and_a_file_no_folder(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert export(AVERAGE, "--to", "json", "--out", tmp_path, "--replace") == 2
    assert "--to json needs a file; got a folder" in capsys.readouterr().err
    path = tmp_path / "file"
    path.write_text("mine", encoding="utf-8")
    assert export(AVERAGE, "--to", "csv", "--out", path, "--replace") == 2
    assert "--to csv needs a folder; got a file" in capsys.readouterr().err
    assert path.read_text("utf-8") == "mine"
