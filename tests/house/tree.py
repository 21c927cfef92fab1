"""The files that belong to the project, as the house tests see them."""

from __future__ import annotations

import subprocess
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SOURCE = ROOT / "src" / "chairwright"
DESK = ROOT / "src" / "chairwright_desk"
TEXT = {
    ".py",
    ".md",
    ".toml",
    ".yaml",
    ".csv",
    ".typ",
    ".txt",
    ".svg",
    ".html",
    ".css",
    ".js",
    ".sh",
    "",
}


@cache
def project_files() -> tuple[Path, ...]:
    """Return every file that is, or is about to be, under version control; else every file."""
    listing = ["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z"]
    try:
        result = subprocess.run(listing, cwd=ROOT, check=True, capture_output=True, text=True)
        names = [ROOT / name for name in result.stdout.split("\0") if name]
    except (OSError, subprocess.CalledProcessError):
        folders = [ROOT / name for name in ("src", "tests", "docs", "examples")]
        names = [path for folder in folders for path in folder.rglob("*")]
        names += list(ROOT.glob("*"))
    return tuple(path for path in names if path.is_file() and "__pycache__" not in path.parts)


def text_files() -> list[Path]:
    """Return the project's text files."""
    return [path for path in project_files() if path.suffix in TEXT]


def modules() -> list[Path]:
    """Return the program's Python files, without the steps of the desk's database."""
    files = [path for path in project_files() if path.suffix == ".py"]
    return [
        path
        for path in files
        if SOURCE in path.parents or (DESK in path.parents and path.parent.name != "migrations")
    ]


def named(path: Path) -> str:
    """Return a path from the project's top."""
    return path.relative_to(ROOT).as_posix()
