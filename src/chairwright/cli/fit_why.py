"""``chairwright fit --why``: the best set-up explained, or what stands against another one."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

from chairwright.cli.report import tell
from chairwright.errors import InputError, Problem
from chairwright.files.setup import SetupFile, read_setup
from chairwright.fitting.extras import with_extras
from chairwright.fitting.fit import Fit
from chairwright.fitting.rejected import why_rejected
from chairwright.fitting.setup import index_of
from chairwright.fitting.why import why_best
from chairwright.line.load import load_line
from chairwright.line.model import Line
from chairwright.papers.words import Units

Progress = Callable[[str], None]


def read_rejected(path: str, named: str | None) -> SetupFile:
    """Read a set-up file that is to be explained.

    Parameters
    ----------
    path : str
    named : str or None
        The line named on the command line; None for that of the set-up file.

    Returns
    -------
    SetupFile

    Raises
    ------
    InputError
        When the set-up is of another line than the one named.
    """
    file = read_setup(path)
    if named is not None and load_line(named).path != load_line(file.line).path:
        raise InputError(
            Problem(
                where=f"{file.where['line']}: line",
                must=f"the set-up must be of the line {named}",
                got=file.line,
                remedy="Leave --line away, or name that line.",
            )
        )
    return file


def show_best(fit: Fit, units: Units, progress: Progress, *, as_json: bool) -> None:
    """Print why the best set-up is the best; the reasons when there is none.

    Parameters
    ----------
    fit : Fit
    units : {"mm", "in"}
    progress : callable
    as_json : bool
    """
    from chairwright.cli.report_fit import fit_text
    from chairwright.cli.report_json import fit_data
    from chairwright.cli.report_why import why_text
    from chairwright.cli.report_why_data import why_data

    why = None if fit.best is None else why_best(fit, progress)
    if why is None:
        tell(["There is no set-up to explain: none meets every must. The reasons are given."])
    if as_json:
        found = {**fit_data(fit), "why": None if why is None else why_data(why)}
        print(json.dumps(found, indent=2, allow_nan=False))
        return
    print(fit_text(fit, units) if why is None else why_text(fit, why))


def show_rejected(fit: Fit, line: Line, file: SetupFile, client: Path, *, as_json: bool) -> None:
    """Print what stands against a set-up.

    Parameters
    ----------
    fit : Fit
        Of the client on the line.
    line : Line
        As its file has it.
    file : SetupFile
    client : Path
        The client file for which it is judged.
    as_json : bool
    """
    from chairwright.cli.report_json import fit_data
    from chairwright.cli.report_rejected import rejected_text
    from chairwright.cli.report_why_data import rejected_data

    if file.client_path.resolve() != client.resolve():
        tell([f"{file.path} was made for {file.client_path}; it is judged for {client} here"])
    fitted = with_extras(line, file.extras, file.where)
    rejected = why_rejected(fit, fitted, index_of(file, line))
    if as_json:
        found = {**fit_data(fit), "rejected": rejected_data(rejected)}
        print(json.dumps(found, indent=2, allow_nan=False))
        return
    print(rejected_text(fit, rejected, file.path.stem))
