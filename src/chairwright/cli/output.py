"""The files of one fitting: set-up, sheet, drawings, figures, all of them or none."""

from __future__ import annotations

import json
from pathlib import Path

from chairwright.cli.file_names import ENDINGS, NEAREST
from chairwright.cli.report_json import figures_data
from chairwright.drawing.plan_view import plan_view
from chairwright.drawing.polar import polar_chart
from chairwright.drawing.side_view import side_view
from chairwright.files.setup import write_setup
from chairwright.files.writing import write_file
from chairwright.fitting.described import Described
from chairwright.fitting.fit import Fit
from chairwright.fitting.place_effect import place_effect
from chairwright.papers.from_fit import sheet_of
from chairwright.papers.sheet import setup_sheet_pdf
from chairwright.papers.typeset import Paper
from chairwright.papers.words import Units

PAPERS: dict[str, Paper] = {"a4": "a4", "letter": "us-letter"}


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
        How the files start, from `file_names.file_name`.
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
