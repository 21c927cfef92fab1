"""What came out of a fitting as text, for a terminal."""

from __future__ import annotations

from collections.abc import Sequence

from chairwright.cli.report_front import code_words, front_text, order_words
from chairwright.cli.report_places import fit_places_sections
from chairwright.cli.report_setup import setup_sections
from chairwright.figures.registry import FIGURES
from chairwright.fitting.fit import Fit
from chairwright.fitting.person import Person
from chairwright.line.model import Line
from chairwright.papers.cautions import PURPOSE, centre_words
from chairwright.papers.words import (
    Units,
    amount_words,
    measured_words,
    propulsion_words,
    target_words,
    wrapped,
)
from chairwright.search.reasons import Correction, Give, Reasons
from chairwright.targets.target import Target

CORRECTION_ROWS = 12


def fit_text(fit: Fit, units: Units) -> str:
    """The whole result of one fitting.

    Parameters
    ----------
    fit : Fit
    units : {"mm", "in"}

    Returns
    -------
    str
    """
    sections = [head_text(fit), measure_text(fit.person), *weighed_sections(fit.person)]
    if fit.reasons is not None:
        sections += reason_sections(fit)
    if fit.setup is not None:
        sections += [best_words(fit), *sure_sections(fit), *setup_sections(fit.setup, units)]
    if fit.person.surroundings is not None and fit.setup is not None:
        sections += fit_places_sections(fit, fit.setup)
    if fit.front is not None:
        sections.append(front_text(fit, fit.front))
    sections.append(wrapped(PURPOSE))
    return "\n\n".join(sections)


def head_text(fit: Fit) -> str:
    """Say who, what line and how many set-ups."""
    included = "" if fit.extent == "standard" else ", sizes made to order included"
    return "\n".join(
        [
            client_line(fit.person),
            f"{fit.line.title}, version {fit.line.version}, {fit.line.maker}",
            f"{fit.count:,} set-ups to choose from{included}",
        ]
    )


def client_line(person: Person) -> str:
    """Say who it is: ``WR-014: female, pushed by both hands on the rims``."""
    client = person.client
    return f"{client.reference}: {client.sex}, pushed by {propulsion_words(client)}"


def weighed_sections(person: Person) -> list[str]:
    """Say that the centre of mass was measured; nothing when it is an estimate."""
    if person.weighed is None:
        return []
    return [wrapped(centre_words(person.weighed))]


def measure_text(person: Person) -> str:
    """Say how many measures were taken, and what looks doubtful."""
    measures = list(person.measures)
    measured = sum(not measure.estimated for measure in measures)
    head = (
        f"Measures: {measured} taken, {len(measures) - measured} estimated from them "
        f"(chairwright person lists all)."
    )
    remarks = [
        wrapped(f"- {remark.where}: {remark.text}" if remark.where else f"- {remark.text}", "  ")
        for remark in person.review.remarks
    ]
    return "\n".join([wrapped(head), *(remarks or ["Nothing looks doubtful."])])


def sure_sections(fit: Fit) -> list[str]:
    """Say how sure the musts are, when that was asked for."""
    sure, best = fit.sure, fit.best
    if sure is None or best is None:
        return []
    if sure.all_sure:
        more = best.cost - sure.nominal_cost
        dearer = f" It costs {more:.2f} more than the best on nominal values." if more > 0 else ""
        return [wrapped(f"Sure: every must holds with its spread.{dearer}")]
    head = "No set-up of this line holds every must with its spread."
    if not sure.never:
        return [wrapped(f"{head} Each can be sure by itself, not all together: {NOMINAL}")]
    names = "; ".join(target_words(each, fit.line) for each in sure.never)
    rest = "the best that is sure of all others" if sure.rest_sure else NOMINAL.rstrip(".")
    return [
        wrapped(f"{head} On nominal values at best, whatever is chosen: {names}."),
        wrapped(f"Shown is {rest.removeprefix('shown is ')}."),
    ]


NOMINAL = "shown is the best on nominal values."


