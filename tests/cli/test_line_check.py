"""``chairwright line check``: every seeded mistake by its line, shipped lines clean."""

from __future__ import annotations

import json
import re
import shlex
from pathlib import Path

import pytest

from chairwright.cli.main import main
from chairwright.figures.evaluate import figures_of, realise
from chairwright.fitting.described import one_row
from chairwright.fitting.line_checks.reference import reference_occupant
from chairwright.line.load import SHIPPED, load_line
from tests.house.tree import ROOT

from .seeded_line_mistakes import EVERYDAY, SEEDS, Seed


def checked(words: list[str], capsys: pytest.CaptureFixture[str]) -> tuple[int, str, str]:
    code = main(["line", "check", *words])
    captured = capsys.readouterr()
    return code, captured.out, captured.err


@pytest.mark.parametrize("seed", SEEDS, ids=lambda seed: seed.name)
def test_a_mistake_is_told_with_its_line_and_what_to_do(
    seed: Seed, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "mine.yaml"
    path.write_text(seed.text, encoding="utf-8")
    code, out, err = checked([str(path)], capsys)
    assert code == seed.code
    here = [line for line in (out + err).splitlines() if f"{path}:{seed.line}: " in line]
    assert [line for line in here if all(word in line for word in seed.words)], out + err
    assert "Traceback" not in err


def test_there_are_many_seeds_and_none_twice() -> None:
    assert len({seed.text for seed in SEEDS}) == len({seed.name for seed in SEEDS}) == len(SEEDS)
    assert len(SEEDS) >= 20


@pytest.mark.parametrize("name", SHIPPED)
def test_a_shipped_line_has_no_mistake(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = checked([name], capsys)
    assert (code, err) == (0, "")
    assert "mistake: " not in out
    assert out.splitlines()[-1].startswith(f"{load_line(name).title}, version ")
    assert "no mistakes" in out.splitlines()[-1]


@pytest.mark.parametrize("name", SHIPPED)
def test_the_worst_strikes_that_are_named_do_strike(
    name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    _, out, _ = checked([name, "--json"], capsys)
    line = load_line(name)
    told = [f["got"] for f in json.loads(out)["findings"] if "the worst by " in f["got"]]
    for text in told:
        depth, _, codes = text.partition("the worst by ")[2].partition(" mm: ")
        figures = figures_of_codes(name, codes.split())
        struck = "caster_foot_clearance_mm" if "both" in codes else "caster_tyre_clearance_mm"
        assert figures[struck] == pytest.approx(-float(depth), abs=0.5)
    assert line.name != "everyday" or len(told) == 2


def figures_of_codes(name: str, codes: list[str]) -> dict[str, float]:
    """Figures of a set-up of which some codes are known, all others at their first option."""
    line = load_line(name)
    index = dict.fromkeys(line.choices, 0)
    for choice, code in zip(list(line.choices)[:9], codes, strict=False):
        index[choice] = line.choices[choice].codes[code]
    for code in codes[9:]:
        (choice,) = [c for c in list(line.choices)[9:] if code in line.choices[c].codes]
        index[choice] = line.choices[choice].codes[code]
    rows, _ = realise(line, reference_occupant(), one_row(index))
    return {key: float(v[0]) for key, v in figures_of(rows, reference_occupant()).items()}


def test_findings_come_in_the_order_of_the_file(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "mine.yaml"
    text = EVERYDAY.replace("width_mm: 400", "width_mm: 40").replace(
        "standoff_mm: 40", "standoff_mm: 4"
    )
    path.write_text(text, encoding="utf-8")
    code, out, _ = checked([str(path), "--json"], capsys)
    report = json.loads(out)
    lines = [int(finding["where"].split(":")[1]) for finding in report["findings"]]
    assert code == 2
    assert lines == sorted(lines)
    assert report["mistakes"] + report["remarks"] == len(lines)
    assert {"severity", "where", "must", "got", "remedy"} == set(report["findings"][0])
    assert sum(f["severity"] == "mistake" for f in report["findings"]) == report["mistakes"] >= 2


def test_a_file_that_cannot_be_read_is_told_on_standard_error(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, err = checked([str(tmp_path / "none.yaml")], capsys)
    assert (code, out) == (2, "")
    assert "none.yaml: the file must exist" in err


HOW_TO = (ROOT / "docs" / "how-to" / "write-a-line.md").read_text("utf-8")
FENCE = re.compile(r"^```(\w*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
SHOWN = [body for language, body in FENCE.findall(HOW_TO) if not language]


def test_the_how_to_can_be_followed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    lines = [line for block in SHOWN for line in block.splitlines()]
    for words in (shlex.split(line) for line in lines):
        if words[0] == "cp":
            Path(words[2]).write_bytes((ROOT / words[1]).read_bytes())
        elif words[:2] == ["chairwright", "line"]:
            assert main(words[1:]) == 0
    out = capsys.readouterr().out
    assert "no mistakes" in out
    assert "standard range" in out


def test_the_message_that_the_how_to_shows_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (seed,) = [seed for seed in SEEDS if seed.name == "inches instead of mm"]
    (shown,) = [line for block in SHOWN for line in block.splitlines() if "mistake: " in line]
    monkeypatch.chdir(tmp_path)
    Path("mine.yaml").write_text(seed.text, encoding="utf-8")
    _, out, _ = checked(["mine.yaml"], capsys)
    assert re.sub(r":\d+:", ":", shown) in re.sub(r":\d+:", ":", out)
