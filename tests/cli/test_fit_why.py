"""``fit --why``: the best set-up explained, and what stands against another one."""

from __future__ import annotations

import contextlib
import io
import json
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from chairwright.cli.main import main
from chairwright.files.setup import read_setup
from tests.unit.files.samples import client_file

SETTLED = "choices:\n  {rear_wheel: W22, cushion: Q50, hanger: H70, back_support: BS}\n"


def fitted(capsys: pytest.CaptureFixture[str], path: Path, *words: str) -> dict[str, Any]:
    assert main(["fit", str(path), "--no-front", "--json", *words]) == 0
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


def printed(capsys: pytest.CaptureFixture[str], path: Path, *words: str) -> str:
    assert main(["fit", str(path), *words]) == 0
    return capsys.readouterr().out


@cache
def best_codes(folder: Path) -> dict[str, str]:
    """The best set-up of the small client, found once."""
    path = client_file(folder, SETTLED)
    with contextlib.redirect_stdout(io.StringIO()):
        assert main(["fit", str(path), "--no-front", "--out", str(folder)]) == 0
    return read_setup(folder / "t-1-setup.yaml").choices


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("why")


def changed(folder: Path, name: str, more: str = "", **other: str) -> Path:
    """The best set-up with other codes, as a file."""
    best_codes(folder)
    text = (folder / "t-1-setup.yaml").read_text("utf-8")
    for choice, code in other.items():
        text = text.replace(f"  {choice}: {best_codes(folder)[choice]}", f"  {choice}: {code}")
    path = folder / f"{name}.yaml"
    path.write_text(text + more, encoding="utf-8")
    return path


