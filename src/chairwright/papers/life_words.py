"""The chair's life in the words that its report and its paper share."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chairwright.figures.registry import FIGURES
from chairwright.order.lasting import Lasting
from chairwright.order.life import Serving, WornOut, months_words
from chairwright.order.life_plan import NO_CHANGE, LifePlan
from chairwright.order.life_reviews import ReviewDue
from chairwright.order.states import MONTHS
from chairwright.papers.cautions import centre_words
from chairwright.papers.words import target_words
from chairwright.person.growth import CENTILE_BAND, measured
from chairwright.person.growth_table import SOURCE, lms_at, score
from chairwright.person.measures import BODY_MASS, CATALOGUE
from chairwright.targets.target import Target

UNITS = {"length": ("mm", 0), "mass": ("kg", 1)}
LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
NEW_PARTS = "new parts"
OWN_LINE = (
    f"Own line: as many standard deviations (SD) from the median as now, give or take "
    f"{CENTILE_BAND} at the end (common practice, no source). The table is of "
    "children who walk. A child with a condition of its own may grow otherwise: "
    "measure, and trust the tape."
)
HOW = (
    "Other lengths go with body height, breadths with the root of mass over height (first "
    "principles; proportions that change with age are not in it)."
)
COST = (
    "Missed: what the preferences that are not met add up to now, in steps of each figure, "
    "weighted; 0 is everything as preferred."
)


def letter(number: int) -> str:
    """What a setting is called: A for the delivered one, then B, C; numbered beyond Z."""
    return LETTERS[number] if number < len(LETTERS) else f"Z{number - len(LETTERS) + 2}"


def range_rows(plan: LifePlan) -> Iterator[tuple[str, str, str, str]]:
    """Measure, now, range at the end, source; one row for each that changes."""
    growth = plan.growth
    for name, (low, high) in growth.ranges.items():
        kind = CATALOGUE[name]
        unit, digits = UNITS[kind.dimension]
        now = measured(growth.client, name)
        yield (
            kind.label,
            f"{now:.{digits}f} {unit}",
            f"{low:.{digits}f} to {high:.{digits}f} {unit}",
            _source_words(plan, name),
        )


def _source_words(plan: LifePlan, name: str) -> str:
    source, client = plan.growth.sources[name], plan.growth.client
    if source == SOURCE and client.age_years is not None:
        place = score(measured(client, name), lms_at(name, client.sex, client.age_years))
        return f"{SOURCE}, own line ({place:+.1f} SD now)"
    if client.expected is not None and name in client.expected.ranges:
        return f"client file: {client.expected.reason}"
    return source


def notes(plan: LifePlan) -> tuple[str, ...]:
    """What the reader has to know of the range."""
    found = [HOW] if plan.growth.changes else [NO_CHANGE]
    if SOURCE in plan.growth.sources.values():
        found.append(OWN_LINE)
    return (*found, *weighed_words(plan))


def weighed_words(plan: LifePlan) -> Iterator[str]:
    """That today's weighing counts, and how it was carried over to later days; none without one."""
    weighed = plan.weighed
    if weighed is None:
        return
    yield centre_words(weighed)
    if not plan.growth.changes:
        return
    ahead, up = weighed.shift.ahead_mm, weighed.shift.up_mm
    yield (
        "On later days it is today's weighing carried over, not one of that day (an assumption, no "
        f"source): {_mass_words(plan, weighed.mass_ratio)}; the centre of mass stays "
        f"{abs(ahead):.0f} mm {'ahead of' if ahead >= 0 else 'behind'} and {abs(up):.0f} mm "
        f"{'above' if up >= 0 else 'below'} where the body model has it. A client who has grown or "
        "changed may sit otherwise: weigh again at each review."
    )


def _mass_words(plan: LifePlan, ratio: float) -> str:
    if BODY_MASS not in plan.growth.ranges:
        return "the body mass is not expected to change"
    low, high = (end * ratio for end in plan.growth.ranges[BODY_MASS])
    return (
        f"the mass is expected to change, and is counted with {ratio:.3f} times the expected one, "
        f"{low:.1f} to {high:.1f} kg at the end"
    )


