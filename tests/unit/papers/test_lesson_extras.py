"""Accessories stand on the comparison and on the lesson sheet: those that differ, those in each."""

from __future__ import annotations

from pathlib import Path

from chairwright.cli.opened import Opened, open_setup
from chairwright.fitting.compare import Side, compare
from chairwright.fitting.runs import runs_of
from chairwright.fitting.sweep import sweep
from chairwright.papers.lesson_compare import ComparePayload, compare_pdf, compare_sheet
from chairwright.papers.lesson_from_sweep import lesson_of
from chairwright.papers.lesson_pdf import lesson_pdf
from tests.laws.example_sweeps import SETUPS
from tests.unit.papers.paper_orders import read
from tests.unit.papers.test_lesson_sheet import words


def with_extras(folder: Path, *codes: str) -> Opened:
    text = (SETUPS / "avg-001.yaml").read_text("utf-8")
    client = (SETUPS.parent / "clients" / "avg-001.yaml").as_posix()
    path = folder / f"extras-{'-'.join(codes) or 'none'}.yaml"
    chosen = f"extras: [{', '.join(codes)}]\n" if codes else ""
    path.write_text(text.replace("../clients/avg-001.yaml", client) + chosen, encoding="utf-8")
    return open_setup(path)


def compared(*setups: Opened) -> ComparePayload:
    return compare_sheet(compare([Side(each.name, each.person, each.setup) for each in setups]))


def test_extras_that_differ_are_a_row_of_the_comparison(tmp_path: Path) -> None:
    code, name = "EC", "crutch holder"
    payload = compared(with_extras(tmp_path), with_extras(tmp_path, code))
    (row,) = [each for each in payload.choices if each.label == "Extras"]
    assert row.cells == (("none", "no extras"), (code, name))
    text = words(compare_pdf(payload))
    assert name in text
    assert "None: the set-ups are built alike." not in text


def test_extras_in_each_are_told_once(tmp_path: Path) -> None:
    code, name = "EC", "crutch holder"
    one = with_extras(tmp_path, code)
    payload = compared(one, one)
    assert payload.choices == ()
    assert f"Extras in each: {code}, {name}." in words(compare_pdf(payload))


def test_a_lesson_names_the_extras_on_its_one_page(tmp_path: Path) -> None:
    one = with_extras(tmp_path, "EC", "EB", "ET")
    runs = runs_of(one.line.choices["axle_hole"], one.setup.index["axle_hole"])
    made = lesson_of(sweep(one.person, one.setup, "axle_hole", runs), one.name, "in", "us-letter")
    content = lesson_pdf(made, "us-letter")
    told = "extras: EC, crutch holder; EB, bag behind the back; ET, swing-away tray"
    assert told in words(content)
    assert len(read(content).pages) == 1
