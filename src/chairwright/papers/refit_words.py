"""A re-fit in the words that its report and its paper share."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described
from chairwright.fitting.ledger import Row, ledger
from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import Line
from chairwright.order.change import Change, ChangeItem
from chairwright.order.parts import PARTS
from chairwright.order.price_money import money_words
from chairwright.order.refit import Refit, RefitPoint
from chairwright.papers.words import (
    amount_words,
    measured_words,
    propulsion_words,
    range_words,
    target_words,
)
from chairwright.person.client import Client, Measure
from chairwright.person.measures import CATALOGUE
from chairwright.search.reasons import Give

UNITS = {"length": ("mm", 0), "mass": ("kg", 1)}
COST_WORDS = (
    "Missed: what the preferences that are not met add up to, in steps of each figure, weighted; "
    "0 is everything as preferred."
)
FRONT_WORDS = (
    "Every row meets every must. No other change is as good as a row in money, minutes and what is "
    "missed, and better in one of them."
)
MONEY_WORDS = "Money: parts alone, at the line's prices before discount and tax ({source})."
MINUTE_WORDS = "Minutes: one pair of hands, tools at hand ({source})."


@dataclass(frozen=True)
class PersonRow:
    """One thing about the client that is other than it was."""

    label: str
    was: str
    now: str
    change: str


def person_rows(before: Client, after: Client) -> tuple[PersonRow, ...]:
    """What changed in the person between two client files.

    Parameters
    ----------
    before, after : Client

    Returns
    -------
    tuple of PersonRow
        Measured values first, in the order of the catalogue; what is the same is left out.
    """
    return (*_measures(before, after), *_ways(before, after))


def _measures(before: Client, after: Client) -> Iterator[PersonRow]:
    old = {(each.name, each.side): each for each in before.measures}
    new = {(each.name, each.side): each for each in after.measures}
    for name, kind in CATALOGUE.items():
        for side in ("middle", "left", "right"):
            one, other = old.get((name, side)), new.get((name, side))
            was, now = _measure_words(one), _measure_words(other)
            label = kind.label if side == "middle" else f"{kind.label}, {side}"
            if one is not None and other is not None and was != now:
                unit, digits = UNITS[kind.dimension]
                change = f"{other.value - one.value:+.{digits}f} {unit}"
                yield PersonRow(label, was, now, change)
            elif was != now:
                yield PersonRow(label, was or "not measured", now or "not measured", "")


def _measure_words(measure: Measure | None) -> str:
    if measure is None:
        return ""
    unit, digits = UNITS[CATALOGUE[measure.name].dimension]
    return f"{measure.value:.{digits}f} {unit}"


def _ways(before: Client, after: Client) -> Iterator[PersonRow]:
    told = (
        ("Pushes with", propulsion_words(before), propulsion_words(after)),
        ("Limbs lost", _limbs(before), _limbs(after)),
        ("Carried on the chair", _carried(before), _carried(after)),
        ("Own targets", _targets(before), _targets(after)),
        ("Settled choices", _settled(before), _settled(after)),
        ("Extras", ", ".join(before.extras), ", ".join(after.extras)),
    )
    for label, was, now in told:
        if was != now:
            yield PersonRow(label, was or "none", now or "none", "")


def _limbs(client: Client) -> str:
    words = (f"{each.side} {each.level.replace('_', ' ')}" for each in client.amputations)
    return ", ".join(words)


def _carried(client: Client) -> str:
    return ", ".join(f"{each.name} {each.mass_kg:g} kg" for each in client.carries)


def _targets(client: Client) -> str:
    ends = ((each, (each.low, each.high)) for each in client.own_targets)
    return "; ".join(
        f"{FIGURES[each.figure].label} {'-' if low is None else f'{low:g}'} to "
        f"{'-' if high is None else f'{high:g}'}"
        for each, (low, high) in ends
    )


def _settled(client: Client) -> str:
    return "; ".join(
        f"{CHOICES[name].label.lower()} {' or '.join(codes)}"
        for name, codes in client.fixed_choices.items()
    )


def missed_rows(setup: Described) -> tuple[Row, ...]:
    """Figures of a set-up of which something is asked and not met, musts first."""
    missed = [row for row in ledger(setup) if row.word not in (None, "holds", "not known")]
    return tuple(sorted(missed, key=lambda row: row.word != "fails"))


def asked_words(row: Row) -> str:
    """What is asked of a figure: ``must be 405 to 445; preferred 420``."""
    return "; ".join(
        f"{'must be' if item.target.must else 'preferred'} {range_words(item.target, row.value)}"
        for item in row.asked
    )


def verdict_words(found: Refit) -> str:
    """How the chair as it is does by today's measures, in a sentence."""
    if found.now is None:
        return f"The chair as it is cannot carry this client now: {found.why_not}."
    known = (item for item in found.now.broken if not found.new_chair or item.value == item.value)
    broken = tuple(dict.fromkeys(item.target.figure for item in known))
    if not broken:
        return "The chair as it is meets every must by today's measures."
    names = "; ".join(FIGURES[name].label.lower() for name in broken)
    musts = "1 must" if len(broken) == 1 else f"{len(broken)} musts"
    return f"The chair as it is misses {musts} by today's measures: {names}."


