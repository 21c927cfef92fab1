"""What is chosen, as rows for print and screen."""

from __future__ import annotations

from chairwright.figures.registry import FIGURES
from chairwright.line.model import Line, Option
from chairwright.order.chosen import SetUp
from chairwright.papers.payload import Choice, ChoiceGroup
from chairwright.papers.words import measured_words


def choices_of(setup: SetUp) -> dict[str, Choice]:
    """Every choice with its code and what to set."""
    return {
        name: Choice(
            setup.line.choices[name].label, option.code, option.name, _note(option, setup.line)
        )
        for name, option in setup.options.items()
    }


def _note(option: Option, line: Line) -> str:
    """What an option beyond the standard range costs and how long it takes; empty for others."""
    if option.kind == "standard":
        return ""
    days = option.numbers["extra_days"]
    terms = [f"+ {measured_words(FIGURES['price'], option.numbers['price'], line)}"]
    terms += [f"{days:g} days longer"] if days else []
    return ", ".join(terms)


def extras_of(setup: SetUp) -> tuple[ChoiceGroup, ...]:
    """The extras that are fitted, as a last group; none when there are none."""
    rows = tuple(Choice("Extra", extra.code, extra.name) for extra in setup.extras)
    return (ChoiceGroup("Extras", rows),) if rows else ()
