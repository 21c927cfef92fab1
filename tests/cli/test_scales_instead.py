"""``--scales FILE``: the measured centre of mass instead of the estimate, in every command."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from chairwright.cli import compare, figures, fit, growth, measured, places
from chairwright.cli.report import run_quietly

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
SCALES = EXAMPLES / "scales" / "avg-001.yaml"
SETUP = EXAMPLES / "setups" / "avg-001.yaml"
COMMANDS: dict[str, tuple[ModuleType, tuple[str | Path, ...]]] = {
    "figures": (figures, (SETUP,)),
    "compare": (compare, (SETUP, SETUP)),
    "places": (places, (EXAMPLES / "places" / "avg-001.yaml", "--setup", SETUP)),
    "measured": (measured, (EXAMPLES / "measured" / "avg-001.yaml",)),
    "fit": (fit, (EXAMPLES / "clients" / "avg-001.yaml", "--no-front")),
    "growth": (growth, (EXAMPLES / "clients" / "avg-001.yaml", "--setup", SETUP)),
}
SAID = "Centre of mass measured on the scales (2026-11-25), "


def run(command: ModuleType, *words: str | Path) -> int:
    parser = argparse.ArgumentParser()
    command.add_arguments(parser)
    args = parser.parse_args([str(word) for word in words])
    return run_quietly(lambda: command.run(args))


def document(capsys: pytest.CaptureFixture[str], *words: str | Path) -> dict[str, Any]:
    assert run(figures, *words, "--json") == 0
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


@pytest.mark.parametrize("name", ["figures", "compare", "measured", "fit", "growth"])
def test_the_report_says_that_the_centre_was_measured(
    name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    command, words = COMMANDS[name]
    assert run(command, *words, "--scales", SCALES) == 0
    assert SAID in capsys.readouterr().out
    if name != "fit":
        assert run(command, *words) == 0
        assert SAID not in capsys.readouterr().out


def test_in_the_set_up_weighed_the_figures_are_as_weighed(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """The file's own loads: 99.4 kg, of which 36.0 on the casters 359 mm ahead of the axle."""
    found = document(capsys, SETUP, "--scales", SCALES)["figures"]
    assert found["total_mass_kg"] == pytest.approx(99.4, abs=0.01)
    assert found["com_x_mm"] == pytest.approx(359.0 * 36.0 / 99.4, abs=0.01)


@pytest.mark.parametrize("name", COMMANDS)
def test_scales_of_another_client_are_refused(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = tmp_path / "scales.yaml"
    text = SCALES.read_text(encoding="utf-8").replace("AVG-001", "TAL-002")
    setup = EXAMPLES / "setups" / "tal-002.yaml"
    text = text.replace("../setups/avg-001.yaml", str(setup))
    other.write_text(text, encoding="utf-8")
    command, words = COMMANDS[name]
    assert run(command, *words, "--scales", other) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    must = "the client on the scales must be the client of the set-up, AVG-001; got TAL-002."
    assert f"{other}: {must}" in captured.err


def changed(folder: Path, old: str, new: str) -> Path:
    path = folder / "scales.yaml"
    text = SCALES.read_text(encoding="utf-8").replace("../setups", str(EXAMPLES / "setups"))
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")
    return path


def test_a_client_measured_afresh_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    client = (EXAMPLES / "clients" / "avg-001.yaml").read_text(encoding="utf-8")
    fresh = tmp_path / "client.yaml"
    fresh.write_text(client.replace("body_mass: 78 kg", "body_mass: 84 kg"), encoding="utf-8")
    assert run(fit, fresh, "--no-front", "--scales", SCALES) == 2
    assert "must name a client file with the same measures" in capsys.readouterr().err


def test_no_height_no_figures(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = changed(tmp_path, "raised:\n  block: 60 mm\n  casters: 16.6 kg\n", "")
    assert run(figures, SETUP, "--scales", path) == 2
    assert "got no 'raised'" in capsys.readouterr().err


def test_a_set_up_that_its_line_does_not_have_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    setup = tmp_path / "setup.yaml"
    text = SETUP.read_text(encoding="utf-8").replace("axle_hole: E8", "axle_hole: E99")
    setup.write_text(text.replace("../clients", str(EXAMPLES / "clients")), encoding="utf-8")
    path = changed(tmp_path, str(EXAMPLES / "setups" / "avg-001.yaml"), str(setup))
    assert run(figures, SETUP, "--scales", path) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert "E99" in captured.err


def test_the_sheet_says_so_in_place_of_the_estimate(tmp_path: Path) -> None:
    from chairwright.cli.opened import open_setup
    from chairwright.cli.weighed import weighed_client
    from chairwright.papers.from_fit import sheet_of

    opened = open_setup(SETUP, weighed=weighed_client(str(SCALES)))
    words = " ".join(
        word
        for group in sheet_of(opened.person, opened.setup, "avg-001").figures
        for word in group.cautions
    )
    assert f"{SAID}± 4 mm fore and aft and ± 12 mm" in words
    assert "is an estimate" not in words
    plain = open_setup(SETUP)
    words = " ".join(
        word
        for group in sheet_of(plain.person, plain.setup, "avg-001").figures
        for word in group.cautions
    )
    assert "measured on the scales" not in words


def test_what_is_checked_at_the_handover_says_so_too() -> None:
    from chairwright.cli.opened import open_setup
    from chairwright.cli.weighed import weighed_client
    from chairwright.order.handover_checks import check_groups
    from chairwright.order.order import Heading, make_order
    from chairwright.order.price_list import makers_prices

    for scales, words in ((str(SCALES), "a measured"), (None, "an estimated")):
        one = open_setup(SETUP, weighed=weighed_client(scales))
        order = make_order(Heading("A-1"), one.person, one.setup, makers_prices(one.line), ())
        told = [each for group in check_groups(order, one.person, None) for each in group.cautions]
        assert any(f"with {words} centre of mass" in each for each in told)
