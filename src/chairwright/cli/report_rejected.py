"""What stands against a set-up that is not the best, as text for a terminal."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.cli.report_fit import client_line
from chairwright.cli.report_why_words import break_words
from chairwright.cli.table import text_table
from chairwright.figures.registry import FIGURES
from chairwright.fitting.allowed import plain
from chairwright.fitting.described import Described
from chairwright.fitting.fit import Fit
from chairwright.fitting.rejected import Rejected
from chairwright.fitting.target_reasons import Break, cost_of
from chairwright.line.choices import CHOICES
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.words import (
    measured_words,
    range_words,
    unit_words,
    value_words,
    wrapped,
)


def rejected_text(fit: Fit, rejected: Rejected, name: str) -> str:
    """The explanation of one set-up beside the best.

    Parameters
    ----------
    fit : Fit
        Of the client on the line.
    rejected : Rejected
    name : str
        What the set-up is called.

    Returns
    -------
    str
    """
    line = rejected.line
    head = f"Set-up {name}: {line.title}, version {line.version}"
    sections = [f"{client_line(fit.person)}\n{head}", *_against(rejected), *_verdict(rejected)]
    if rejected.setup is not None and not rejected.is_best:
        sections += list(_costs(rejected, rejected.setup))
    if rejected.best is not None and not rejected.is_best:
        sections += list(_choices(rejected, rejected.best))
    return "\n\n".join([*sections, wrapped(PURPOSE)])


def _against(rejected: Rejected) -> Iterator[str]:
    """What forbids the set-up and which musts it breaks."""
    if rejected.forbidden:
        yield _list("It cannot be built for this client:", rejected.forbidden)
    if rejected.not_open:
        yield _list("It was not among the set-ups looked at:", rejected.not_open)
    if rejected.broken:
        breaks = [Break(item.target, item.value) for item in rejected.broken]
        lines = [
            f"{break_words(each, rejected.line)}: "
            f"{measured_words(FIGURES[each.target.figure], each.value, rejected.line, each.target)}"
            for each in breaks
        ]
        count = "a must" if len(lines) == 1 else f"{len(lines)} musts"
        yield _list(f"It breaks {count}:", lines)


def _list(head: str, items: tuple[str, ...] | list[str]) -> str:
    return "\n".join([head, *(wrapped(f"- {item}", "  ") for item in items)])


def _verdict(rejected: Rejected) -> Iterator[str]:
    more, cost = rejected.costs_more, rejected.cost
    if rejected.setup is None or cost is None:
        return
    if more is None:
        yield "No set-up of this line meets every must: there is no best to compare it with."
    elif rejected.is_best:
        yield "It is the best set-up itself: chairwright fit CLIENT --why explains it."
    elif rejected.is_tie:
        yield wrapped(_tie_words(rejected))
    else:
        yield wrapped(_cost_sentence(rejected, cost, more))


def _tie_words(rejected: Rejected) -> str:
    same = "It meets every must and its preferences cost the same as those of the best."
    if not rejected.differs or rejected.best is None:
        return f"{same} Only the extras differ."
    name = rejected.differs[0]
    return (
        f"{same} Of equals the one whose options the line lists first is taken: {plain(name)} "
        f"{rejected.best.codes[name]}."
    )


def _cost_sentence(rejected: Rejected, cost: float, more: float) -> str:
    side = "more" if more > 0 else "less"
    words = (
        f"its missed preferences cost {cost:.2f}, {abs(more):.2f} {side} than those of the best "
        f"({cost - more:.2f})."
    )
    if not rejected.is_refused:
        return f"It meets every must, but {words}"
    if more > 0:
        return f"Besides, {words}"
    return f"What is said above counts first; {words}"


def _costs(rejected: Rejected, setup: Described) -> Iterator[str]:
    """Every preference that costs something in this set-up or in the best."""
    line, best = rejected.line, rejected.best
    others = setup.judged if best is None else best.judged
    rows = []
    for this, other in zip(setup.judged, others, strict=True):
        figure, costs = FIGURES[this.target.figure], (cost_of(other), cost_of(this))
        if not any(costs):
            continue
        rows.append(
            [
                figure.label,
                range_words(this.target, other.value, this.value),
                value_words(figure, other.value, this.target),
                value_words(figure, this.value, this.target),
                unit_words(figure, line),
                *(f"{cost:.2f}" for cost in costs), f"{costs[1] - costs[0]:+.2f}",
            ]
        )  # fmt: skip
    if not rows:
        return
    sums = [sum(cost_of(item) for item in items) for items in (others, setup.judged)]
    rows.append(["All together", *[""] * 4, *(f"{each:.2f}" for each in sums),
                 f"{sums[1] - sums[0]:+.2f}"])  # fmt: skip
    headers = ["preferred", "range", "best", "this", "unit", "best costs", "this costs", "more"]
    if best is None:
        keep = (0, 1, 3, 4, 6)
        headers, rows = [headers[at] for at in keep], [[row[at] for at in keep] for row in rows]
        yield text_table(headers, rows, "llrlr")
        return
    yield text_table(headers, rows, "llrrlrrr")


def _choices(rejected: Rejected, best: Described) -> Iterator[str]:
    """The choices that differ, and price and delivery of both."""
    options = {name: rejected.line.choices[name].options[at] for name, at in rejected.index.items()}
    rows = [
        [
            CHOICES[name].label,
            f"{best.codes[name]}, {best.options[name].name}",
            f"{options[name].code}, {options[name].name}",
        ]
        for name in rejected.differs
    ]
    extras = [" ".join(extra.code for extra in each.extras) for each in _both(rejected, best)]
    if len(set(extras)) > 1:
        rows.append(["Extras", *(codes or "none" for codes in extras)])
    for name in ("price", "lead_days") if rejected.setup is not None else ():
        words = [
            measured_words(FIGURES[name], each.figures[name], each.line)
            for each in _both(rejected, best)
        ]
        rows.append([FIGURES[name].label, *words])
    if rows:
        yield text_table(["choice", "best", "this set-up"], rows)


def _both(rejected: Rejected, best: Described) -> tuple[Described, ...]:
    return (best,) if rejected.setup is None else (best, rejected.setup)
