"""The set-up sheet as an accessible PDF (PDF/UA-1)."""

from __future__ import annotations

import json
from collections import Counter
from dataclasses import asdict
from importlib import resources
from pathlib import Path
from typing import Any, Literal, get_args

from chairwright.papers.cautions import PURPOSE
from chairwright.papers.payload import SheetPayload, Verdict

Paper = Literal["a4", "us-letter"]

LANGUAGE = "en"
_TEMPLATES = ("setup_sheet.typ", "marks.typ")
_NO_CLOCK = 0
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
    """
    import typst

    if paper not in get_args(Paper):
        message = f"paper must be one of {', '.join(get_args(Paper))}; got {paper!r}"
        raise ValueError(message)
    folder = resources.files("chairwright.papers")
    files = {name: folder.joinpath(name).read_bytes() for name in _TEMPLATES}
    data = json.dumps(_data(payload, paper), sort_keys=True, ensure_ascii=True)
    document = {"main.typ": files["setup_sheet.typ"], "marks.typ": files["marks.typ"]}
    compile_files: Any = typst.compile  # its stub leaves out the mapping of file names to bytes
    pdf = compile_files(
        {**document, "data.json": data.encode("ascii")},
        font_paths=[_font_folder()],
        ignore_system_fonts=True,
        pdf_standards=["ua-1"],
        timestamp=_NO_CLOCK,
    )
    return bytes(pdf)


def _data(payload: SheetPayload, paper: Paper) -> dict[str, Any]:
    data = asdict(payload)
    data["paper"] = paper
    data["purpose"] = PURPOSE
    data["language"] = LANGUAGE
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


def _font_folder() -> str:
    import font_source_sans_pro

    return str(Path(font_source_sans_pro.__file__).parent / "files")
