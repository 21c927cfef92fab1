"""The label: codes read by another program, layout, refusals."""

from __future__ import annotations

import re
from dataclasses import replace

import numpy as np
import pytest
import zxingcpp

from chairwright.errors import InputError
from chairwright.order.order import Heading
from chairwright.papers.pack.label import Label, label_content, label_of, label_pdf
from chairwright.papers.pack.machine_code import (
    GS1_LETTERS,
    MachineCode,
    full_gtin,
    gs1_code,
    plain_code,
    svg_of,
)
from tests.unit.papers.paper_orders import POINTS_PER_MM, cut_off, plain, read, usual
from tests.unit.papers.test_setup_sheet import tagged

GTIN = "6291041500213"
GROUP_SEPARATOR = "\x1d"


def picture(code: MachineCode, scale: int = 6) -> np.ndarray[tuple[int, int], np.dtype[np.uint8]]:
    """The drawn code as grey pixels."""
    drawn = svg_of(code)
    wide, high = map(int, re.findall(r'viewBox="0 0 (\d+) (\d+)"', drawn)[0])
    grey = np.full((high, wide), 255, dtype=np.uint8)
    for x, y in re.findall(r"M(\d+) (\d+)h1v1h-1z", drawn):
        grey[int(y), int(x)] = 0
    return np.kron(grey, np.ones((scale, scale), dtype=np.uint8))


def scanned(code: MachineCode) -> tuple[str, str, str]:
    """What an independent reader (ZXing) sees: symbology identifier, raw text, printed text."""
    (found,) = zxingcpp.read_barcodes(picture(code), text_mode=zxingcpp.TextMode.Plain)
    (shown,) = zxingcpp.read_barcodes(picture(code), text_mode=zxingcpp.TextMode.HRI)
    return found.symbology_identifier, found.text, shown.text


def test_every_single_wrong_digit_is_found() -> None:
    for at in range(len(GTIN)):
        for other in "0123456789":
            wrong = GTIN[:at] + other + GTIN[at + 1 :]
            if wrong != GTIN:
                with pytest.raises(InputError, match="check digit"):
                    full_gtin(wrong)


@pytest.mark.parametrize(
    "typed", ["", "123", "62910415002a3", "629104150021³", "6" * 15, GTIN[:-1]]
)
def test_what_is_no_gtin_is_refused(typed: str) -> None:
    with pytest.raises(InputError, match="--gtin"):
        full_gtin(typed)


def test_a_gtin_is_filled_up_to_fourteen_digits() -> None:
    assert full_gtin("6291 0415 00213") == "06291041500213"
    assert full_gtin("036000241457") == "00036000241457"


def test_gs1_knows_82_letters() -> None:
    """GS1 General Specifications, character set 82."""
    assert len(GS1_LETTERS) == 82


@pytest.mark.parametrize("serial", ["1", "MY-2026-0117-1", "A" * 20, "!%&'()*+,-./:;<=>?_"])
def test_a_gs1_data_matrix_is_read_as_gs1(serial: str) -> None:
    """``]d2`` is the symbology identifier of a Data Matrix with GS1 data."""
    kind, text, shown = scanned(gs1_code("06291041500213", serial))
    assert kind == "]d2"
    assert text.strip(GROUP_SEPARATOR) == f"010629104150021321{serial}"
    assert shown == f"(01)06291041500213(21){serial}"


@pytest.mark.parametrize("serial", ["", "A" * 21, "with blank", "Ä1", "a|b"])
def test_what_gs1_does_not_allow_as_a_serial_number_is_refused(serial: str) -> None:
    with pytest.raises(InputError, match="--serial"):
        gs1_code("06291041500213", serial)


@pytest.mark.parametrize("words", ["set-up a; order 1", "Grüße, Łódź", "x" * 500])
def test_a_qr_code_is_read_as_written(words: str) -> None:
    kind, text, _ = scanned(plain_code(words))
    assert kind.startswith("]Q")
    assert text == words


def test_the_code_of_a_label_names_set_up_order_and_serial() -> None:
    label = label_of(usual())
    assert label.serial == "MY-17-1"
    expected = "set-up avg-001; order MY-17, revision 1; serial MY-17-1"
    assert scanned(label.code)[1] == expected
    given = label_of(usual(), serial=" CH 0042 ")
    assert given.serial == "CH 0042"
    assert scanned(given.code)[1].endswith("; serial CH 0042")


def test_a_label_with_a_gtin_has_gs1_words_below_its_code() -> None:
    label = label_of(usual(), gtin=GTIN)
    assert scanned(label.code)[2] == "(01)06291041500213(21)MY-17-1"
    text = plain(read(label_pdf(label)).pages[0].extract_text())
    assert "(01)06291041500213(21)MY-17-1" in text


def test_an_order_without_a_number_has_a_line_for_the_serial_number() -> None:
    order = replace(usual(), heading=Heading("s"))
    label = label_of(order)
    assert label.serial == ""
    assert scanned(label.code)[1] == "set-up s; order revision 1"
    assert len(read(label_pdf(label)).pages) == 1
    with pytest.raises(InputError, match="--serial"):
        label_of(order, gtin=GTIN)


@pytest.mark.parametrize("serial", [" ", "a\nb", "x" * 81])
def test_a_serial_number_is_one_short_line(serial: str) -> None:
    with pytest.raises(InputError, match="--serial"):
        label_of(usual(), serial)


LABELS: dict[str, Label] = {
    "usual": label_of(usual()),
    "gs1": label_of(usual(), "A" * 20, GTIN),
    "long": replace(
        label_of(replace(usual(), heading=Heading("w" * 200, "N" * 80))),
        maker="M" * 60,
        line="l" * 100,
    ),
    "bare": replace(label_of(replace(usual(), heading=Heading("s"))), rated="", maker=""),
}


@pytest.mark.parametrize("name", LABELS)
def test_everything_is_on_one_small_page_and_nothing_leaves_it(name: str) -> None:
    label = LABELS[name]
    pdf = label_pdf(label)
    (page,) = read(pdf).pages
    size = [float(page.mediabox.width), float(page.mediabox.height)]
    assert size == pytest.approx([100 * POINTS_PER_MM, 60 * POINTS_PER_MM], abs=0.01)
    text = plain(page.extract_text())
    shown = ("serial", "set_up", "order", "line", "maker", "rated", "rated_words")
    content = label_content(label)
    assert [content[key] for key in shown if plain(content[key]) not in text] == []
    assert cut_off(pdf, 100.0 - 4.0) == []


def test_the_rated_load_is_the_least_limit() -> None:
    """The side frame of the everyday line bears 130 kg, which is its least limit."""
    assert LABELS["usual"].rated == "130 kg"


def test_title_language_tags_and_words_for_the_code() -> None:
    reader = read(label_pdf(LABELS["usual"]))
    assert str(reader.root_object["/Lang"]) == "en"
    assert reader.metadata is not None
    assert reader.metadata.title == "Label of the chair of set-up avg-001"
    (figure,) = tagged(reader, "/Figure")
    assert str(figure["/Alt"]).startswith("QR code: set-up avg-001; order MY-17")


def test_same_label_same_bytes() -> None:
    assert label_pdf(label_of(usual())) == label_pdf(label_of(usual()))
