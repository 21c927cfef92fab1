"""Several files as one, the same bytes for the same files."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping

FIRST_DAY = (1980, 1, 1, 0, 0, 0)
"""The earliest that a zip file knows; days and hours of the files are not told."""


def zipped(files: Mapping[str, bytes]) -> bytes:
    """Pack files.

    Parameters
    ----------
    files : mapping of str to bytes
        Name to content.
    """
    whole = io.BytesIO()
    with zipfile.ZipFile(whole, "w") as pack:
        for name, content in files.items():
            info = zipfile.ZipInfo(name, FIRST_DAY)
            info.compress_type = zipfile.ZIP_DEFLATED
            info.external_attr = 0o600 << 16
            pack.writestr(info, content)
    return whole.getvalue()
