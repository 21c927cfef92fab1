"""``chairwright import``: lines to paste, a new client file, comparison, exit codes."""

from __future__ import annotations

import argparse
import json
from pathlib import Path

import pytest

from chairwright.cli import import_measures
from chairwright.cli.report import run_quietly
from chairwright.files.client import read_client
from tests.laws.example_sweeps import SETUPS
from tests.unit.exchange.fhir import HEIGHT, MASS, bundle_of, observation, written

CLIENT = str(SETUPS.parent / "clients" / "avg-001.yaml")


def imported(*words: str | Path) -> int:
    parser = argparse.ArgumentParser(allow_abbrev=False)
    import_measures.add_arguments(parser)
    typed = [str(word) for word in words]
    return run_quietly(lambda: import_measures.run(parser.parse_args(typed)))


def usual(folder: Path) -> Path:
    resources = (observation(HEIGHT, 176, "cm"), observation(MASS, 165.5, "[lb_av]", "2026-04-02"))
    return written(folder, bundle_of(*resources))


def test_the_lines_can_be_pasted(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert imported(usual(tmp_path)) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[:3] == [
        "measures:",
        "  stature: 176 cm  # 2026-03-01",
        "  body_mass: 165.5 lb  # 2026-04-02",
    ]
    assert "The bundle's patient: H-2211." in lines
    text = "format: chairwright client 1\nreference: WR-014\nsex: female\n" + "\n".join(lines[:3])
    path = tmp_path / "client.yaml"
    path.write_text(text + "\n", encoding="utf-8")
    assert {m.name: m.value for m in read_client(path).measures} == {
        "stature": 1760.0,
        "body_mass": pytest.approx(75.0695, abs=5e-5),  # 165.5 x 0.45359237
    }


def test_it_compares_with_the_client_file(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert imported(usual(tmp_path), "--client", CLIENT) == 0
    text = capsys.readouterr().out
    assert "  stature: 176 cm  # 2026-03-01; as in the client file" in text
    assert "  body_mass: 165.5 lb  # 2026-04-02; client file: 78 kg" in text
    assert "H-2211; the client file: AVG-001. Make sure that both are the same person." in text


def test_a_new_client_file_is_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "new.yaml"
    before = Path(CLIENT).read_bytes()
    assert imported(usual(tmp_path), "--client", CLIENT, "--out", out) == 0
    assert capsys.readouterr().err == f"wrote {out}\n"
    assert Path(CLIENT).read_bytes() == before
    wanted = before.decode("utf-8").replace("body_mass: 78 kg", "body_mass: 165.5 lb")
    assert out.read_text("utf-8") == wanted
    assert imported(usual(tmp_path), "--client", CLIENT, "--out", out) == 2
    assert "must not exist yet" in capsys.readouterr().err
    assert imported(usual(tmp_path), "--client", CLIENT, "--out", out, "--replace") == 0


def test_a_file_for_the_values_needs_a_client(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert imported(usual(tmp_path), "--out", tmp_path / "new.yaml") == 2
    assert "--out: a client file is needed" in capsys.readouterr().err
    assert not (tmp_path / "new.yaml").exists()


def test_json_says_where_each_value_stands(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = usual(tmp_path)
    assert imported(path, "--client", CLIENT, "--json") == 0
    found = json.loads(capsys.readouterr().out)
    assert found["client"] == "AVG-001"
    assert found["patient_identifiers"] == ["H-2211"]
    height, mass = found["measures"]
    assert height == {
        "measure": "stature", "value": 1760.0, "unit": "mm", "typed": "176 cm",
        "observed": "2026-03-01", "status": "final", "where": f"{path}: entry[1].resource",
    }  # fmt: skip
    assert mass["where"] == f"{path}: entry[2].resource"


@pytest.mark.parametrize(
    ("content", "told"),
    [
        ("no JSON", "the file must be JSON"),
        ('{"resourceType": "Patient"}', "the file must hold a Bundle"),
        (bundle_of(observation(HEIGHT, 5.8, "[ft_i]")), "the unit of a length must be one of UCUM"),
        (bundle_of(observation(HEIGHT, 17.6, "cm")), "body height must lie between"),
        (bundle_of(observation(HEIGHT, 176, "cm", status="entered-in-error")), "entered-in-error"),
        (bundle_of(), "the bundle must have a body height"),
    ],
)
def test_what_is_refused(
    content: object, told: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert imported(written(tmp_path, content)) == 2
    found = capsys.readouterr()
    assert told in found.err
    assert "bundle.json" in found.err
    assert found.out == ""
    assert "Traceback" not in found.err


def test_a_file_that_is_not_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert imported(tmp_path / "none.json") == 2
    assert "the file must exist" in capsys.readouterr().err
