"""Fit every example client, print one table of results and write the sheets."""

from __future__ import annotations

import argparse
import re
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import tell
from chairwright.cli.table import text_table
from chairwright.errors import InputError, Problem
from chairwright.files.client import read_client
from chairwright.line.load import load_line

if TYPE_CHECKING:
    from chairwright.fitting.fit import Fit
    from chairwright.places.model import Surroundings

LONGEST_PROBLEM = 44
COLUMNS = (
    "client", "what is asked", "set-ups", "best: wheel, axle, caster, fork, housing, width",
    "seat mm", "back deg", "ahead deg", "side deg", "elbow deg", "wide mm",
)  # fmt: skip
RIGHT = "llrlrrrrrr"
NOTHING = "cannot be met"
CHOSEN = ("rear_wheel", "axle_hole", "caster", "fork", "caster_housing", "seat_width")
SHOWN = (
    "cushion_to_floor_front_mm",
    "tip_rear_locked_deg",
    "tip_forward_deg",
    "tip_left_deg",
    "elbow_angle_deg",
    "overall_width_mm",
)


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright demo``."""
    parser.add_argument(
        "--clients",
        metavar="DIR",
        type=Path,
        default=Path("examples/clients"),
        help="folder of client files (default: examples/clients)",
    )
    parser.add_argument(
        "--places",
        metavar="DIR",
        type=Path,
        default=Path("examples/places"),
        help="folder of places files, each named as its client's file (default: examples/places)",
    )
    parser.add_argument(
        "--line", default="everyday", help="line to choose from (default: everyday)"
    )
    parser.add_argument(
        "--out",
        metavar="DIR",
        type=Path,
        help="write set-ups, sheets and drawings there, replacing those of an earlier run",
    )


def run(args: argparse.Namespace) -> int:
    """Fit every client of a folder."""
    paths, line = client_paths(args.clients), load_line(args.line)
    from chairwright.cli.aside import processes_aside
    from chairwright.cli.file_names import file_name
    from chairwright.cli.output import write_files
    from chairwright.fitting.fit import fit_person
    from chairwright.fitting.person import read_person

    rows, effects = [], []
    for number, path in enumerate(paths, 1):
        client = read_client(path)
        tell([f"{number} of {len(paths)}: {client.reference}"])
        person = read_person(client, _surroundings(args.places / path.name))
        with processes_aside() as apart:
            fit = fit_person(
                person,
                line,
                objectives=None,
                alone=True,
                progress=lambda words: tell([f"  {words}"]),
                apart=apart,
            )
        rows.append(_row(fit))
        effects += _effect(fit)
        if args.out is not None:
            name = file_name(client.reference)
            write_files(fit, path, args.line, args.out, "a4", "mm", name=name, overwrite=True)
    print(text_table(COLUMNS, rows, RIGHT))
    print(_foot(args.out))
    print("\n".join(["", "What the clients' places decide", *(effects or ["Nothing."])]))
    return 0


def _surroundings(path: Path) -> Surroundings | None:
    from chairwright.files.places import read_places

    return read_places(path) if path.exists() else None


def _effect(fit: Fit) -> list[str]:
    """Say in a line what the places of a client changed; nothing when they changed nothing."""
    from chairwright.fitting.place_effect import place_effect
    from chairwright.papers.effect_words import effect_words
    from chairwright.papers.words import wrapped

    effect = place_effect(fit)
    if effect is None or not effect.changed:
        return []
    words = " ".join(effect_words(effect))
    return [wrapped(f"- {fit.person.client.reference}: {words}", "  ")]


def client_paths(folder: Path) -> list[Path]:
    """Return the client files of a folder, by name.

    Parameters
    ----------
    folder : Path

    Returns
    -------
    list of Path

    Raises
    ------
    InputError
        When there are none.
    """
    paths = sorted(folder.glob("*.yaml")) if folder.is_dir() else []
    if not paths:
        raise InputError(
            Problem(
                where=str(folder),
                must="there must be a folder with client files (.yaml)",
                got="no such file" if folder.is_dir() else "no such folder",
                remedy="Run from the project's own folder, or name the folder with --clients.",
            )
        )
    return paths


def _row(fit: Fit) -> list[str]:
    from chairwright.figures.registry import FIGURES
    from chairwright.papers.words import value_words

    client, setup = fit.person.client, fit.setup
    problem = re.split(r"[,;.](?= |$)", client.note, maxsplit=1)[0][:LONGEST_PROBLEM]
    start = [client.reference, problem, f"{fit.count:.2e}".replace("e+", "e")]
    if fit.best is None or setup is None:
        return [*start, NOTHING, *[""] * len(SHOWN)]
    codes = " ".join(setup.codes[name] for name in CHOSEN)
    figures = [value_words(FIGURES[name], setup.figures[name]) for name in SHOWN]
    return [*start, codes, *figures]


def _foot(out: Path | None) -> str:
    words = (
        "\nseat: loaded cushion's front edge above the floor. back, ahead, side: static tipping "
        "angle, wheels locked."
    )
    return words if out is None else f"{words}\nSheets, drawings and set-ups are in {out}."
