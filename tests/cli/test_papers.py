"""``chairwright papers``: every paper or none, refused orders, names, places, refusals."""

from __future__ import annotations

import argparse
import io
import json
from pathlib import Path

import pytest
from pypdf import PdfReader

from chairwright.cli import papers as papers_command
from chairwright.cli.papers_table import ADJUST, PAPERS
from chairwright.cli.report import run_quietly
from tests.cli.test_order import AVERAGE, BY, ORDERS, PRICES, WHY, order, pads_low
from tests.laws.example_sweeps import SETUPS

ORDER = str(ORDERS / "avg-001-order.yaml")
PLACES = SETUPS.parent / "places"
ALWAYS = [name for name in PAPERS if name != ADJUST]


def papers(*words: str | Path) -> int:
    parser = argparse.ArgumentParser(allow_abbrev=False)
    papers_command.add_arguments(parser)
    typed = [str(word) for word in words]
    return run_quietly(lambda: papers_command.run(parser.parse_args(typed)))


def contents(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}


def text_of(content: bytes) -> str:
    pages = PdfReader(io.BytesIO(content)).pages
    return " ".join(" ".join(page.extract_text() for page in pages).replace("\u200b", "").split())


def test_the_pack_of_an_order_file(tmp_path: Path) -> None:
    out = tmp_path / "new" / "pack"
    assert papers(ORDER, "--out", out) == 0
    found = contents(out)
    assert set(found) == {f"avg-001-low-arms-{name}.pdf" for name in ALWAYS}
    for content in found.values():
        reader = PdfReader(io.BytesIO(content))
        assert str(reader.root_object["/Lang"]) == "en"
        assert "/StructTreeRoot" in reader.root_object
    for name in ALWAYS:
        text = text_of(found[f"avg-001-low-arms-{name}.pdf"])
        assert ("avg-001-low-arms" if name == "label" else "AVG-001") in text


def test_the_pack_of_a_set_up_file_and_the_same_bytes_again(tmp_path: Path) -> None:
    words = (AVERAGE, "--price-list", PRICES, "--number", "MY-17", "--date", "2026-11-25")
    for folder in ("one", "two"):
        assert papers(*words, "--out", tmp_path / folder) == 0
    assert contents(tmp_path / "one") == contents(tmp_path / "two")
    assert "810.70 EUR" in text_of(contents(tmp_path / "one")["avg-001-quotation.pdf"])


def test_every_paper_in_both_sizes_and_with_inches(tmp_path: Path) -> None:
    for paper, wide in (("a4", 595.276), ("letter", 612.0)):
        out = tmp_path / paper
        assert papers(ORDER, "--out", out, "--paper", paper, "--units", "in") == 0
        for name, content in contents(out).items():
            page = PdfReader(io.BytesIO(content)).pages[0]
            expected = 283.465 if name.endswith("-label.pdf") else wide
            assert float(page.mediabox.width) == pytest.approx(expected, abs=0.01)
        assert "24 1/4 in" in text_of(contents(out)["avg-001-low-arms-order.pdf"])


