"""What a lesson is: steps, each with a question that the engineering answers, not the writer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal


@dataclass(frozen=True)
class Way:
    """Which way does a figure go? Answers: down, hardly, up."""

    figure: str
    answers: tuple[str, str, str] = ("It gets smaller", "It hardly changes", "It gets greater")


@dataclass(frozen=True)
class Amount:
    """By how much does a figure move? Answers: half of it, it, twice it."""

    figure: str


@dataclass(frozen=True)
class Most:
    """Which of several figures in one unit moves most?"""

    figures: tuple[str, ...]


@dataclass(frozen=True)
class Pick:
    """With which of the set-ups shown is a figure least, or greatest?"""

    figure: str
    end: Literal["least", "greatest"]


Ask = Way | Amount | Most | Pick


@dataclass(frozen=True)
class Step:
    """One step.

    Parameters
    ----------
    text, question : str
    ask : Way, Amount, Most or Pick
        What is asked, so that the right answer is worked out.
    choice, along : str
        What is changed, and the number that rises, as the reasons of the lesson sheets know it.
    shown : tuple of (str, dict of str to str)
        The set-ups: words, and the choices that differ from the demo set-up. The first one is
        what the others are compared with.
    figures : tuple of str
        Figures of the table, besides those that are asked about.
    view : {"side", "plan"}
    remember : str
        What to take along.
    practice : bool
        Whether that is common practice, without a source.
    """

    text: str
    question: str
    ask: Ask
    choice: str
    along: str
    shown: tuple[tuple[str, Mapping[str, str]], ...]
    figures: tuple[str, ...] = ()
    view: Literal["side", "plan"] = "side"
    remember: str = ""
    practice: bool = False


@dataclass(frozen=True)
class Lesson:
    """One lesson.

    Parameters
    ----------
    slug, title, about : str
    steps : tuple of Step
    sheet : tuple of str
        Choice and run of the lesson sheet.
    """

    slug: str
    title: str
    about: str
    steps: tuple[Step, ...] = field(repr=False)
    sheet: tuple[str, str] = ("", "")
