"""The set-up sheet as an accessible PDF (PDF/UA-1)."""

from __future__ import annotations

from collections import Counter
from dataclasses import asdict
from typing import Any

from chairwright.papers.payload import SheetPayload, Verdict
from chairwright.papers.typeset import Paper, typeset

_HEAD_LETTERS = 36
_SUMMARY: dict[Verdict, str] = {
    "holds": "hold",
    "holds, not as preferred": "hold, not as preferred",
    "holds on nominal values": "hold on nominal values only",
    "not as preferred": "not as preferred",
    "fails": "fail",
    "not known": "not known",
}


def setup_sheet_pdf(payload: SheetPayload, paper: Paper = "a4") -> bytes:
    """Typeset one set-up sheet.

    Parameters
    ----------
    payload : SheetPayload
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
    InputError
        When the font does not have a letter of the text.
    """
    return typeset("setup_sheet.typ", _data(payload), paper)


def _data(payload: SheetPayload) -> dict[str, Any]:
    data = asdict(payload)
    data["summary"] = _summary(payload)
    data["head_reference"] = _short(payload.client_reference)
    data["head_setup"] = _short(payload.setup_id)
    data["head_revision"] = _short(payload.revision)
    return data


def _summary(payload: SheetPayload) -> list[dict[str, object]]:
    counts = Counter(row.verdict for group in payload.figures for row in group.rows)
    return [
        {"verdict": verdict, "count": counts[verdict], "words": words}
        for verdict, words in _SUMMARY.items()
        if counts[verdict]
    ]


def _short(text: str) -> str:
    return text if len(text) <= _HEAD_LETTERS else text[: _HEAD_LETTERS - 1] + "…"
