"""Lesson sheets as accessible PDF (PDF/UA-1)."""

from __future__ import annotations

from dataclasses import asdict

from chairwright.papers.lesson import LessonPayload
from chairwright.papers.typeset import Paper, typeset


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