def answer(plan: LifePlan) -> tuple[str, ...]:
    """The answer in two or three sentences."""
    lasting, years = plan.lasting, months_words(round(plan.growth.years * MONTHS))
    what = "The set-up" if plan.named else "A set-up of this line"
    if plan.throughout:
        first = f"{what} stays good for all of {years} without new parts, over the whole range."
    else:
        over = "over the whole range"
        first = (
            f"{what} stays good for {months_words(lasting.months)} of {years} without new parts, "
            f"{over}; no longer."
            if lasting.months
            else f"{what} meets every must now, and not {months_words(plan.step)} later {over}."
        )
    second = f"Next review: {due_words(plan.due)}."
    return (first, *_proof(plan), second)


def _proof(plan: LifePlan) -> Iterator[str]:
    if not plan.named:
        yield (
            "Proven: of all set-ups that last as long, none misses the preferences now by less."
            if plan.lasting != plan.found.longest or plan.throughout
            else "Proven: no set-up of the line lasts longer, and of those that last as long none "
            "misses the preferences now by less."
        )
    if plan.life.gaps:
        months = ", ".join(str(each) for each in plan.life.gaps)
        yield f"Between the days that are looked at no setting was found in month {months}."


def due_words(due: ReviewDue) -> str:
    """When and why: ``in 11 months (2027-10-01): ...``."""
    day = f" ({due.day})" if due.day else ""
    when = f"in {months_words(due.months)}" if due.months else "now"
    return f"{when}{day}, {due.reason}{_then(due)}"


def _then(due: ReviewDue) -> str:
    if not due.musts:
        return ""
    runs_out = "; ".join(target_words(must) for must in due.musts)
    return f": {runs_out}. Then {due.outcome}"


def front_rows(points: Sequence[Lasting], chosen: Lasting) -> Iterator[tuple[str, str, str]]:
    """Mark, how long, what is missed now; one row for each point of the trade-off."""
    for point in points:
        mark = "planned" if point == chosen else ""
        yield mark, months_words(point.months) if point.months else "now", f"{point.cost:.1f}"


def serving_words(plan: LifePlan, serving: Serving) -> tuple[str, str, str, str]:
    """Setting, from and till, what is moved for it, and what ends it."""
    number = plan.life.settings.index(serving.index)
    return (
        letter(number),
        _span(plan, serving.start, serving.end),
        moves_words(serving),
        ends_words(serving.ends_by),
    )


def moves_words(serving: Serving) -> str:
    """What is moved before a setting serves; ``as delivered`` for the first."""
    if serving.change is None:
        return "as delivered"
    moves = ", ".join(
        f"{each.label.lower()} {each.move.before} to {each.move.after}"
        for each in serving.change.items
    )
    return f"{moves} ({serving.change.minutes:.0f} min)"


def ends_words(end: WornOut | None) -> str:
    """What ends a setting, and what then."""
    if end is None:
        return "serves to the end"
    runs_out = "; ".join(must_words(must) for must in end.musts)
    return f"{runs_out}: {'set anew' if end.reset else NEW_PARTS}"


def must_words(must: Target) -> str:
    """A must as a short clause, its figure's label first."""
    return target_words(must)[:1].upper() + target_words(must)[1:]


def first_out(plan: LifePlan) -> str:
    """Which must runs out first, on which track and when; says so when none does."""
    end = plan.life.first_end
    if end is None:
        return "No must of the delivered setting runs out within the range."
    labels = ", ".join(FIGURES[must.figure].label for must in end.musts)
    then = "another setting of the same parts then serves" if end.reset else "new parts are needed"
    return (
        f"First to run out for the delivered setting: {labels}, in month {end.months} "
        f"({end.track}); {then}."
    )


def _span(plan: LifePlan, start: int, end: int) -> str:
    ages = [plan.growth.age(months / MONTHS) for months in (start, end)]
    words = f"month {start} to {end}"
    if ages[0] is None or ages[1] is None:
        return words
    return f"{words}, age {ages[0]:.1f} to {ages[1]:.1f}"
