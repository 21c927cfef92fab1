"""The files of a re-fit: the set-up that is chosen, its re-fit sheet and its adjust sheet."""

from __future__ import annotations

from pathlib import Path

from chairwright.cli.file_names import file_name
from chairwright.errors import InputError, Problem
from chairwright.files.setup import write_setup
from chairwright.files.writing import write_file
from chairwright.order.refit_chosen import ChosenRefit
from chairwright.papers.pack.adjust_sheet import adjust_sheet_pdf
from chairwright.papers.pack.refit_sheet import refit_sheet_pdf
from chairwright.papers.typeset import Paper
from chairwright.papers.words import Units

SETUP, SHEET, ADJUST = "setup.yaml", "refit-sheet.pdf", "adjust-sheet.pdf"


def _path(folder: Path, reference: str, ending: str) -> Path:
    return folder / f"{file_name(reference)}-refit-{ending.removeprefix('refit-')}"


def check_free(folder: Path, reference: str, *, replace: bool) -> None:
    """Refuse to start when a file stands in the way.

    Parameters
    ----------
    folder : Path
    reference : str
        The client's.
    replace : bool
        Whether files may be replaced.

    Raises
    ------
    InputError
        With every file that is in the way.
    """
    problems = []
    if folder.is_file():
        must = "the papers need a folder"
        problems.append(Problem(str(folder), must, "a file", "Choose another name."))
    elif not replace:
        paths = [_path(folder, reference, ending) for ending in (SETUP, SHEET, ADJUST)]
        must, remedy = "the file must not exist yet", "Say --replace, or use another folder."
        problems += [Problem(str(each), must, "a file", remedy) for each in paths if each.exists()]
    if problems:
        raise InputError(*problems)


def write_files(
    told: ChosenRefit,
    client: Path,
    folder: Path,
    paper: Paper,
    units: Units,
    *,
    overwrite: bool,
) -> list[Path]:
    """Write the sheet, and where something changes the set-up and the adjust sheet.

    Parameters
    ----------
    told : ChosenRefit
    client : Path
        The client file of today, which the set-up file names.
    folder : Path
    paper : {"a4", "us-letter"}
    units : {"mm", "in"}
    overwrite : bool

    Returns
    -------
    list of Path
        What was written. Without a change there is only the sheet.
    """
    found, setup, steps = told.refit, told.setup, told.steps
    reference = found.person.client.reference
    path = _path(folder, reference, SETUP)
    papers = {_path(folder, reference, SHEET): refit_sheet_pdf(told, paper, units)}
    if steps is not None:
        names = found.present.name, path.stem
        sheet = adjust_sheet_pdf(steps, *names, paper, units)
        papers[_path(folder, reference, ADJUST)] = sheet
    written = []
    if setup is not None and (steps is not None or found.new_chair):
        extras = [extra.code for extra in setup.extras]
        line = found.present.line
        write_setup(path, client, line, setup.codes, extras=extras, overwrite=overwrite)
        written.append(path)
    for each, content in papers.items():
        write_file(each, content, overwrite=overwrite)
        written.append(each)
    return written
