"""Habits of the source: small files, documented names, a quiet core, no leftovers."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from .tree import DESK, SOURCE, modules, named, project_files, text_files

MOST_LINES = 600
LARGEST_FILE = 2_000_000
DOCUMENTED = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef
QUIET_ROOMS = [
    path for path in modules() if SOURCE in path.parents and SOURCE / "cli" not in path.parents
]
CLOCKS = {"time", "datetime"}
NETWORK = {"socket", "urllib", "http", "requests", "ssl", "ftplib"}
MACHINE_PATH = re.compile(r"(?<![\w.])/(?:home|root|work|Users)/\w|\.\./shared\b|[A-Z]:\\Users")
INDEX_ADDRESS = re.compile(r"https?://[^\s\"')]*(?:pypi|simple/|/packages/)|--(?:extra-)?index-url")
SAID_BY_NAME = re.compile(r"self|request|\w+_id")
"""Arguments that need no words: a page's request and the ids of its address."""
LEFTOVER = re.compile(
    r"\b(?:" + "|".join(["TO" + "DO", "FIX" + "ME", "X" + "XX", "HA" + "CK"]) + r")\b"
)


def test_the_project_is_seen() -> None:
    assert len(modules()) > 40
    assert {"pyproject.toml", "Makefile", "LICENSE"} <= {named(path) for path in project_files()}


def test_no_python_file_is_longer_than_600_lines() -> None:
    files = [path for path in project_files() if path.suffix == ".py"]
    lengths = {named(path): len(path.read_text("utf-8").splitlines()) for path in files}
    assert {name: count for name, count in lengths.items() if count > MOST_LINES} == {}


def test_no_file_is_larger_than_2_megabytes() -> None:
    sizes = {named(path): path.stat().st_size for path in project_files()}
    assert {name: size for name, size in sizes.items() if size > LARGEST_FILE} == {}


def public(tree: ast.Module) -> Iterator[DOCUMENTED]:
    for node in tree.body:
        if isinstance(node, DOCUMENTED) and not node.name.startswith("_"):
            yield node
            if isinstance(node, ast.ClassDef):
                yield from (
                    each
                    for each in node.body
                    if isinstance(each, ast.FunctionDef) and not each.name.startswith("_")
                )


def test_every_public_name_has_a_docstring() -> None:
    missing = []
    for path in modules():
        tree = ast.parse(path.read_text("utf-8"))
        bare = [node.name for node in public(tree) if not ast.get_docstring(node)]
        missing += [f"{named(path)}: {name}" for name in bare]
        if not ast.get_docstring(tree):
            missing.append(named(path))
    assert missing == []


def test_docstrings_of_functions_with_three_parameters_describe_them() -> None:
    missing = []
    for path in modules():
        for node in public(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.ClassDef):
                continue
            arguments = [argument.arg for argument in node.args.args]
            names = [name for name in arguments if not SAID_BY_NAME.fullmatch(name)]
            text = ast.get_docstring(node) or ""
            if len(names) >= 3 and "Parameters\n----------" not in text:
                missing.append(f"{named(path)}: {node.name}")
    assert missing == []


def imported(path: Path) -> set[str]:
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            names |= {alias.name.partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            names.add(node.module.partition(".")[0])
    return names


def test_the_core_has_no_clock_and_no_network() -> None:
    found = {named(path): imported(path) & (CLOCKS | NETWORK) for path in QUIET_ROOMS}
    assert {name: names for name, names in found.items() if names} == {}


def test_the_core_does_not_print() -> None:
    found = [
        f"{named(path)}:{node.lineno}"
        for path in QUIET_ROOMS
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Name) and node.id in ("print", "input")
    ]
    assert found == []


def test_the_desks_pages_hold_no_script_or_style_and_name_no_other_host() -> None:
    inline = re.compile(r"<style|\sstyle=|\son[a-z]+=|hx-on|javascript:|<script(?![^>]*\ssrc=)")
    elsewhere = re.compile(r"(?:src|href|url\()[=\"'(]*(?:https?:)?//")
    files = [path for path in text_files() if DESK in path.parents]
    wrong = [
        f"{named(path)}: {found[0]}"
        for path in files
        for pattern in ((inline, elsewhere) if path.suffix == ".html" else (elsewhere,))
        for found in pattern.finditer(path.read_text("utf-8"))
    ]
    assert wrong == []


def test_a_step_of_the_desks_database_is_in_its_folder() -> None:
    folders = {path.parent for path in project_files() if path.name == "models.py"}
    missing = [named(each) for each in folders if not (each / "migrations").is_dir()]
    assert missing == []


def hits(pattern: re.Pattern[str]) -> list[str]:
    return [
        f"{named(path)}:{number}: {line.strip()[:80]}"
        for path in text_files()
        if path != Path(__file__)
        for number, line in enumerate(path.read_text("utf-8").splitlines(), 1)
        if pattern.search(line)
    ]


def test_no_file_names_a_path_of_one_machine() -> None:
    assert hits(MACHINE_PATH) == []


def test_no_file_names_a_package_index() -> None:
    assert hits(INDEX_ADDRESS) == []


def test_nothing_is_left_for_later() -> None:
    assert hits(LEFTOVER) == []


def test_no_test_is_skipped_or_expected_to_fail() -> None:
    words = ["pytest.sk" + "ip", "mark.sk" + "ip", "mark.xf" + "ail", "pytest.xf" + "ail"]
    assert hits(re.compile("|".join(map(re.escape, words)))) == []


def test_every_constraint_is_a_name_and_a_version() -> None:
    (path,) = [path for path in project_files() if named(path) == "constraints.txt"]
    wrong = [
        line
        for line in path.read_text("utf-8").splitlines()
        if not re.fullmatch(r"[A-Za-z0-9._-]+==[0-9][A-Za-z0-9.]*", line)
    ]
    assert wrong == []
