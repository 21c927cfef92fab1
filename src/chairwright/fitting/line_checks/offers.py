"""What is offered and at which price: a choice without a standard option, prices out of place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from chairwright.fitting.line_checks.finding import Finding, mistake, remark
from chairwright.line.model import Line
from chairwright.line.reachable import Deduction, blockers
from chairwright.reading import YamlSource
from chairwright.validation import place
from chairwright.yaml_events import KeyPath


def offer_findings(line: Line) -> Iterator[Finding]:
    """Whether a chair can be built of standard options alone.

    Parameters
    ----------
    line : Line

    Yields
    ------
    Finding
        Mistakes.
    """
    standard = {
        name: frozenset(option.code for option in choice.options if option.kind == "standard")
        for name, choice in line.choices.items()
    }
    empty = [name for name, codes in standard.items() if not codes]
    for name in empty:
        choice = line.choices[name]
        yield mistake(
            choice.options[0].where,
            f"{choice.label.lower()} must have at least one option that is not on request",
            f"all {len(choice.options)} of them on request",
            "Take on_request out of the usual one.",
        )
    if not empty and Deduction(line).example(standard) is None:
        rules = blockers(line, standard)
        yield mistake(
            rules[0].where,
            "a chair must be possible without sizes made to order and options on request",
            f"none: {'; '.join(rule.because for rule in rules)}",
            "Loosen one of these rules, or take on_request out of an option.",
        )


def custom_findings(line: Line) -> Iterator[Finding]:
    """Sizes made to order that go with nothing.

    Parameters
    ----------
    line : Line

    Yields
    ------
    Finding
        One remark a choice.
    """
    deduction = Deduction(line)
    for name, choice in line.choices.items():
        custom = [option for option in choice.options if option.kind == "made to order"]
        lost = [o for o in custom if deduction.example({name: frozenset({o.code})}) is None]
        if lost:
            rules = blockers(line, {name: frozenset(option.code for option in lost)})
            yield remark(
                lost[0].where,
                f"each {choice.label.lower()} made to order should be possible in some set-up",
                f"{len(lost)} of {len(custom)} that are not, {lost[0].code} to {lost[-1].code}: "
                f"{'; '.join(dict.fromkeys(rule.because for rule in rules))}",
                "Narrow the range, or change what rules them out.",
            )


def price_findings(line: Line, source: YamlSource) -> Iterator[Finding]:
    """A chair that costs nothing, parts that cost more than the chair.

    Parameters
    ----------
    line : Line
    source : YamlSource
        The line's file.

    Yields
    ------
    Finding
        Remarks.
    """
    if not line.base_price:
        remedy = "Write the price of the chair as it stands, without the options."
        yield remark(place(source, ("base_price",)), "a chair should have a price", "0", remedy)
        return
    for at in source.lines:
        price = _inside(source.data, at)
        if at[-1] in PRICES and isinstance(price, int | float) and price > line.base_price:
            part = _inside(source.data, at[:-1])
            code = part.get("code", at[-2]) if isinstance(part, Mapping) else at[-2]
            yield remark(
                place(source, at),
                f"{code} should cost less than the whole chair",
                f"{price:g} beside a base price of {line.base_price:g} {line.currency}",
                "Check the decimal point of both.",
            )


PRICES = ("price", "surcharge")


def _inside(data: object, at: KeyPath) -> object:
    for key in at:
        data = data[key]  # type: ignore[index]
    return data
