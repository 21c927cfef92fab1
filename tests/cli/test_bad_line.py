"""Bad line files and set-up files on the command line: exit 2, and no output file touched."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

import pytest

from chairwright.cli.main import main
from tests.unit.files.samples import client_file, setup_file

LINE = (files("chairwright.line") / "lines" / "everyday.yaml").read_text("utf-8")


def line_number(text: str, part: str) -> int:
    return text[: text.index(part)].count("\n") + 1


@pytest.mark.parametrize(
    ("old", "new", "part"),
    [
        ("when: {rear_wheel: [W20]}", "when: {rear_wheel: [W99]}", "W99"),
        ("need: {side_frame: [SFS, SFL, SFK]}", "need: {side_frame: [SFS, SFX]}", "SFX"),
        ("need: {wheel_lock: [LL, LX]}", "need: {wheel_lok: [LL]}", "wheel_lok"),
        ("{code: B8, angle_deg: 8}", "{code: B8, angle_deg: 8 deg}", "8 deg"),
        ("{code: B12, angle_deg: 12}", "{code: B12}", "angle_deg must be given"),
        ("{code: B12, angle_deg: 12}", "{code: B12, angle_dg: 12}", "Did you mean angle_deg?"),
        ("{code: B12, angle_deg: 12}", "{code: B12, angle_deg: .nan}", "finite"),
    ],
)
def test_a_line_with_a_mistake_names_it_and_touches_no_file(
    old: str, new: str, part: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert LINE.count(old) == 1
    text = LINE.replace(old, new)
    line = tmp_path / "line.yaml"
    line.write_text(text, encoding="utf-8")
    out = tmp_path / "out"
    out.mkdir()
    (out / "t-1.yaml").write_text("kept", encoding="utf-8")
    words = ["fit", str(client_file(tmp_path)), "--line", str(line), "--out", str(out)]
    assert main(words) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert f"{line}:{line_number(text, new)}: " in captured.err
    assert part in captured.err
    assert "Traceback" not in captured.err
    assert [path.name for path in out.iterdir()] == ["t-1.yaml"]
    assert (out / "t-1.yaml").read_text(encoding="utf-8") == "kept"


def test_a_line_that_is_not_there_is_named(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    client = str(client_file(tmp_path))
    assert main(["fit", client, "--line", str(tmp_path / "none.yaml")]) == 2
    assert "none.yaml: the file must exist" in capsys.readouterr().err
    assert main(["fit", client, "--line", "evryday"]) == 2
    assert "everyday" in capsys.readouterr().err


def test_a_set_up_with_unknown_codes_is_refused_by_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    client_file(tmp_path)
    path = setup_file(tmp_path)
    assert main(["figures", str(path)]) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert f"{path}:5: " in captured.err
    assert "X1" in captured.err
    assert "Traceback" not in captured.err


@pytest.mark.parametrize("command", ["fit", "figures"])
def test_a_folder_or_a_missing_file_is_refused(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for path, part in [(tmp_path, "a folder"), (tmp_path / "none.yaml", "no such file")]:
        assert main([command, str(path)]) == 2
        captured = capsys.readouterr()
        assert captured.out == ""
        assert part in captured.err