def test_the_json_explains_every_target_and_every_choice(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    codes, client = best_codes(folder), folder / "client.yaml"
    found = fitted(capsys, client, "--why")
    why = found["why"]
    assert why["cost"] == found["best"]["cost"]
    assert sum(each["cost"] for each in why["targets"]) == pytest.approx(why["cost"], abs=1e-8)
    for each, verdict in zip(why["targets"], found["set_up"]["verdicts"], strict=True):
        assert {key: each[key] for key in verdict} == verdict
        if each["cost"] > 0 and each["nearer"] is not None:
            assert each["nearer"]["breaks"] or each["nearer"]["costs_more"] >= -1e-9
    told = {each["choice"]: each["chosen"] for each in why["choices"]} | why["only_option"]
    assert told == codes


def test_the_next_best_is_the_best_when_the_option_is_left_out(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The line has two cambers: without the one chosen, the other has to be taken."""
    best_codes(folder)
    found = fitted(capsys, folder / "client.yaml", "--why")
    (camber,) = [each for each in found["why"]["choices"] if each["choice"] == "camber"]
    other = {"K0": "K3", "K3": "K0"}[camber["chosen"]]
    assert camber["next_best"] == other
    path = client_file(tmp_path, SETTLED.replace("{", f"{{camber: {other}, "))
    settled = fitted(capsys, path)
    assert settled["set_up"]["choices"] == camber["choices"]
    more = settled["best"]["cost"] - found["best"]["cost"]
    assert camber["costs_more"] == pytest.approx(more, abs=1e-8)


def test_the_text_explains_in_three_parts(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    codes = best_codes(folder)
    text = printed(capsys, folder / "client.yaml", "--why")
    parts = [
        "Must\n",
        "Prefer\n",
        "What the missed preferences cost, ",
        "What each choice is worth:",
    ]
    places = [text.index(part) for part in parts]
    assert places == sorted(places)
    (row,) = [line for line in text.splitlines() if line.startswith("Axle hole ")]
    assert row.split()[2] == codes["axle_hole"]
    assert "seat width " + codes["seat_width"] in text[: places[1]]
    assert "Nothing to choose, one option is open: " in text
    assert "rear wheel W22" in " ".join(text[places[3] :].split())
    assert "List price " in text and " EUR, delivery in " in text
    assert "Trade-off" not in text


def test_a_broken_rule_is_told_with_its_reason(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The line file: the medium fork is made for 5 and 6 in casters."""
    path = changed(folder, "forked", fork="FM-4", caster="C8")
    found = fitted(capsys, folder / "client.yaml", "--why", str(path))["rejected"]
    assert any("the medium fork is made for 5 and 6 in casters" in f for f in found["forbidden"])
    text = printed(capsys, folder / "client.yaml", "--why", str(path))
    assert "It cannot be built for this client:\n- fork and hole FM-4 needs caster C5 or C6" in text


def test_broken_musts_come_with_amounts(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Hips of 15 1/2 in ask for 393.7 to 444.5 mm, printed 394 to 444; the seat is 500 mm wide."""
    path = changed(folder, "wide", seat_width="S500")
    found = fitted(capsys, folder / "client.yaml", "--why", str(path))["rejected"]
    (width,) = [each for each in found["musts_missed"] if each["figure"] == "seat_width_mm"]
    assert width["value"] == 500.0
    assert width["margin"] == pytest.approx(444.5 - 500.0, abs=1e-9)
    text = printed(capsys, folder / "client.yaml", "--why", str(path))
    assert "- Seat width 394 to 444 mm (by 56 mm): 500 mm" in text
    assert [row.split() for row in text.splitlines() if row.startswith("Seat width  ")][-1] == [
        "Seat", "width", f"{best_codes(folder)['seat_width']},",
        *f"{best_codes(folder)['seat_width'][1:]} mm S500, 500 mm".split(),
    ]  # fmt: skip


def test_what_costs_more_is_told_preference_by_preference(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A lock 0.2 kg heavier: the chair's mass costs more, if anything does."""
    path = changed(folder, "locked", wheel_lock="LL")
    found = fitted(capsys, folder / "client.yaml", "--why", str(path))
    rejected = found["rejected"]
    assert rejected["forbidden"] == rejected["not_open"] == rejected["musts_missed"] == []
    assert rejected["costs_more"] > 0
    rises = {each["figure"]: each["costs_more"] for each in rejected["shifts"]}
    assert sum(rises.values()) == pytest.approx(rejected["costs_more"], abs=1e-8)
    (mass,) = [each for each in rejected["shifts"] if each["figure"] == "chair_mass_kg"]
    assert mass["after"] - mass["before"] == pytest.approx(0.2, abs=1e-9)
    assert rejected["choices_that_differ"] == {"wheel_lock": ["LP", "LL"]}
    text = " ".join(printed(capsys, folder / "client.yaml", "--why", str(path)).split())
    assert "It meets every must, but its missed preferences cost" in text
    assert "All together" in text


def test_what_was_not_open_is_told(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = changed(folder, "asked", rear_wheel="W24", belt="YP", seat_width="MS410")
    found = fitted(capsys, folder / "client.yaml", "--why", str(path))["rejected"]
    assert found["not_open"] == [
        "the client's choices settle the rear wheel to W22, and not W24",
        "the seat width MS410 is made to order, and a standard set-up will do",
        "the belt YP is on request, and the client's choices do not name it",
    ]


def test_the_best_itself_and_a_tie_are_told_apart(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Grey and blue cost the same and weigh the same; the line lists grey first."""
    best = changed(folder, "same")
    text = printed(capsys, folder / "client.yaml", "--why", str(best))
    assert "It is the best set-up itself" in text
    blue = changed(folder, "blue", finish="FB")
    text = " ".join(printed(capsys, folder / "client.yaml", "--why", str(blue)).split())
    assert "its preferences cost the same as those of the best" in text
    assert "the line lists first is taken: finish FG." in text
    found = fitted(capsys, folder / "client.yaml", "--why", str(blue))["rejected"]
    assert found["costs_more"] == pytest.approx(0.0, abs=1e-9)


def test_extras_of_the_set_up_count(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The tray has 2.1 kg and costs 150."""
    path = changed(folder, "tray", "extras: [ET]\n")
    text = printed(capsys, folder / "client.yaml", "--why", str(path))
    (row,) = [line for line in text.splitlines() if line.startswith("Extras")]
    assert row.split() == ["Extras", "none", "ET"]
    found = fitted(capsys, folder / "client.yaml", "--why", str(path))["rejected"]
    (mass,) = [each for each in found["shifts"] if each["figure"] == "chair_mass_kg"]
    assert mass["after"] - mass["before"] == pytest.approx(2.1, abs=1e-9)


def test_without_a_best_the_reasons_are_given(
    tmp_path: Path, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    more = (
        "targets:\n  - {figure: seat_width_mm, at_most: 20 cm, must: true, reason: test}\n"
        + SETTLED.replace("{", "{seat_width: S400, ")
    )
    best_codes(folder)
    path = client_file(tmp_path, more)
    assert main(["fit", str(path), "--why"]) == 0
    captured = capsys.readouterr()
    assert "No set-up of this line meets every must" in captured.out
    assert "There is no set-up to explain" in captured.err
    text = printed(capsys, path, "--why", str(changed(folder, "same")))
    assert "there is no best to compare it with" in text
    assert fitted(capsys, path, "--why")["why"] is None


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["--line", "light-rigid"], "the set-up must be of the line light-rigid; got everyday"),
        (["--out", "somewhere"], "--out: files must be of the best set-up"),
        (["--trade", "price,lead_days"], "--trade: an explanation has no trade-off"),
        (["--line", "everyday", "--line", "light-rigid"], "--why: it must go with one line"),
    ],
)
def test_what_does_not_go_together_is_refused(
    words: list[str], message: str, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = changed(folder, "same")
    assert main(["fit", str(folder / "client.yaml"), "--why", str(path), *words]) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert message in captured.err


def test_a_code_that_the_line_does_not_have_is_refused(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = changed(folder, "unknown", caster="C9")
    assert main(["fit", str(folder / "client.yaml"), "--why", str(path)]) == 2
    assert "choices.caster: it must be an option of the line everyday" in capsys.readouterr().err
