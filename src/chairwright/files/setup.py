"""Reading and writing a set-up file; see docs/reference/setup-file.md."""

from __future__ import annotations

import json
import os
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from chairwright.files.fields import Fields, open_file
from chairwright.files.wishes import read_extras
from chairwright.files.writing import write_file
from chairwright.line.choices import CHOICES
from chairwright.reading import read_yaml

FORMAT = "chairwright set-up 2"
REFERENCE = "docs/reference/setup-file.md"
LIMIT_BYTES = 200_000
LONGEST_PATH = 400
LONGEST_CODE = 24
_PLAIN = re.compile(r"(?!(?:null|true|false)$)[A-Za-z][A-Za-z0-9_-]*", re.IGNORECASE)


@dataclass(frozen=True)
class SetupFile:
    """One set-up as it stands in a file.

    Parameters
    ----------
    path : Path
        The file itself.
    client_path : Path
        The client file, found from the set-up file's own folder.
    line : str
        A shipped line's plain name, or the path of a line file.
    choices : dict of str to str
        Option code of every choice, in the order of ``line.choices.CHOICES``.
    where : dict of str to str
        ``file:line`` of ``client``, ``line`` and every choice; ``extras.CODE`` for each extra.
    extras : tuple of str
        Codes of the accessories that are fitted.
    """

    path: Path
    client_path: Path
    line: str
    choices: dict[str, str]
    where: dict[str, str] = field(default_factory=dict)
    extras: tuple[str, ...] = ()


def read_setup(path: Path | str) -> SetupFile:
    """Read one set-up file.

    Parameters
    ----------
    path : Path or str

    Returns
    -------
    SetupFile
        With an option code for every choice; whether the line has those options is for
        the line to say.

    Raises
    ------
    InputError
        With every problem of the file, by line.
    """
    path = Path(path)
    fields = open_file(read_yaml(path, LIMIT_BYTES), FORMAT, REFERENCE)
    fields.check_keys("format", "client", "line", "choices", "extras")
    client = fields.text("client", example="../clients/wr-014.yaml", longest=LONGEST_PATH) or ""
    line = fields.text("line", example="everyday", longest=LONGEST_PATH) or ""
    inner = fields.child("choices") or Fields(fields.findings, {}, ("choices",))
    inner.check_keys(*CHOICES)
    codes = {
        name: inner.text(name, example="a code of the line", longest=LONGEST_CODE)
        for name in CHOICES
    }
    extras = read_extras(fields)
    fields.findings.raise_any()
    return SetupFile(
        path=path,
        client_path=path.parent / client,
        line=str(path.parent / line) if _is_path(line) else line,
        choices={name: code for name, code in codes.items() if code is not None},
        where={key: fields.where(key) for key in ("client", "line")}
        | {name: inner.where(name) for name in CHOICES}
        | {f"extras.{code}": where for code, where in extras.items()},
        extras=tuple(extras),
    )


def write_setup(
    path: Path | str,
    client_path: Path | str,
    line: str,
    choices: Mapping[str, str],
    *,
    extras: Iterable[str] = (),
    overwrite: bool = False,
) -> None:
    """Write one set-up file, whole or not at all.

    Parameters
    ----------
    path : Path or str
    client_path : Path or str
        Written relative to the set-up file's folder.
    line : str
        A shipped line's plain name, or the path of a line file (written relative as well).
    choices : mapping of str to str
        Option code of every choice.
    extras : iterable of str
        Codes of the accessories that are fitted.
    overwrite : bool
        False refuses to replace a file that exists.

    Raises
    ------
    InputError
        When the file exists and may not be replaced, or cannot be written.
    """
    path = Path(path)
    line = _relative(line, path.parent) if _is_path(line) else line
    rows = [
        f"format: {FORMAT}",
        f"client: {_quoted(_relative(client_path, path.parent))}",
        f"line: {_quoted(line)}",
        "choices:",
        *(f"  {name}: {_quoted(choices[name])}" for name in CHOICES if name in choices),
    ]
    codes = [_quoted(code) for code in extras]
    rows += [f"extras: [{', '.join(codes)}]"] if codes else []
    write_file(path, "\n".join(rows) + "\n", overwrite=overwrite)


def _is_path(line: str) -> bool:
    return "/" in line or "." in line


def _relative(target: Path | str, folder: Path) -> str:
    text = Path(os.path.relpath(target, folder)).as_posix()
    return text if _is_path(text) else f"./{text}"


def _quoted(text: str) -> str:
    return text if _PLAIN.fullmatch(text) else json.dumps(text, ensure_ascii=False)