def test_only_some_papers_and_json(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert papers(ORDER, "--out", tmp_path, "--only", "label, order", "--json") == 0
    assert set(contents(tmp_path)) == {"avg-001-low-arms-label.pdf", "avg-001-low-arms-order.pdf"}
    printed = json.loads(capsys.readouterr().out)
    assert printed == {
        "client": "AVG-001",
        "number": "MY-2026-0117",
        "revision": 1,
        "refused": False,
        "papers": {
            "order": str(tmp_path / "avg-001-low-arms-order.pdf"),
            "label": str(tmp_path / "avg-001-low-arms-label.pdf"),
        },
    }


def test_a_refused_order_has_no_papers(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "pack"
    low = pads_low(tmp_path)
    assert papers(low, "--out", out, "--json") == 2
    assert not out.exists()
    printed = capsys.readouterr()
    assert json.loads(printed.out)["refused"] is True
    assert json.loads(printed.out)["papers"] == {}
    assert "arm_height_mm: a must is not met and nobody accepts it" in printed.err
    said = ("--accept", "arm_height_mm", "--by", BY, "--reason", WHY)
    assert papers(low, "--out", out, *said) == 0
    for name in ("quotation", "order"):
        text = text_of(contents(out)[f"low-aw-250-{name}.pdf"])
        assert f"Accepted by {BY} in revision 1: {WHY}" in text


def test_one_file_in_the_way_and_nothing_is_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    there = tmp_path / "avg-001-low-arms-label.pdf"
    there.write_bytes(b"mine")
    assert papers(ORDER, "--out", tmp_path) == 2
    assert contents(tmp_path) == {there.name: b"mine"}
    assert str(there) in capsys.readouterr().err
    assert papers(ORDER, "--out", tmp_path, "--replace") == 0
    assert there.read_bytes() != b"mine"


def test_places_stand_in_letter_and_handover(tmp_path: Path) -> None:
    assert papers(ORDER, "--out", tmp_path / "without", "--only", "letter,handover") == 0
    words = ("--only", "letter,handover", "--places", PLACES / "avg-001.yaml")
    assert papers(ORDER, "--out", tmp_path / "with", *words) == 0
    for name in ("letter", "handover"):
        file = f"avg-001-low-arms-{name}.pdf"
        assert "ramp" in text_of(contents(tmp_path / "with")[file]).lower()
        without, told = (contents(tmp_path / each)[file] for each in ("without", "with"))
        assert len(text_of(told)) > len(text_of(without))


def test_a_scheme_stands_in_the_letter(tmp_path: Path) -> None:
    words = ("--only", "letter", "--scheme", "us-hcpcs", "--fact", "hours_a_day=8")
    assert papers(ORDER, "--out", tmp_path, *words) == 0
    text = text_of(contents(tmp_path)["avg-001-low-arms-letter.pdf"])
    assert "What the payer's criteria ask" in text.replace("\u2019", "'")


def test_label_and_day_of_delivery_as_they_are_said(tmp_path: Path) -> None:
    words = ("--only", "label,handover", "--serial", "CH-0042", "--gtin", "6291041500213",
             "--delivered", "2026-12-01")  # fmt: skip
    assert papers(ORDER, "--out", tmp_path, *words) == 0
    label = text_of(contents(tmp_path)["avg-001-low-arms-label.pdf"])
    assert "CH-0042" in label
    assert "(01)06291041500213" in label
    assert "December" in text_of(contents(tmp_path)["avg-001-low-arms-handover.pdf"])


def test_the_set_up_sheet_says_where_a_missed_must_is_accepted(tmp_path: Path) -> None:
    assert papers(ORDER, "--out", tmp_path, "--only", "set-up-sheet") == 0
    text = text_of(contents(tmp_path)["avg-001-low-arms-set-up-sheet.pdf"])
    assert "accepted by name, with a reason, in order MY-2026-0117, revision 1." in text
    assert "do not build it before" not in text


def test_the_adjust_sheet_comes_with_the_chair_as_it_is(tmp_path: Path) -> None:
    assert papers(ORDER, "--out", tmp_path, "--from", AVERAGE) == 0
    found = contents(tmp_path)
    assert set(found) == {f"avg-001-low-arms-{name}.pdf" for name in PAPERS}
    text = text_of(found["avg-001-low-arms-adjust-sheet.pdf"])
    assert "AW-275" in text
    assert "AW-250" in text
    assert "avg-001-low-arms" in text
    pages = PdfReader(io.BytesIO(found["avg-001-low-arms-adjust-sheet.pdf"])).pages
    for number, page in enumerate(pages, 1):
        words = " ".join(page.extract_text().split())
        assert "client AVG-001 order MY-2026-0117 revision 1" in words
        assert f"Page {number} of {len(pages)}" in words


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--only", "lable"), "Did you mean label?"),
        (("--only", ""), "--only"),
        (("--only", ADJUST), "--from"),
        (("--fact", "hours_a_day=8"), "--scheme"),
        (("--gtin", "6291041500214"), "check digit"),
        (("--gtin", "6291041500213", "--serial", "x" * 21), "--serial"),
        (("--serial", "x" * 81), "--serial"),
        (("--delivered", "2026-02-30"), "2026-02-30"),
        (("--places", str(PLACES / "tal-002.yaml")), "TAL-002"),
        (("--places", "nowhere.yaml"), "nowhere.yaml"),
        (("--scheme", "nowhere"), "nowhere"),
        (("--from", "nowhere.yaml"), "nowhere.yaml"),
        (("--from", str(SETUPS / "tal-002.yaml")), "TAL-002"),
        (("--accept", "arm_height_mm"), "--accept"),
        (("--price-list", "nowhere.yaml"), "nowhere.yaml"),
    ],
)
def test_what_is_wrong_is_said_and_nothing_is_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], words: tuple[str, ...], told: str
) -> None:
    out = tmp_path / "pack"
    assert papers(ORDER, "--out", out, *words) == 2
    assert told in capsys.readouterr().err
    assert not out.exists()


def test_a_file_is_no_folder(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "pack").write_text("mine", encoding="utf-8")
    assert papers(ORDER, "--out", tmp_path / "pack") == 2
    assert "folder" in capsys.readouterr().err


def test_a_private_reason_stays_in_the_order_file(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    why = "Private: spasms at night"
    low, kept = pads_low(tmp_path), str(tmp_path / "order.yaml")
    assert order(low) == 2
    assert "write no diagnosis there" in " ".join(capsys.readouterr().out.split())
    words = ("--accept", "arm_height_mm", "--by", BY, "--reason", why)
    assert order(low, *words, "--number", "MY-17", "--out", kept) == 0
    assert "spasms" in Path(kept).read_text("utf-8")
    assert papers(kept, "--out", tmp_path / "pack") == 0
    found = {name: text_of(content) for name, content in contents(tmp_path / "pack").items()}
    assert not [name for name, text in found.items() if "spasms" in text]
    (ordered,) = [text for name, text in found.items() if name.endswith("-order.pdf")]
    assert f"Accepted by {BY} in revision 1: the reason is kept by who accepted it" in ordered
    assert order(low, *words, "--against", kept, "--out", kept, "--replace") == 0
    assert papers(kept, "--out", tmp_path / "again") == 0
    assert not [
        name for name, content in contents(tmp_path / "again").items()
        if "spasms" in text_of(content)
    ]  # fmt: skip
