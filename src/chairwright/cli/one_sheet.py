"""The one paper that some commands write beside their report: options, place, writing."""

from __future__ import annotations

import argparse
import re
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from chairwright.papers.typeset import Paper

PAPERS: dict[str, Paper] = {"a4": "a4", "letter": "us-letter"}
_NOT_IN_A_NAME = re.compile(r"[^a-z0-9._-]+")


def add_sheet_arguments(parser: argparse.ArgumentParser, sheet: str) -> None:
    """Add ``--out DIR``, ``--replace`` and ``--paper``.

    Parameters
    ----------
    parser : ArgumentParser
    sheet : str
        What the paper is called.
    """
    parser.add_argument("--out", metavar="DIR", type=Path, help=f"write the {sheet} there")
    parser.add_argument("--replace", action="store_true", help="replace a file that is there")
    parser.add_argument(
        "--paper", choices=tuple(PAPERS), default="a4", help="paper of the sheet (default: a4)"
    )


def sheet_path(args: argparse.Namespace, reference: str, ending: str) -> Path | None:
    """Where the paper goes; None when no folder is named.

    Parameters
    ----------
    args : Namespace
        With ``out`` and ``replace``.
    reference : str
        The client's.
    ending : str
        How the file's name ends, such as ``weighing-sheet.pdf``.

    Raises
    ------
    InputError
        When a file stands in the way.
    """
    if args.out is None:
        return None
    if args.out.is_file():
        must = "the sheet needs a folder"
        raise InputError(Problem(str(args.out), must, "a file", "Choose another name."))
    start = _NOT_IN_A_NAME.sub("-", reference.lower()).strip("-.") or "client"
    path: Path = args.out / f"{start}-{ending}"
    if path.exists() and not args.replace:
        must, remedy = "the file must not exist yet", "Say --replace, or use another folder."
        raise InputError(Problem(str(path), must, "a file", remedy))
    return path