def best_words(fit: Fit) -> str:
    """Say what is proven of the best set-up, or that there is only a nearest."""
    if fit.best is None:
        return wrapped("Nearest set-up: that of group 1 above. It does NOT meet every must.")
    looked = f"{fit.best.looked_at:,} finished and unfinished set-ups were looked at."
    cost = f"(cost {fit.best.cost:.2f})"
    if fit.sure is not None and fit.sure.rest_sure:
        held = "every must holds with its spread" if fit.sure.all_sure else "every must holds"
        kind = "of those as sure no other" if not fit.sure.all_sure else "no other such set-up"
        return wrapped(
            f"Best set-up, proven: {held}, and {kind} misses the preferences by less {cost}. "
            f"{looked}"
        )
    if fit.extent != "needed":
        return wrapped(
            "Best set-up, proven: every must holds, and no other set-up misses the preferences by "
            f"less {cost}. {looked}"
        )
    head = wrapped(
        "No set-up of the standard range meets every must; one with sizes made to order does."
    )
    best = wrapped(
        "Best set-up, proven: every must holds, no other that does has a smaller surcharge, and of "
        f"those with the same surcharge none misses the preferences by less {cost}. {looked}"
    )
    return f"{head}\n{best}"


NOTHING = {
    "standard": "No set-up of this line meets every must.",
    "needed": "No set-up of this line meets every must, not even with sizes made to order.",
    "always": "No set-up of this line meets every must, not even with sizes made to order.",
}


def reason_sections(fit: Fit) -> list[str]:
    """Why nothing fits: what could be given up, and what cannot hold together.

    Parameters
    ----------
    fit : Fit
        One without a best set-up.

    Returns
    -------
    list of str
    """
    reasons, line, count = fit.reasons or Reasons((), ()), fit.line, fit.count
    if not reasons.corrections:
        words = "No set-up of this line stands on its wheels for this client."
        if count == 0:
            words = "The settled choices leave no set-up that keeps the line's rules."
        return [wrapped(f"{words} Widen the settled choices, or take another line.")]
    head = f"{NOTHING[fit.extent]} That is a result, with its reasons."
    shown = reasons.corrections[:CORRECTION_ROWS]
    groups = ["Give up one of these groups, and all the other musts hold:"]
    groups += [_group_text(number, each, line) for number, each in enumerate(shown, 1)]
    groups += _more(len(reasons.corrections) - len(shown))
    clashes = ["These cannot hold together on this line:"]
    shown_clashes = reasons.conflicts[:CORRECTION_ROWS]
    clashes += [wrapped(f"- {_clash_words(clash, line)}", "  ") for clash in shown_clashes]
    clashes += _more(len(reasons.conflicts) - len(shown_clashes))
    sections = [wrapped(head), "\n".join(groups)]
    if shown_clashes:
        sections.append("\n".join(clashes))
    return sections if reasons.complete else [*sections, wrapped(STOPPED)]


STOPPED = (
    "There are more such groups: the search stopped at the first few. What is listed is right; "
    "--all-reasons finds every one, which can take minutes."
)


def _more(count: int) -> list[str]:
    return [f"... and {count} more; --json has all"] if count > 0 else []


def _group_text(number: int, correction: Correction, line: Line) -> str:
    gives = "; ".join(give_words(give, line) for give in correction.gives)
    codes = code_words(line, correction.index)
    lines = [wrapped(f"{number}. {gives}", "   "), wrapped(f"   with {codes}", "        ")]
    sizes = order_words(line, correction.index)
    if sizes:
        lines.append(wrapped(f"   made to order: {sizes}", "        "))
    return "\n".join(lines)


def give_words(give: Give, line: Line) -> str:
    """Say what a must would have to give: what is asked, the nearest value, and by how much.

    Parameters
    ----------
    give : Give
    line : Line

    Returns
    -------
    str
    """
    figure = FIGURES[give.target.figure]
    asked = target_words(give.target, line, give.value)
    if give.value != give.value:
        return f"{asked}: the set-up has no such figure"
    value = measured_words(figure, give.value, line, give.target)
    side = "short" if give.target.low is not None and give.value < give.target.low else "over"
    return f"{asked}: nearest {value}, {amount_words(figure, give.by, line)} {side}"


def _clash_words(clash: Sequence[Target], line: Line) -> str:
    if len(clash) == 1:
        return f"{target_words(clash[0], line)}, by itself"
    return " with ".join(target_words(target, line) for target in clash)
