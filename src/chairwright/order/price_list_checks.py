"""Whether a price list goes with a line: currency, items that the line has, no circle of days."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.errors import InputError, Problem
from chairwright.line.model import Line
from chairwright.order.price_items import BASE, TO_ORDER, every_item, known_items
from chairwright.order.price_list import PriceList
from chairwright.validation import suggest


def check_price_list(prices: PriceList, line: Line) -> None:
    """Refuse a price list that is not for a line, or names what the line does not have.

    Parameters
    ----------
    prices : PriceList
    line : Line

    Raises
    ------
    InputError
        With ``file:line`` of each problem.
    """
    problems = [
        *_of_line(prices, line),
        *_unknown(prices, line),
        *_vague(prices),
        *_circles(prices, line),
    ]
    if problems:
        raise InputError(*sorted(problems, key=_line_number))


def _line_number(problem: Problem) -> int:
    number = problem.where.partition(": ")[0].rpartition(":")[2]
    return int(number) if number.isdecimal() else 0


def _of_line(prices: PriceList, line: Line) -> Iterator[Problem]:
    if prices.line != line.name:
        must = f"the price list must be for the line of the set-up, {line.name}"
        yield Problem(_at(prices, "line"), must, prices.line, "Name the price list of that line.")
    same = prices.currency == line.currency
    if same and prices.rate is not None:
        must = f"a rate is for another currency than the line's {line.currency}"
        yield Problem(_at(prices, "rate"), must, str(prices.rate), "Take it out.")
    if not same and prices.rate is None:
        must = f"prices of the line in {line.currency} need a rate to become {prices.currency}"
        remedy = f"Add rate: how many {prices.currency} one {line.currency} is."
        yield Problem(_at(prices, "currency"), must, "no rate", remedy)


def _unknown(prices: PriceList, line: Line) -> Iterator[Problem]:
    known = known_items(line)
    for key, where in prices.where.items():
        kind, _, item = key.partition(" ")
        if item and item not in known:
            must = f"it must be something of the line {line.name}"
            yield Problem(f"{where}: {_field(kind)}", must, repr(item), _remedy(item, known))


def _field(kind: str) -> str:
    return f"lead_time.{kind}" if kind in ("days", "after") else kind


def _remedy(item: str, known: tuple[str, ...]) -> str:
    group = item.partition(".")[0]
    inside = [each.removeprefix(f"{group}.") for each in known if each.startswith(f"{group}.")]
    if "." not in item or not inside:
        return suggest(item, (each for each in known if "." not in each))
    return f"Of {group}: {suggest(item.partition('.')[2], inside)}"


def _vague(prices: PriceList) -> Iterator[Problem]:
    """A price for a whole choice would be that of every option alike."""
    for item in prices.prices:
        if item != BASE and "." not in item:
            where = f"{prices.where[f'prices {item}']}: prices"
            example = "seat_width" if item == TO_ORDER else "CODE"
            must = "a price must be that of one thing"
            yield Problem(where, must, item, f"Write it like {item}.{example}.")


def _circles(prices: PriceList, line: Line) -> Iterator[Problem]:
    after = prices.lead.after
    if not after:
        return
    things = {frozenset(item.names) for item in every_item(line)}
    for item in after:
        if _waits_for_itself(item, after, things):
            where = f"{prices.where[f'after {item}']}: lead_time.after"
            got = f"{item} after {', '.join(after[item])}"
            yield Problem(where, "nothing can wait for itself", got, "Take one of the two out.")


def _waits_for_itself(
    start: str, after: dict[str, tuple[str, ...]], things: set[frozenset[str]]
) -> bool:
    """Whether going from an item to those that it waits for comes back to it."""
    todo, seen = [start], set()
    while todo:
        here = todo.pop()
        for key, names in after.items():
            if _can_be_one(key, here, things):
                if any(_can_be_one(name, start, things) for name in names):
                    return True
                todo += [name for name in names if name not in seen]
                seen |= set(names)
    return False


def _can_be_one(one: str, other: str, things: set[frozenset[str]]) -> bool:
    """Whether two names can mean the same thing."""
    return one == other or any(one in names and other in names for names in things)


def _at(prices: PriceList, key: str) -> str:
    place = prices.where.get(key, prices.path)
    return f"{place}: {key}"
