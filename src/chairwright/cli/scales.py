"""Find the centre of mass of an occupied chair from scales under its wheels."""

from __future__ import annotations

import argparse
import json
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import OK
from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from chairwright.chair.rows import Rows
    from chairwright.cli.opened import Opened
    from chairwright.cli.report_scales import Onto, Weighed
    from chairwright.files.scales import ScalesFile
    from chairwright.mass_points import MassPoints


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright scales``."""
    parser.add_argument("scales", metavar="FILE", help="scales file (YAML)")
    parser.add_argument(
        "--onto", metavar="SETUP", type=Path,
        help="another set-up of the client: its balance with the occupant as weighed",
    )  # fmt: skip
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )


def run(args: argparse.Namespace) -> int:
    """Print what was measured, and what follows from it."""
    from chairwright.cli.report_scales import scales_text
    from chairwright.cli.report_scales_data import scales_data
    from chairwright.files.scales import read_scales

    file = read_scales(args.scales)
    weighed = _weighed(file)
    onto = None if args.onto is None else _onto(weighed, args.onto)
    if args.json:
        print(json.dumps(scales_data(weighed, onto), indent=2, allow_nan=False))
    else:
        print(scales_text(weighed, onto, args.units))
    return OK


def _weighed(file: ScalesFile) -> Weighed:
    from chairwright.cli.report_scales import Weighed
    from chairwright.scales.carried import occupant_shift
    from chairwright.scales.from_setup import with_setup
    from chairwright.scales.propagate import measured

    if file.setup_path is None:
        return Weighed(file, measured(file.session))
    opened = _opened(file, file.setup_path, file.where["setup"])
    rows, points = _real(opened)
    occupant = opened.person.occupant
    session = with_setup(file.session, rows, points, occupant, loads_on=file.loads_on)
    found = measured(session)
    if found.values["occupant_mass_kg"] <= 0.0:
        total = found.values["total_mass_kg"]
        must = f"the occupied chair must weigh more than the set-up's empty one, {total:.1f} kg"
        remedy = "Check the loads, and that the set-up is the chair that was weighed."
        got = f"{found.values['chair_mass_kg']:.1f} kg for the empty one"
        raise InputError(Problem(file.where["setup"], must, got, remedy))
    shift = occupant_shift(found, points, occupant)
    return Weighed(replace(file, session=session), found, opened.setup, shift, occupant)


def _onto(weighed: Weighed, path: Path) -> Onto:
    from chairwright.cli.report_scales import Onto
    from chairwright.scales.carried import carried_over

    if weighed.shift is None:
        must = "the scales file must name the set-up and hold a weighing with the casters raised"
        remedy = "Add them: without, the occupant's height in the chair is not known."
        got = "no set-up" if weighed.setup is None else "no 'raised'"
        raise InputError(Problem(str(weighed.file.path), must, got, remedy))
    opened = _opened(weighed.file, path, str(path))
    rows, points = _real(opened)
    there = carried_over(rows, points, opened.person.occupant, weighed.shift)
    return Onto(opened.name, opened.setup, there)


def _opened(file: ScalesFile, path: Path, where: str) -> Opened:
    from chairwright.cli.opened import open_setup

    if not path.exists():
        must = "the set-up file must be there"
        remedy = "Correct the path; in a scales file it counts from the file's own folder."
        raise InputError(Problem(where, must, f"no such file as {path}", remedy))
    opened = open_setup(path)
    reference = opened.person.client.reference
    if reference != file.client:
        must = f"the set-up must be of the client who was weighed, {file.client}"
        remedy = "Name a set-up of that client, or correct the reference."
        raise InputError(Problem(where, must, reference, remedy))
    return opened


def _real(opened: Opened) -> tuple[Rows, list[MassPoints]]:
    from chairwright.figures.evaluate import realise
    from chairwright.fitting.described import one_row

    return realise(opened.line, opened.person.occupant, one_row(opened.setup.index))
