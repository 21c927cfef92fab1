"""The command line as a whole: help, exit codes, and what goes wrong with the output."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from chairwright import __version__
from chairwright.cli.main import COMMANDS, Command, main
from chairwright.cli.report import run_quietly
from chairwright.cli.table import text_table
from chairwright.errors import ChairwrightError, InputError, Problem
from tests.unit.files.samples import client_file

PYTHON = [sys.executable, "-m", "chairwright.cli.main"]


def test_help_lists_every_command_and_loads_no_arrays() -> None:
    script = (
        "import sys; from chairwright.cli.main import main\n"
        "try: main(['--help'])\n"
        "except SystemExit: pass\n"
        "heavy = {'numpy', 'pydantic', 'ruamel.yaml', 'typst'}\n"
        "print('LOADED', sorted(heavy & set(sys.modules)))"
    )
    result = subprocess.run(
        [sys.executable, "-c", script], check=True, capture_output=True, text=True
    )
    assert result.stdout.endswith("LOADED []\n")
    for command in COMMANDS:
        assert f"\n    {command.name}" in result.stdout
        assert command.summary in result.stdout


def test_version(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stop:
        main(["--version"])
    assert stop.value.code == 0
    assert capsys.readouterr().out == f"chairwright {__version__}\n"


@pytest.mark.parametrize("words", [[], ["fitt"], ["person"], ["person", "a", "--jsn"]])
def test_wrong_words_end_with_2_and_a_usage_line(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as stop:
        main(words)
    assert stop.value.code == 2
    captured = capsys.readouterr()
    assert captured.err.startswith("usage: chairwright")
    assert captured.out == ""


@pytest.mark.parametrize("command", COMMANDS, ids=lambda command: command.name)
def test_every_command_explains_itself(
    command: Command, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as stop:
        main([command.name, "--help"])
    assert stop.value.code == 0
    assert f"usage: chairwright {command.name}" in capsys.readouterr().out


def test_a_full_disk_is_a_message(tmp_path: Path) -> None:
    with Path("/dev/full").open("w", encoding="utf-8") as full:
        result = subprocess.run(
            [*PYTHON, "person", str(client_file(tmp_path))],
            check=False, stdout=full, stderr=subprocess.PIPE, text=True, timeout=60,
        )  # fmt: skip
    assert result.returncode == 2
    assert result.stderr == (
        "standard output: it must be possible to read and write here; got no space left on "
        "device. Check the free space and the permissions, or choose another place.\n"
    )


def test_a_closed_pipe_is_quiet(tmp_path: Path) -> None:
    reader, writer = os.pipe()
    os.close(reader)
    result = subprocess.run(
        [*PYTHON, "person", str(client_file(tmp_path))],
        check=False, stdout=writer, stderr=subprocess.PIPE, text=True, timeout=60,
    )  # fmt: skip
    os.close(writer)
    assert (result.returncode, result.stderr) == (141, "")


def raiser(error: BaseException) -> int:
    raise error


@pytest.mark.parametrize(
    ("error", "code", "message"),
    [
        (InputError(Problem("a:1", "b", "c", "D.")), 2, "a:1: b; got c. D.\n"),
        (InputError(Problem("a", "b\nb", "c", "D.")), 2, "a: b b; got c. D.\n"),
        (ChairwrightError("cannot meet"), 2, "cannot meet\n"),
        (KeyboardInterrupt(), 130, "Stopped.\n"),
        (PermissionError(13, "Permission denied", "out/a.pdf"), 2, "out/a.pdf: it must be possible "
         "to read and write here; got permission denied. Check the free space and the "
         "permissions, or choose another place.\n"),
    ],
)  # fmt: skip
def test_errors_become_a_line_and_a_code(
    error: BaseException, code: int, message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run_quietly(lambda: raiser(error)) == code
    assert capsys.readouterr() == ("", message)


def test_a_fault_of_the_program_is_not_hidden() -> None:
    with pytest.raises(ZeroDivisionError):
        run_quietly(lambda: raiser(ZeroDivisionError()))


def test_a_flood_of_problems_is_cut(capsys: pytest.CaptureFixture[str]) -> None:
    problems = [Problem(f"a:{line}", "b", "c", "D.") for line in range(100)]
    assert run_quietly(lambda: raiser(InputError(*problems))) == 2
    lines = capsys.readouterr().err.splitlines()
    assert len(lines) == 41
    assert lines[-1] == "... and 60 more problems"


def test_columns_are_aligned() -> None:
    table = text_table(["figure", "mm"], [["seat width", "430"], ["toe", "5"]], "lr")
    assert table.splitlines() == [
        "figure       mm",
        "----------  ---",
        "seat width  430",
        "toe           5",
    ]
