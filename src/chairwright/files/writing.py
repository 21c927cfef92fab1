"""Writing a file whole or not at all."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from chairwright.errors import InputError, Problem


def write_file(path: Path | str, content: str | bytes, *, overwrite: bool = False) -> None:
    """Write a file by way of a temporary one beside it, so that no half file is ever left.

    Parameters
    ----------
    path : Path or str
        Its folder is made when it is missing.
    content : str or bytes
        Text is written as UTF-8 with line feeds.
    overwrite : bool
        False refuses to replace a file that exists.

    Raises
    ------
    InputError
        When the file exists and may not be replaced, or the disk or the permissions do not
        let it be written. The temporary file is gone and an existing file is untouched.
    """
    path = Path(path)
    raw = content.encode("utf-8") if isinstance(content, str) else content
    try:
        if path.exists() and not overwrite:
            remedy = "Choose another name, or say that it may be replaced."
            raise InputError(Problem(str(path), "the file must not exist yet", "a file", remedy))
        path.parent.mkdir(parents=True, exist_ok=True)
        _replace(path, raw)
    except OSError as error:
        raise InputError(write_problem(str(path), error)) from None


def _replace(path: Path, raw: bytes) -> None:
    handle, name = tempfile.mkstemp(prefix=f".{path.name[:40]}.", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(raw)
            stream.flush()
            os.fsync(stream.fileno())
        Path(name).chmod(0o666 & ~_umask())
        os.replace(name, path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _umask() -> int:
    mask = os.umask(0o077)
    os.umask(mask)
    return mask


def write_problem(where: str, error: OSError) -> Problem:
    """Say why something could not be written.

    Parameters
    ----------
    where : str
        The file.
    error : OSError

    Returns
    -------
    Problem
    """
    reason = (error.strerror or str(error)).lower()
    remedy = "Check the free space and the permissions, or choose another place."
    return Problem(where, "it must be possible to write here", reason, remedy)