def answer_words(found: Refit) -> tuple[str, ...]:
    """The answer, in a few sentences.

    Parameters
    ----------
    found : Refit

    Returns
    -------
    tuple of str
    """
    return tuple(_answer(found))


def _answer(found: Refit) -> Iterator[str]:
    yield verdict_words(found)
    line = found.line
    if found.new_chair:
        named = ", ".join(f"{_label(name)} {code}" for name, code in found.present.kept.items())
        but = f"everything is new but what is kept: {named}" if named else "everything is new"
        yield f"It is of another maker: on the {line.title.lower()} {but}."
    if not found.points:
        yield f"Nothing of this line ({line.title}) meets every must."
        return
    if found.nothing_to_change:
        yield "Nothing has to change."
        more = len(found.points) - 1
        if more:
            rows = _counted(more, "further row")
            yield f"The trade-off has {rows} that would do better by the preferences."
        else:
            yield "No change of this line would do better by the preferences."
        return
    if found.new_chair:
        yield f"The least that meets every must: {takes_words(found.points[0].change)}."
        return
    if not found.frame_kept:
        yield "With the present frame kept no change meets every must."
    first = found.points[0].change
    yield f"The smallest change that meets every must: {takes_words(first)}."
    if found.extent == "needed":
        yield "The standard range has none: it needs sizes made to order."


def row_words(found: Refit, point: RefitPoint) -> str:
    """What a row changes, in codes; for a new chair only what tells the rows apart."""
    if not found.new_chair:
        return items_words(point.change.items) or "nothing"
    codes = [
        (name, {each.change.last.options[name].code for each in found.points}) for name in CHOICES
    ]
    telling = [name for name, seen in codes if len(seen) > 1]
    options = point.change.last.options
    words = (f"{CHOICES[name].label.lower()} {options[name].code}" for name in telling)
    return ", ".join(words) or "the whole chair"


def _label(name: str) -> str:
    return PARTS.get(name, CHOICES[name].label.lower())


def takes_words(change: Change) -> str:
    """What a change takes: ``285.00 EUR for 2 parts, 1 hole or setting moved, 76 minutes``."""
    if not change.items:
        return "nothing changes"
    if change.new_chair:
        return f"{money_words(change.money, change.currency)} for a new chair"
    parts, moved = len(change.bought), len(change.moved)
    words = []
    frame = "a new frame and " if change.new_frame else ""
    count = parts - sum(item.kind == "frame" for item in change.items)
    money = money_words(change.money, change.currency)
    if parts:
        rest = _counted(count, "part") if count else ""
        goods = f"{frame}{rest}" if rest else "a new frame"
        words.append(f"{money} for {goods}")
    else:
        words.append("no part bought")
    if moved:
        words.append(f"{_counted(moved, 'hole or setting', 'holes or settings')} moved")
    return ", ".join([*words, f"{change.minutes:g} minutes of work"])


def _counted(count: int, one: str, more: str = "") -> str:
    return f"{count} {one if count == 1 else more or one + 's'}"


def items_words(items: Sequence[ChangeItem]) -> str:
    """What changes, in a few codes: ``seat width S340, back angle B8``."""
    return ", ".join(
        f"{CHOICES[item.choice].label.lower() if item.choice in CHOICES else 'extra'} "
        f"{item.move.after if item.move.after != NONE else 'off'}"
        for item in items
    )


def kept_words(change: Change) -> str:
    """The parts that stay in use, by name."""
    return ", ".join(_label(name) for name in change.kept) or "nothing"


def give_words(give: Give, line: Line) -> str:
    """What a must would have to give: asked, nearest, by how much."""
    figure, asked = FIGURES[give.target.figure], target_words(give.target, line, give.value)
    if give.value != give.value:
        return f"{asked}: the set-up has no such figure"
    nearest = measured_words(figure, give.value, line, give.target)
    return f"{asked}: nearest {nearest}, {amount_words(figure, give.by, line)} off"


def reason_rows(found: Refit) -> tuple[tuple[str, str], ...]:
    """Each smallest group of musts to give up, with what its set-up would take.

    Parameters
    ----------
    found : Refit

    Returns
    -------
    tuple of (str, str)
        Empty when there is nothing to explain.
    """
    if found.reasons is None:
        return ()
    line = found.line
    pairs = zip(found.reasons.corrections, found.nearest, strict=True)
    return tuple(
        ("; ".join(give_words(give, line) for give in each.gives), takes_words(change))
        for each, change in pairs
    )


def reason_head(found: Refit) -> str:
    """What the reasons are about; empty when there are none."""
    if found.reasons is None:
        return ""
    if not found.points:
        what = "What would have to give for this line to do"
    else:
        what = "Which must fails with the present frame kept, and by how much"
    if not found.reasons.corrections:
        return f"{what}: nothing can be built at all with what is settled."
    return f"{what}; each row is a smallest group."
