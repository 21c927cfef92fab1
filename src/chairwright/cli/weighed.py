"""A scales file with the set-up that it names: opened, worked out, and put to a client."""

from __future__ import annotations

import argparse
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from chairwright.chair.occupant import Occupant
    from chairwright.chair.rows import Rows
    from chairwright.cli.opened import Opened
    from chairwright.files.scales import ScalesFile
    from chairwright.fitting.weighed import WeighedClient
    from chairwright.mass_points import MassPoints
    from chairwright.papers.scales_words import Weighed
    from chairwright.scales.carried import OccupantShift


def add_scales_argument(parser: argparse.ArgumentParser) -> None:
    """Add ``--scales FILE``.

    Parameters
    ----------
    parser : ArgumentParser
    """
    parser.add_argument(
        "--scales", metavar="FILE",
        help="scales file of the client: the measured centre of mass instead of the estimate",
    )  # fmt: skip


def weighed_client(path: str | None) -> WeighedClient | None:
    """What a scales file says of its client, for every set-up.

    Parameters
    ----------
    path : str or None
        None when no scales file was named.

    Returns
    -------
    WeighedClient or None

    Raises
    ------
    InputError
        When the file does not give the occupant's place in the frame.
    """
    if path is None:
        return None
    from chairwright.files.scales import read_scales
    from chairwright.fitting.weighed import WeighedClient

    weighed = weighed_with_setup(read_scales(path))
    shift, occupant = carries_over(weighed)
    file = weighed.file
    return WeighedClient(file.client, str(file.path), file.dated, occupant, shift)


def carries_over(weighed: Weighed) -> tuple[OccupantShift, Occupant]:
    """The shift that goes to other set-ups, and the occupant as estimated.

    Parameters
    ----------
    weighed : Weighed

    Returns
    -------
    tuple of OccupantShift and Occupant

    Raises
    ------
    InputError
        Without a set-up, or without a weighing with the casters raised.
    """
    if weighed.shift is None or weighed.occupant is None:
        must = "the scales file must name the set-up and hold a weighing with the casters raised"
        remedy = "Add them: without, the occupant's height in the chair is not known."
        got = "no set-up" if weighed.setup is None else "no 'raised'"
        raise InputError(Problem(str(weighed.file.path), must, got, remedy))
    return weighed.shift, weighed.occupant


def weighed_with_setup(file: ScalesFile) -> Weighed:
    """Open the set-up that was weighed, when one is named, and work everything out.

    Parameters
    ----------
    file : ScalesFile

    Returns
    -------
    Weighed

    Raises
    ------
    InputError
        When the set-up is not there, is another client's, does not go with its line, or weighs
        more than what was on the pads.
    """
    from chairwright.papers.scales_words import Weighed
    from chairwright.scales.carried import occupant_shift
    from chairwright.scales.from_setup import with_setup
    from chairwright.scales.propagate import measured

    if file.setup_path is None:
        return Weighed(file, measured(file.session))
    opened = opened_for(file, file.setup_path, file.where["setup"])
    rows, points = realised(opened)
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
    return Weighed(
        replace(file, session=session), found, opened.setup, shift, occupant, opened.name
    )


def opened_for(file: ScalesFile, path: Path, where: str) -> Opened:
    """Open a set-up of the client who was weighed.

    Parameters
    ----------
    file : ScalesFile
    path : Path
    where : str
        What names the set-up.

    Returns
    -------
    Opened

    Raises
    ------
    InputError
        When it is not there or is another client's.
    """
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


def realised(opened: Opened) -> tuple[Rows, list[MassPoints]]:
    """One set-up as rows and points of mass, with the estimated occupant."""
    from chairwright.figures.evaluate import realise
    from chairwright.fitting.described import one_row

    return realise(opened.line, opened.person.occupant, one_row(opened.setup.index))
