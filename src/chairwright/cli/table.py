"""Plain aligned columns for the terminal."""

from __future__ import annotations

from collections.abc import Sequence

GAP = "  "


def text_table(headers: Sequence[str], rows: Sequence[Sequence[str]], right: str = "") -> str:
    """Lay rows out in aligned columns.

    Parameters
    ----------
    headers : sequence of str
    rows : sequence of sequence of str
        Each as long as ``headers``.
    right : str
        One letter a column: ``r`` sets it flush right; missing letters mean left.

    Returns
    -------
    str
        Headers, a rule and the rows; no blanks at the line ends, no line feed at the end.

    Examples
    --------
    >>> print(text_table(["figure", "mm"], [["seat width", "430"]], "lr"))
    figure       mm
    ----------  ---
    seat width  430
    """
    widths = [max(len(row[at]) for row in (headers, *rows)) for at in range(len(headers))]
    rule = ["-" * width for width in widths]
    return "\n".join(_line(row, widths, right) for row in (headers, rule, *rows))


def _line(row: Sequence[str], widths: Sequence[int], right: str) -> str:
    cells = [
        text.rjust(width) if right[at : at + 1] == "r" else text.ljust(width)
        for at, (text, width) in enumerate(zip(row, widths, strict=True))
    ]
    return GAP.join(cells).rstrip()
