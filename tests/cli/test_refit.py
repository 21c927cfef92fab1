"""The command ``refit``: two clients two years later, papers, JSON, bad input."""

from __future__ import annotations

import argparse
import json
import shutil
from pathlib import Path

import pytest

from chairwright.cli import refit
from chairwright.cli.report import run_quietly

EXAMPLES = Path(__file__).parents[2] / "examples"
LATER = sorted((EXAMPLES / "refit").glob("*.yaml"))


def run(*words: str) -> int:
    parser = argparse.ArgumentParser()
    refit.add_arguments(parser)
    args = parser.parse_args(words)
    return run_quietly(lambda: refit.run(args))


def words_of(name: str, *more: str) -> tuple[str, ...]:
    later, present = EXAMPLES / "refit" / name, EXAMPLES / "setups" / name
    return (str(later), "--from", str(present), *more)


@pytest.mark.parametrize("path", LATER, ids=lambda path: path.stem)
@pytest.mark.parametrize("units", ["mm", "in"])
def test_the_text_says_what_changed_and_what_it_takes(
    path: Path, units: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(*words_of(path.name, "--units", units)) == 0
    text = capsys.readouterr().out
    for part in ("Hip width", "misses", "smallest change", "Kept in use", "supervised trial"):
        assert part in text


def test_json_adds_up(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(*words_of("hem-004.yaml", "--json", "--choose", "2")) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["client"] == "HEM-004"
    assert not data["present"]["meets_every_must"]
    assert data["chosen"]["row"] == 2
    for row in data["front"]:
        pieces = [*row["items"], *row["shared"]]
        assert sum(each["minutes"] for each in pieces) == row["minutes"]
        assert sum(float(each["money"]) for each in pieces) == pytest.approx(float(row["money"]))
    vectors = [(float(r["money"]), r["minutes"], r["missed"]) for r in data["front"]]
    assert vectors == sorted(vectors)
    for one in vectors:
        assert not any(
            other != one and all(o <= e for o, e in zip(other, one, strict=True))
            for other in vectors
        )
    musts = [each for each in data["chosen"]["verdicts"] if each["must"]]
    assert musts
    assert all(each["verdict"] != "fails" for each in musts)


def test_nothing_to_change_is_said_plainly(capsys: pytest.CaptureFixture[str]) -> None:
    same = EXAMPLES / "clients" / "chi-007.yaml"
    assert run(str(same), "--from", str(EXAMPLES / "setups" / "chi-007.yaml")) == 0
    assert "Nothing has to change." in capsys.readouterr().out


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_files(paper: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    words = words_of("chi-007.yaml", "--out", str(tmp_path), "--paper", paper)
    assert run(*words) == 0
    names = ["adjust-sheet.pdf", "setup.yaml", "sheet.pdf"]
    assert sorted(each.name for each in tmp_path.iterdir()) == [f"chi-007-refit-{n}" for n in names]
    before = {each: each.read_bytes() for each in tmp_path.iterdir()}
    assert run(*words) == 2
    assert "must not exist yet" in capsys.readouterr().err
    assert run(*words, "--replace") == 0
    assert {each: each.read_bytes() for each in tmp_path.iterdir()} == before
    later = EXAMPLES / "refit" / "chi-007.yaml"
    capsys.readouterr()
    assert run(str(later), "--from", str(tmp_path / "chi-007-refit-setup.yaml")) == 0
    assert "Nothing has to change." in capsys.readouterr().out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (words_of("chi-007.yaml", "--choose", "99"), "row of the trade-off"),
        (words_of("chi-007.yaml", "--choose", "0"), "row of the trade-off"),
        (
            (str(LATER[0]), "--from", str(EXAMPLES / "setups" / "tal-002.yaml")),
            "that of the client",
        ),
        ((str(LATER[0]), "--from", str(EXAMPLES / "nowhere.yaml")), "nowhere.yaml"),
    ],
)
def test_bad_input(
    words: tuple[str, ...], said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(*words, "--out", str(tmp_path / "out")) == 2
    got = capsys.readouterr()
    assert said in got.err
    assert got.out == ""
    assert not (tmp_path / "out").exists()


def test_a_frame_that_does_not_do(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    # 700 mm from back to knee: the small frame takes a seat depth of up to 400 mm
    shutil.copytree(EXAMPLES / "clients", tmp_path / "clients")
    text = (EXAMPLES / "refit" / "chi-007.yaml").read_text("utf-8")
    assert "buttock_thigh_depth: 38.5 cm" in text
    path = tmp_path / "later.yaml"
    path.write_text(text.replace("38.5 cm", "45 cm").replace("130 cm", "140 cm"), encoding="utf-8")
    assert run(str(path), "--from", str(EXAMPLES / "setups" / "chi-007.yaml")) == 0
    out = capsys.readouterr().out
    assert "With the present frame kept no change meets every must." in out
    assert "Which must fails with the present frame kept" in out
    assert "new frame" in out


def test_a_chair_of_another_maker(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    client, chair = (str(EXAMPLES / each / "avg-001.yaml") for each in ("clients", "measured"))
    assert run(client, "--from", chair, "--keep", "cushion=Q50", "--json") == 0
    data = json.loads(capsys.readouterr().out)
    assert data["present"]["choices"] is None
    assert all(row["choices"]["cushion"] == "Q50" for row in data["front"])
    assert all("cushion" not in [i["choice"] for i in row["items"]] for row in data["front"])
    # 640 for the chair and 45 for the short anti-tip tube, typed from the line file
    assert data["front"][0]["money"] == "685.00"


def test_nothing_of_the_line_does(capsys: pytest.CaptureFixture[str]) -> None:
    client, chair = (str(EXAMPLES / each / "avg-001.yaml") for each in ("clients", "measured"))
    assert run(client, "--from", chair, "--keep", "cushion=Q75") == 0
    out = capsys.readouterr().out
    assert "Nothing of this line (Everyday folding chair) meets every must." in out
    assert "What would have to give" in out


def test_papers_of_a_new_chair(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    client, chair = (str(EXAMPLES / each / "avg-001.yaml") for each in ("clients", "measured"))
    assert run(client, "--from", chair, "--out", str(tmp_path)) == 0
    assert "It is of another maker: on the everyday folding chair everything is new." in (
        " ".join(capsys.readouterr().out.split())
    )
    names = {each.name for each in tmp_path.iterdir()}
    assert names == {"avg-001-refit-setup.yaml", "avg-001-refit-sheet.pdf"}


@pytest.mark.parametrize(
    ("keep", "said"),
    [("cushion", "CHOICE=CODE"), ("cushin=Q75", "choice of the line"), ("cushion=Q7", "a code of")],
)
def test_bad_keep(keep: str, said: str, capsys: pytest.CaptureFixture[str]) -> None:
    client, chair = (str(EXAMPLES / each / "avg-001.yaml") for each in ("clients", "measured"))
    assert run(client, "--from", chair, "--keep", keep) == 2
    assert said in capsys.readouterr().err


def test_a_set_up_names_its_own_line(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(*words_of("hem-004.yaml", "--line", "light-rigid", "--keep", "cushion=Q75")) == 2
    err = capsys.readouterr().err
    assert "--line" in err
    assert "--keep" in err
