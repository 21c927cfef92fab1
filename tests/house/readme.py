"""What the README shows of the program: a printed result and a picture.

``python -m tests.house.readme`` writes both again after a change that moves them.
"""

from __future__ import annotations

import contextlib
import hashlib
import io
import re
import shlex
import struct
import zlib
from pathlib import Path
from typing import Any

import font_source_sans_pro
import typst

from chairwright.cli.main import main
from chairwright.drawing.side_view import side_view
from chairwright.files.client import read_client
from chairwright.fitting.fit import fit_client
from chairwright.line.load import load_line

from .tree import ROOT

README = ROOT / "README.md"
PICTURE = ROOT / "docs" / "images" / "side-average.svg"
CLIENT = "examples/clients/avg-001.yaml"
SHOWN = re.compile(r"^```\n\$ (chairwright [^\n]+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
LEFT_OUT = "..."
DOTS_PER_INCH = 160.0
START = 8
"""Letters by which the first line of a stretch is found again."""


def printed(command: str) -> str:
    """Run a command from the project's folder and return what it prints."""
    out = io.StringIO()
    quiet = contextlib.redirect_stderr(io.StringIO())
    with contextlib.chdir(ROOT), contextlib.redirect_stdout(out), quiet:
        code = main(shlex.split(command)[1:])
    assert code == 0, command
    return out.getvalue()


def pieces(shown: str) -> list[str]:
    """The parts of a shown result between the lines that stand for something left out."""
    parts = re.split(rf"^{re.escape(LEFT_OUT)}\n", shown, flags=re.MULTILINE)
    return [part for part in parts if part.strip()]


def drawn() -> str:
    """The side view of the average client's best set-up."""
    with contextlib.chdir(ROOT):
        fit = fit_client(read_client(CLIENT), load_line("everyday"), objectives=None)
    assert fit.setup is not None
    return side_view(fit.setup.shape)


def as_png(svg: str) -> bytes:
    """The drawing in pixels, with the font that it is made for; it names the SVG it comes from."""
    page = "#set page(width: auto, height: auto, margin: 3mm)\n#image('side.svg')"
    render: Any = typst.compile
    png: bytes = render(
        {"main.typ": page.replace("'", '"').encode(), "side.svg": svg.encode()},
        font_paths=[str(Path(font_source_sans_pro.__file__).parent / "files")],
        ignore_system_fonts=True,
        format="png",
        ppi=DOTS_PER_INCH,
    )
    return png[:33] + _chunk(b"tEXt", b"Source\0" + digest(svg)) + png[33:]


def digest(svg: str) -> bytes:
    """Fingerprint of a drawing."""
    return hashlib.sha256(svg.encode()).hexdigest().encode()


def _chunk(kind: bytes, body: bytes) -> bytes:
    return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))


def refresh() -> None:
    """Write picture and printed result again; what was left out stays left out."""
    PICTURE.parent.mkdir(exist_ok=True)
    svg = drawn()
    PICTURE.write_text(svg, encoding="utf-8")
    PICTURE.with_suffix(".png").write_bytes(as_png(svg))
    README.write_text(SHOWN.sub(_again, README.read_text("utf-8")), encoding="utf-8")


def _again(found: re.Match[str]) -> str:
    lines = printed(found[1]).splitlines(keepends=True)
    parts = re.split(r"^(\.\.\.\n)", found[2], flags=re.MULTILINE)
    body = "".join(_renewed(part, lines) for part in parts)
    return f"```\n$ {found[1]}\n{body}```"


def _renewed(part: str, lines: list[str]) -> str:
    """The same stretch of lines as printed now, found by how it begins and how long it is."""
    old = part.splitlines(keepends=True)
    if not part.strip() or part == f"{LEFT_OUT}\n":
        return part
    first = old[0].rstrip("\n")[:START]
    start = next(at for at, line in enumerate(lines) if line.startswith(first))
    return "".join(lines[start : start + len(old)])


if __name__ == "__main__":
    refresh()
