"""Text and YAML files from outside, read with care: every refusal names its line and its remedy.

YAML 1.2, and of that only what a hand-written file needs: one document of mappings, lists and
plain values. Anchors, aliases, tags, duplicate keys, NaN and infinity are refused.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from chairwright.errors import InputError, Problem
from chairwright.yaml_events import CONTROL, EventReader, Key, KeyPath

LIMIT_BYTES = 2_000_000
_FILL_IT = "Fill it in, or name another file."


@dataclass(frozen=True)
class FileText:
    """What a file would hold, kept elsewhere; ``name`` is what messages call it."""

    name: str
    text: str


@dataclass(frozen=True)
class YamlSource:
    """The content of one YAML file and the line on which each value stands.

    Parameters
    ----------
    path : Path
        The file, as the user named it.
    data : dict
        Plain dictionaries, lists, text, numbers, booleans and None.
    lines : dict
        Line of every key and list item, by its path from the top.
    typed : dict
        Text of every single value as it stands in the file, by its path from the top.
    """

    path: Path
    data: dict[Key, Any]
    lines: dict[KeyPath, int] = field(repr=False)
    typed: dict[KeyPath, str] = field(repr=False)

    def line_of(self, at: KeyPath = ()) -> str:
        """Return ``file.yaml:12`` for a value, or for the nearest thing around it that exists.

        Parameters
        ----------
        at : tuple of str or int
            Keys and list positions from the top, for example ``("casters", 0, "code")``.
        """
        while at and at not in self.lines:
            at = at[:-1]
        return f"{self.path}:{self.lines.get(at, 1)}"

    def text_of(self, at: KeyPath) -> str:
        """Return a single value as it was typed; empty when there is none at that place."""
        return self.typed.get(at, "")


def read_text_file(path: Path | str | FileText, limit_bytes: int = LIMIT_BYTES) -> str:
    """Read a small UTF-8 text file.

    Parameters
    ----------
    path : Path or str or FileText
    limit_bytes : int
        Larger files are refused without being read.

    Returns
    -------
    str
        The text, without a byte order mark; line ends as in the file.

    Raises
    ------
    InputError
        When the file is missing, a folder, unreadable, empty, too large, not UTF-8,
        or holds control characters.
    """
    name, raw = _named_bytes(path, limit_bytes)
    text = _decode(raw, name)
    if not text.strip():
        raise _refusal(name, "the file must not be empty", f"{len(raw)} bytes", _FILL_IT)
    control = CONTROL.search(text)
    if control:
        line = text.count("\n", 0, control.start()) + 1
        where = f"{name}:{line}"
        raise _refusal(
            where,
            "the file must be plain text",
            f"the control character U+{ord(control.group()):04X}",
            "Name a text file, or take that character out with a text editor.",
        )
    return text


def _named_bytes(path: Path | str | FileText, limit_bytes: int) -> tuple[str, bytes]:
    if not isinstance(path, FileText):
        return str(path), _read_bytes(Path(path), limit_bytes)
    raw = path.text.encode("utf-8", "surrogatepass")
    if len(raw) > limit_bytes:
        raise _too_large(path.name, limit_bytes, len(raw))
    return path.name, raw


def _read_bytes(path: Path, limit_bytes: int) -> bytes:
    where = str(path)
    try:
        if path.is_dir():
            raise _refusal(where, "a file is needed", "a folder", "Name a file in that folder.")
        if path.exists() and not path.is_file():
            raise _refusal(where, "an ordinary file is needed", "a device or pipe", "Name a file.")
        with path.open("rb") as stream:
            raw = stream.read(limit_bytes + 1)
            size = stream.seek(0, 2)
    except FileNotFoundError:
        raise _refusal(
            where, "the file must exist", "no such file", "Check the name and the folder."
        ) from None
    except (OSError, ValueError) as error:
        if isinstance(error, InputError):
            raise
        reason = getattr(error, "strerror", None) or str(error)
        raise _refusal(
            where, "the file must be readable", reason.lower(), "Check its name and permissions."
        ) from None
    if size > limit_bytes:
        raise _too_large(where, limit_bytes, size)
    return raw


def _too_large(where: str, limit_bytes: int, size: int) -> InputError:
    return _refusal(
        where,
        f"the file must not be larger than {limit_bytes:,} bytes",
        f"{size:,} bytes",
        "Check that it is the right file; such a file is a few pages of text.",
    )


def _decode(raw: bytes, where: str) -> str:
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        where = f"{where}:{line}"
        raise _refusal(
            where,
            "the file must be UTF-8 text",
            f"the byte 0x{error.object[error.start]:02X} at byte {error.start + 1}",
            "Save it as UTF-8 with a text editor.",
        ) from None


def _refusal(where: str, must: str, got: str, remedy: str) -> InputError:
    return InputError(Problem(where, must, got, remedy))


def read_yaml(path: Path | str | FileText, limit_bytes: int = LIMIT_BYTES) -> YamlSource:
    """Read one YAML file into plain data, with the line of every value.

    Parameters
    ----------
    path : Path or str or FileText
    limit_bytes : int
        Larger files are refused without being read.

    Returns
    -------
    YamlSource
        Whole numbers as int, decimals as float, everything quoted as text.

    Raises
    ------
    InputError
        When the text cannot be read, is not one YAML mapping, or uses what is refused
        (see the module's summary). Duplicate keys and infinite numbers are all listed.
    """
    name = path.name if isinstance(path, FileText) else str(path)
    reader = EventReader(name, read_text_file(path, limit_bytes))
    data = reader.build()
    return YamlSource(Path(name), data, reader.lines, reader.typed)
