"""Lesson sheets and comparisons as accessible PDF (PDF/UA-1)."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import asdict
from importlib import resources
from pathlib import Path
from typing import Any, Literal, get_args

from chairwright.errors import InputError, Problem
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.lesson import LessonPayload
from chairwright.papers.sheet import LANGUAGE, Paper

Template = Literal["lesson_sheet.typ", "lesson_compare.typ", "heights_sheet.typ"]
_NO_CLOCK = 0
_LACKING = re.compile(r"the text (.+?) could not be displayed")


def lesson_pdf(payload: LessonPayload, paper: Paper = "a4") -> bytes:
    """Typeset one lesson sheet, on one page.

    Parameters
    ----------
    payload : LessonPayload
        Text is printed as it stands; nothing in it is read as markup.
    paper : {"a4", "us-letter"}

    Returns
    -------
    bytes
        A tagged PDF; the same payload gives the same bytes.

    Raises
    ------
    ValueError
        When the paper is neither of the two.
    """
    return typeset("lesson_sheet.typ", asdict(payload), paper)


def typeset(template: Template, content: Mapping[str, Any], paper: Paper) -> bytes:
    """Fill a template with plain data.

    Parameters
    ----------
    template : str
        A file beside this module.
    content : mapping
        What JSON can hold.
    paper : {"a4", "us-letter"}

    Returns
    -------
    bytes
        A tagged PDF.

    Raises
    ------
    ValueError
        When the paper is neither of the two.
    InputError
        When the font does not have a letter of the text.
    """
    import typst

    if paper not in get_args(Paper):
        message = f"paper must be one of {', '.join(get_args(Paper))}; got {paper!r}"
        raise ValueError(message)
    folder = resources.files("chairwright.papers")
    data = {**content, "paper": paper, "language": LANGUAGE, "purpose": PURPOSE}
    files = {
        "main.typ": folder.joinpath(template).read_bytes(),
        "marks.typ": folder.joinpath("marks.typ").read_bytes(),
        "data.json": json.dumps(data, sort_keys=True, ensure_ascii=True).encode("ascii"),
    }
    compile_files: Any = typst.compile  # its stub leaves out the mapping of file names to bytes
    try:
        pdf = compile_files(
            files,
            font_paths=[_font_folder()],
            ignore_system_fonts=True,
            pdf_standards=["ua-1"],
            timestamp=_NO_CLOCK,
        )
    except typst.TypstError as error:
        raise _unprintable(error) from None
    return bytes(pdf)


def _unprintable(error: RuntimeError) -> RuntimeError | InputError:
    """Say which letter the font lacks; any other error is left as it is."""
    lacking = _LACKING.search(str(error))
    if lacking is None:
        return error
    must = "the paper's font (Source Sans Pro) must have every letter that is printed"
    remedy = "Write names and reasons in letters that the font has."
    return InputError(Problem("PDF", must, lacking[1].strip("`"), remedy))


def _font_folder() -> str:
    import font_source_sans_pro

    return str(Path(font_source_sans_pro.__file__).parent / "files")
