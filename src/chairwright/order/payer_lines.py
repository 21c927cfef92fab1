"""The lines of an order that a payer's codes belong to: every part of the chair, and its extras."""

from __future__ import annotations

from dataclasses import dataclass, replace

from chairwright.fitting.described import Described
from chairwright.line.choices import CHOICES, NONE
from chairwright.order.payer_facts import EXTRAS, OTHER, word_of
from chairwright.order.payer_model import Scheme

CHAIR = "chair"


@dataclass(frozen=True)
class OrderLine:
    """One part of the chair.

    Parameters
    ----------
    line : str
        Choice, ``extras`` or ``chair``.
    label : str
    part : str
        Order code; empty for what was only declared.
    name : str
    word : str or None
        Of an extra: what the scheme calls it; None when the scheme does not say.
    """

    line: str
    label: str
    part: str
    name: str
    word: str | None = None


def order_lines(scheme: Scheme, setup: Described) -> tuple[OrderLine, ...]:
    """Every part of a set-up that is ordered, in the order of the choices, then its extras.

    Parameters
    ----------
    scheme : Scheme
    setup : Described

    Returns
    -------
    tuple of OrderLine
        Mere settings and what is not fitted are left out.
    """
    found = [OrderLine(CHAIR, "Chair", setup.line.name, setup.line.title)]
    for choice, option in setup.options.items():
        code = option.part or (option.code if option.kind == "made to order" else "")
        if code and option.code != NONE:
            found.append(OrderLine(choice, CHOICES[choice].label, code, option.name))
    for extra in setup.extras:
        word = word_of(scheme, setup.line.name, EXTRAS, extra.code)
        found.append(OrderLine(EXTRAS, "Extra", extra.code, extra.name, word))
    return tuple(found)


def feet_fitted(setup: Described) -> int:
    """How many foot supports a set-up has.

    Parameters
    ----------
    setup : Described
    """
    fitted = setup.options["foot_supports"].numbers
    return round(fitted["left"] + fitted["right"])


def declared_extras(
    scheme: Scheme, words: tuple[str, ...], lines: tuple[OrderLine, ...]
) -> tuple[OrderLine, ...]:
    """Lines with what was declared of their extras.

    Parameters
    ----------
    scheme : Scheme
    words : tuple of str
        The scheme's words that were declared.
    lines : tuple of OrderLine

    Returns
    -------
    tuple of OrderLine
        Words that no extra has yet go to the extras that the scheme does not know, in their
        order; an extra without a word left is ``other``, a word without an extra is a line of
        its own.
    """
    there = {line.word for line in lines if line.line == EXTRAS}
    left = [word for word in words if word not in there and word != OTHER]
    settled = [
        replace(line, word=left.pop(0) if left else OTHER)
        if line.line == EXTRAS and line.word is None
        else line
        for line in lines
    ]
    meanings = scheme.facts[EXTRAS].words or {}
    added = (OrderLine(EXTRAS, "Extra", "", meanings.get(word, word), word) for word in left)
    return (*settled, *added)
