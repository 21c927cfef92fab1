"""One way from plain data to an accessible PDF (PDF/UA-1), for every paper.

A paper is one module (what is said) and one template (where it stands). The module makes a
mapping that JSON can hold and calls `typeset`; the template reads it::

    #import "hand.typ": *            // the shared page; it brings the verdict marks along
    #let data = json("data.json")
    #show: hand.with(data, kind: "Quotation")
    = Quotation
    #facts((("Client", data.reference), ("Date", data.dated)))

Beside the mapping's own keys the template finds ``paper``, ``language`` and ``purpose``. Templates
of the papers of an order lie in ``pack/`` and are named by their path, ``pack/order.typ``; every
template may import ``marks.typ`` and ``hand.typ``. The page of `hand` needs the keys
``reference``, ``order`` and ``revision``, which its header prints (shortened when they are long).
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from functools import cache
from importlib import resources
from pathlib import Path
from typing import Any, Literal, get_args

from chairwright.errors import InputError, Problem
from chairwright.papers.cautions import PURPOSE

Paper = Literal["a4", "us-letter"]

LANGUAGE = "en"
_SHARED = ("marks.typ", "hand.typ")
_NO_CLOCK = 0
_LACKING = re.compile(r"the text (.+?) could not be displayed")


def typeset(template: str, content: Mapping[str, Any], paper: Paper) -> bytes:
    """Fill a template with plain data.

    Parameters
    ----------
    template : str
        A file in the folder of this module, such as ``setup_sheet.typ`` or ``pack/order.typ``.
    content : mapping
        What JSON can hold. Text is printed as it stands; nothing in it is read as markup.
    paper : {"a4", "us-letter"}

    Returns
    -------
    bytes
        A tagged PDF; the same content gives the same bytes.

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
    data = {**content, "paper": paper, "language": LANGUAGE, "purpose": PURPOSE}
    files = {name: _file(name) for name in _SHARED}
    files["main.typ"] = _file(template)
    files["data.json"] = json.dumps(data, sort_keys=True, ensure_ascii=True).encode("ascii")
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


@cache
def _file(name: str) -> bytes:
    return resources.files("chairwright.papers").joinpath(name).read_bytes()


def _unprintable(error: RuntimeError) -> RuntimeError | InputError:
    """Say which letter the font lacks; any other error is left as it is."""
    lacking = _LACKING.search(str(error))
    if lacking is None:
        return error
    must = "the paper's font (Source Sans Pro) must have every letter that is printed"
    remedy = "Write names and reasons in letters that the font has."
    return InputError(Problem("PDF", must, lacking[1].strip("`"), remedy))


@cache
def _font_folder() -> str:
    import font_source_sans_pro

    return str(Path(font_source_sans_pro.__file__).parent / "files")
