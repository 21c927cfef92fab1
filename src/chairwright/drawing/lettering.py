"""How much room a text takes on paper.

Advance widths of Source Sans Pro Semibold in 1/1000 em, read from the font file; the semibold
is the wider of the two weights in use, so that a box never comes out too small.
"""

from __future__ import annotations

from functools import lru_cache

_WIDTHS = (
    "200 315 482 513 513 841 639 275 324 324 438 513 275 322 275 344 513 513 513 513 513 513 513 "
    "513 513 513 275 275 513 513 513 444 875 558 597 576 625 538 510 628 663 282 494 597 502 745 "
    "656 674 582 674 592 545 546 655 536 800 541 501 540 324 344 324 513 500 549 516 563 462 564 "
    "507 317 520 558 262 263 522 271 843 560 549 564 564 373 431 361 556 495 748 481 495 443 324 "
    "255 324 513"
)
_EM = {chr(32 + place): int(width) / 1000 for place, width in enumerate(_WIDTHS.split())}
_EM |= {"°": 0.348, "±": 0.513, "Ø": 0.674, "–": 0.480, "−": 0.513, "→": 0.618}
_WIDEST = 0.875

REGULAR_SHARE = 0.968
"""How wide the regular weight is beside the semibold: 0.963 to 0.973 over the drawings' own words,
measured in the font."""

CAP_HEIGHT_EM = 0.66
DESCENT_EM = 0.21


@lru_cache(maxsize=4096)
def text_width(text: str, size_mm: float) -> float:
    """Width of one line of text on paper.

    Parameters
    ----------
    text : str
    size_mm : float
        Font size [mm].

    Returns
    -------
    float
        Width [mm]; a letter outside the table counts as the widest one.

    Examples
    --------
    >>> round(text_width("450", 3.0), 2)
    4.62
    """
    return size_mm * sum(_EM.get(letter, _WIDEST) for letter in text)
