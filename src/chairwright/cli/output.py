"""The files of one fitting: set-up, sheet, drawings, figures, all of them or none."""

from __future__ import annotations

import json
from collections.abc import Iterable
from pathlib import Path

from chairwright.cli.report_json import figures_data
from chairwright.drawing.plan_view import plan_view
from chairwright.drawing.polar import polar_chart
from chairwright.drawing.side_view import side_view
from chairwright.errors import InputError, Problem
from chairwright.files.setup import write_setup
from chairwright.files.writing import write_file
from chairwright.fitting.described import Described
from chairwright.fitting.fit import Fit
from chairwright.fitting.place_effect import place_effect
from chairwright.papers.from_fit import sheet_of
from chairwright.papers.sheet import setup_sheet_pdf
from chairwright.papers.typeset import Paper
from chairwright.papers.words import Units

ENDINGS = ("setup.yaml", "sheet.pdf", "side.svg", "plan.svg", "polar.svg", "figures.json")
NEAREST = "-nearest"
PAPERS: dict[str, Paper] = {"a4": "a4", "letter": "us-letter"}


def file_name(reference: str, line: str = "") -> str:
    """How the files of a client start: the reference, and the line's name when there are several.

    Parameters
    ----------
    reference, line : str

    Examples
    --------
    >>> file_name("WR-014"), file_name("WR-014", "light-rigid")
    ('wr-014', 'wr-014-light-rigid')
    """
    return "-".join(part.lower() for part in (reference, line) if part)


def check_free(folder: Path, names: Iterable[str]) -> None:
    """Refuse to start when a file of this client stands in the folder already.

    Parameters
    ----------
    folder : Path
    names : iterable of str
        How the files start, from `file_name`.

    Raises
    ------
    InputError
        With every file that is in the way.
    """
    paths = [
        folder / f"{name}{kind}-{end}"
        for name in names
        for kind in ("", NEAREST)
        for end in ENDINGS
    ]
    problems = [
        Problem(str(path), "the file must not exist yet", "a file", "Say --replace, or use "
                "another folder.")
        for path in paths
        if path.exists()
    ]  # fmt: skip
    if problems:
        raise InputError(*problems)


def write_files(
    fit: Fit,
    client_path: Path,
    line: str,
    folder: Path,
    paper: str,
    units: Units,
    *,
    name: str,
    overwrite: bool,
) -> list[Path]:
    """Write the files of the best set-up, or of the nearest when nothing fits.

    Parameters
    ----------
    fit : Fit
    client_path : Path
        The client file, for the set-up file.
    line : str
        The line as it was named.
    folder : Path
    paper : {"a4", "letter"}
    units : {"mm", "in"}
    name : str
        How the files start, from `file_name`.
    overwrite : bool

    Returns
    -------
    list of Path
        What was written; nothing when no set-up can be built at all. The files of a set-up
        that misses a must are called "nearest".

    Raises
    ------
    InputError
        When a file exists and may not be replaced, or cannot be written.
    """
    if fit.setup is None:
        return []
    setup_id = name + (NEAREST if fit.best is None else "")
    made = _contents(fit, fit.setup, setup_id, PAPERS[paper], units)
    first = folder / f"{setup_id}-{ENDINGS[0]}"
    extras = [extra.code for extra in fit.setup.extras]
    write_setup(first, client_path, line, fit.setup.codes, extras=extras, overwrite=overwrite)
    paths = {folder / f"{setup_id}-{end}": content for end, content in made.items()}
    for path, content in paths.items():
        write_file(path, content, overwrite=overwrite)
    return [first, *paths]


def _contents(
    fit: Fit, setup: Described, setup_id: str, paper: Paper, units: Units
) -> dict[str, str | bytes]:
    shape = setup.shape
    sheet = sheet_of(fit.person, setup, setup_id, units, paper, place_effect(fit))
    return {
        "sheet.pdf": setup_sheet_pdf(sheet, paper),
        "side.svg": side_view(shape, units=units),
        "plan.svg": plan_view(shape, units=units),
        "polar.svg": polar_chart(setup.directions_deg, setup.angles_deg),
        "figures.json": json.dumps(figures_data(setup), indent=2, allow_nan=False) + "\n",
    }
