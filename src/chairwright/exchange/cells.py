"""Cells that no spreadsheet program takes for a formula.

References
----------
OWASP Application Security Verification Standard 5.0.0, 1.2.10: what begins with ``=``, ``+``,
``-``, ``@``, tab or NUL is escaped with a single quote; OWASP's page on CSV injection adds
carriage return, line feed and the full-width signs (both from memory, unverified).
"""

from __future__ import annotations

FORMULA_STARTS = tuple("=+-@\t\r\n\0\uff1d\uff0b\uff0d\uff20")


def looks_like_a_formula(text: str) -> bool:
    """Whether a spreadsheet program may take a text for a formula.

    Examples
    --------
    >>> looks_like_a_formula("=1+1"), looks_like_a_formula(" @sum"), looks_like_a_formula("B-4")
    (True, True, False)
    """
    return text.startswith(FORMULA_STARTS) or text.lstrip().startswith(FORMULA_STARTS)


def guarded(text: str) -> str:
    """Put a single quote before a text that could be taken for a formula.

    Examples
    --------
    >>> guarded("=1+1"), guarded("both")
    ("'=1+1", 'both')
    """
    return f"'{text}" if looks_like_a_formula(text) else text


def whole_text(text: str) -> str:
    """A text that can be written as UTF-8: bytes of a file name that are none become escapes."""
    return text.encode("utf-8", "backslashreplace").decode("utf-8")
