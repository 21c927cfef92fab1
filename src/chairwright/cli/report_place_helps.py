"""The result of ``chairwright places`` as text and as plain data."""

from __future__ import annotations

from dataclasses import asdict

from chairwright.cli.report_places import (
    CAUTION,
    asked_words,
    codes_data,
    codes_text,
    place_head,
    verdict_data,
)
from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described
from chairwright.fitting.place_changes import Change
from chairwright.fitting.place_helps import PlaceHelp
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.words import measured_words, wrapped
from chairwright.places.model import Surroundings

Data = dict[str, object]


def helps_text(
    name: str, surroundings: Surroundings, setup: Described, helps: tuple[PlaceHelp, ...]
) -> str:
    """Every place with verdict, reasons, notes and what would help.

    Parameters
    ----------
    name : str
        What the set-up is called.
    surroundings : Surroundings
    setup : Described
    helps : tuple of PlaceHelp

    Returns
    -------
    str
    """
    line = setup.line
    failing = sum(each.verdict.word == "fails" for each in helps)
    head = f"{name} in the places of {surroundings.reference}: {line.title}, {line.version}"
    told = "every place that must be managed is managed" if not failing else f"{failing} fail"
    sections = [f"{head}\n{len(helps)} places; {told}.", wrapped(CAUTION)]
    for each in helps:
        sections.append("\n".join(_help_lines(each, line)))
    codes = codes_text(surroundings)
    return "\n\n".join([*sections, *([codes] if codes else []), wrapped(PURPOSE)])


def _help_lines(each: PlaceHelp, line: Line) -> list[str]:
    verdict = each.verdict
    lines = [place_head(verdict)]
    lines += [wrapped(f"  {asked_words(item, line)}", "    ") for item in verdict.judged]
    lines += [wrapped(f"  Note: {note}", "    ") for note in verdict.notes]
    if each.setup_change is not None:
        lines.append(wrapped(f"  Would help: {_change_words(each.setup_change, line)}", "    "))
    if each.place_change is not None:
        lines.append(wrapped(f"  Or the place: {each.place_change.words}", "    "))
    return lines


def _change_words(change: Change, line: Line) -> str:
    codes = ", ".join(
        f"{CHOICES[name].label.lower()} {before} -> {after}"
        for name, (before, after) in change.codes.items()
    )
    price = ""
    if change.price is not None:
        sign = "+" if change.price >= 0 else "-"
        price = f", {sign}{measured_words(FIGURES['price'], abs(change.price), line)}"
    return f"{change.words}: {codes}{price}" if codes else f"{change.words}{price}"


def helps_data(surroundings: Surroundings, setup: Described, helps: tuple[PlaceHelp, ...]) -> Data:
    """Everything that `helps_text` says as plain data.

    Parameters
    ----------
    surroundings : Surroundings
    setup : Described
    helps : tuple of PlaceHelp

    Returns
    -------
    dict
    """
    return {
        "client": surroundings.reference,
        "set_up": setup.codes,
        "places": [
            {
                **verdict_data(each.verdict),
                "setup_change": None if each.setup_change is None else asdict(each.setup_change),
                "place_change": None if each.place_change is None else asdict(each.place_change),
            }
            for each in helps
        ],
        "codes": codes_data(surroundings),
    }
