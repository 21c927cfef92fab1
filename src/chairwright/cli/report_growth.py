"""The chair's life as text and as data."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from chairwright.cli.report_setup import choice_text
from chairwright.cli.table import text_table
from chairwright.fitting.weighed import WeighedClient
from chairwright.order.lasting import Lasting
from chairwright.order.life import Serving, WornOut, months_words
from chairwright.order.life_plan import LifePlan
from chairwright.order.life_reviews import ReviewDue
from chairwright.order.states import MONTHS
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.life_words import (
    COST,
    answer,
    first_out,
    front_rows,
    letter,
    notes,
    range_rows,
    serving_words,
)
from chairwright.papers.words import wrapped

Data = dict[str, Any]


def plan_text(plan: LifePlan) -> str:
    """Everything about the years to come.

    Parameters
    ----------
    plan : LifePlan

    Returns
    -------
    str
    """
    return "\n\n".join([*_head(plan), *_tables(plan), wrapped(PURPOSE)])


def _head(plan: LifePlan) -> Iterator[str]:
    line, growth = plan.line, plan.growth
    years = months_words(round(growth.years * MONTHS))
    yield (
        f"{growth.client.reference}: the chair's life over {years}\n"
        f"{line.title}, version {line.version}, {line.maker}"
    )
    yield "\n".join(wrapped(words) for words in answer(plan))
    if plan.made_to_order:
        yield "Sizes made to order are among these set-ups: the standard range has none that fits."


def _tables(plan: LifePlan) -> Iterator[str]:
    rows = [[f"  {row[0]}", *row[1:]] for row in range_rows(plan)]
    if rows:
        yield text_table(["What changes", "now", "at the end", "from"], rows)
    yield "\n".join(wrapped(words) for words in notes(plan))
    if len(plan.found.points) > 1 or not plan.named:
        rows = [list(row) for row in front_rows(plan.found.points, plan.lasting)]
        table = text_table(["Fit now or long life", "lasts", "missed now"], rows, "llr")
        yield f"{table}\n{wrapped(COST)}"
    for way in plan.life.ways:
        rows = [[f"  {row[0]}", *row[1:]] for row in (_serving(plan, s) for s in way.servings)]
        yield text_table([way.track.name.capitalize(), "serves", "moved", "then"], rows)
    yield wrapped(first_out(plan))
    yield text_table(
        ["Reviews", "", "reason", "source"],
        [[f"  month {r.months}", r.day, r.reason, r.source] for r in plan.reviews],
    )
    if not plan.named:
        yield choice_text(plan.setup)


def _serving(plan: LifePlan, serving: Serving) -> tuple[str, str, str, str]:
    return serving_words(plan, serving)


def plan_data(plan: LifePlan) -> Data:
    """The same as plain data.

    Parameters
    ----------
    plan : LifePlan

    Returns
    -------
    dict
    """
    growth, life = plan.growth, plan.life
    return {
        "client": growth.client.reference,
        "age_years": growth.client.age_years,
        "line": {"name": plan.line.name, "version": plan.line.version},
        "years": growth.years,
        "grid_months": plan.step,
        "ranges": {
            name: {"low": low, "high": high, "source": growth.sources[name]}
            for name, (low, high) in growth.ranges.items()
        },
        "weighed": _weighed(plan.weighed),
        "made_to_order_looked_at": plan.made_to_order,
        "lasts_throughout": plan.throughout,
        "planned": _lasting(plan, plan.lasting),
        "trade_off": [_lasting(plan, point) for point in plan.found.points],
        "settings": [
            {"name": letter(number), "choices": _codes(plan, index)}
            for number, index in enumerate(life.settings)
        ],
        "tracks": [
            {
                "name": way.track.name,
                "servings": [_serving_data(plan, each) for each in way.servings],
            }
            for way in life.ways
        ],
        "first_to_run_out": _worn_out(life.first_end),
        "months_without_setting": list(life.gaps),
        "reviews": [_review(each) for each in plan.reviews],
    }


def _weighed(weighed: WeighedClient | None) -> Data | None:
    if weighed is None:
        return None
    shift = weighed.shift
    return {
        "dated": weighed.dated,
        "mass_kg": shift.mass_kg,
        "mass_ratio": weighed.mass_ratio,
        "shift_mm": {"ahead": shift.ahead_mm, "left": shift.left_mm, "up": shift.up_mm},
    }


def _lasting(plan: LifePlan, point: Lasting) -> Data:
    return {"months": point.months, "cost": point.cost, "choices": _codes(plan, point.index)}


def _codes(plan: LifePlan, index: dict[str, int]) -> dict[str, str]:
    return {name: plan.line.choices[name].options[at].code for name, at in index.items()}


def _serving_data(plan: LifePlan, serving: Serving) -> Data:
    change = serving.change
    return {
        "setting": letter(plan.life.settings.index(serving.index)),
        "from_month": serving.start,
        "to_month": serving.end,
        "moved": []
        if change is None
        else [
            {"choice": each.choice, "from": each.move.before, "to": each.move.after}
            for each in change.items
        ],
        "minutes": 0.0 if change is None else change.minutes,
        "ends_by": _worn_out(serving.ends_by),
    }


def _worn_out(end: WornOut | None) -> Data | None:
    if end is None:
        return None
    return {
        "month": end.months,
        "track": end.track,
        "musts": [
            {"figure": must.figure, "low": must.low, "high": must.high} for must in end.musts
        ],
        "no_setting_holds": [must.figure for must in end.beyond],
        "then": "set anew" if end.reset else "new parts",
    }


def _review(each: ReviewDue) -> Data:
    return {
        "month": each.months,
        "day": each.day,
        "reason": each.reason,
        "outcome": each.outcome,
        "source": each.source,
        "by_growth": each.by_growth,
    }
