"""What of an order is not in the standard range, and why it is ordered all the same."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from chairwright.figures.registry import FIGURES
from chairwright.fitting.allowed import why_not_allowed
from chairwright.fitting.described import Described, describe, why_not_buildable
from chairwright.fitting.person import Person
from chairwright.line.choices import CHOICES
from chairwright.line.codes import matching_codes
from chairwright.line.model import Option, OptionKind


@dataclass(frozen=True)
class Mark:
    """One thing that is not standard.

    Parameters
    ----------
    choice, label, code, words : str
    kind : {"made to order", "on request"}
    reasons : tuple of str
        Why it is ordered: what stands against the standard sizes beside it, or who asked.
    days : int
        That the line gives it before the build.
    """

    choice: str
    label: str
    code: str
    words: str
    kind: OptionKind
    reasons: tuple[str, ...]
    days: int


def marks_of(person: Person, setup: Described) -> tuple[Mark, ...]:
    """Everything of a set-up that is made to order or on request, with reasons.

    Parameters
    ----------
    person : Person
    setup : Described

    Returns
    -------
    tuple of Mark
        In the order of the choices.
    """
    return tuple(
        Mark(
            choice=name,
            label=CHOICES[name].label,
            code=option.code,
            words=option.name.removesuffix(", made to order"),
            kind=option.kind,
            reasons=tuple(_reasons(person, setup, name, option)),
            days=int(option.numbers["extra_days"]),
        )
        for name, option in setup.options.items()
        if option.kind != "standard"
    )


def _reasons(person: Person, setup: Described, name: str, option: Option) -> Iterator[str]:
    asked = person.client.fixed_choices.get(name, ())
    if option.code in matching_codes(setup.line.choices[name], asked):
        yield "asked for by its code in the client file"
    if option.kind == "made to order":
        yield from (_against(person, setup, name, each) for each in _beside(setup, name, option))
    elif not asked:
        yield "chosen in the set-up file; the client file does not ask for it"


def _beside(setup: Described, name: str, option: Option) -> list[int]:
    """Positions of the nearest standard size below and above one made to order."""
    key, choice = CHOICES[name].size, setup.line.choices[name]
    size = option.numbers[key]
    standard = [
        (each.numbers[key], at) for at, each in enumerate(choice.options)
        if each.kind == "standard" and key in each.numbers
    ]  # fmt: skip
    below = [pair for pair in standard if pair[0] < size]
    above = [pair for pair in standard if pair[0] > size]
    return [at for pair in ([max(below)] if below else [], [min(above)] if above else [])
            for _, at in pair]  # fmt: skip


def _against(person: Person, setup: Described, name: str, at: int) -> str:
    """What stands against one standard size, everything else kept."""
    line, index = setup.line, {**setup.index, name: at}
    words = f"standard {line.choices[name].options[at].name}"
    refused = why_not_allowed(line, person.occupant, index)
    stands = why_not_buildable(line, person.occupant, index)
    if refused or stands:
        return f"{words}: {'; '.join(refused) or stands}"
    other = describe(line, person.occupant, index, person.targets, person.surroundings)
    held = {item.target.figure for item in setup.broken}
    missed = [FIGURES[item.target.figure].label.lower() for item in other.broken
              if item.target.figure not in held]  # fmt: skip
    if missed:
        return f"{words}: would miss what must hold for {', '.join(dict.fromkeys(missed))}"
    return f"{words}: would miss no more musts; made to order by preference"
