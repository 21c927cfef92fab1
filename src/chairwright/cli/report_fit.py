"""What came out of a fitting as text, for a terminal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chairwright.cli.report_setup import setup_sections
from chairwright.cli.table import text_table
from chairwright.figures.registry import FIGURES
from chairwright.fitting.fit import Fit
from chairwright.line.model import Line
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.words import (
    Units,
    amount_words,
    propulsion_words,
    target_words,
    value_words,
    wrapped,
)
from chairwright.search.front import Front, FrontPoint, Objective
from chairwright.search.reasons import Correction, Give, Reasons
from chairwright.targets.target import Target

FRONT_ROWS = 12
FRONT_CHOICES = ("rear_wheel", "axle_hole", "caster", "fork", "caster_housing", "seat_width",
                 "arm_support")  # fmt: skip
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
    sections = [head_text(fit), measure_text(fit)]
    if fit.reasons is not None:
        sections += reason_sections(fit.reasons, fit.line, fit.count)
    if fit.setup is not None:
        sections += [_setup_head(fit), *setup_sections(fit.setup, units)]
    if fit.front is not None:
        sections.append(front_text(fit.front, fit.objectives, fit.line))
    sections.append(wrapped(PURPOSE))
    return "\n\n".join(sections)


def head_text(fit: Fit) -> str:
    """Say who, what line and how many set-ups."""
    client = fit.person.client
    return "\n".join(
        [
            f"{client.reference}: {client.sex}, pushed by {propulsion_words(client)}",
            f"{fit.line.title}, version {fit.line.version}, {fit.line.maker}",
            f"{fit.count:,} set-ups to choose from",
        ]
    )


def measure_text(fit: Fit) -> str:
    """Say how many measures were taken, and what looks doubtful."""
    measures = list(fit.person.measures)
    measured = sum(not measure.estimated for measure in measures)
    head = (
        f"Measures: {measured} taken, {len(measures) - measured} estimated from them "
        f"(chairwright person lists all)."
    )
    remarks = [
        wrapped(f"- {remark.where}: {remark.text}" if remark.where else f"- {remark.text}", "  ")
        for remark in fit.person.review.remarks
    ]
    return "\n".join([wrapped(head), *(remarks or ["Nothing looks doubtful."])])


def _setup_head(fit: Fit) -> str:
    if fit.best is not None:
        return wrapped(
            f"Best set-up, proven: every must holds, and no other set-up misses the preferences by "
            f"less (cost {fit.best.cost:.2f}). {fit.best.looked_at:,} finished and unfinished "
            "set-ups were looked at."
        )
    return wrapped("Nearest set-up: that of group 1 above. It does NOT meet every must.")


def reason_sections(reasons: Reasons, line: Line, count: int) -> list[str]:
    """Why nothing fits: what could be given up, and what cannot hold together.

    Parameters
    ----------
    reasons : Reasons
    line : Line
    count : int
        Set-ups in the space.

    Returns
    -------
    list of str
    """
    if not reasons.corrections:
        words = "No set-up of this line stands on its wheels for this client."
        if count == 0:
            words = "The settled choices leave no set-up that keeps the line's rules."
        return [wrapped(f"{words} Widen the settled choices, or take another line.")]
    head = "No set-up of this line meets every must. That is a result, with its reasons."
    shown = reasons.corrections[:CORRECTION_ROWS]
    groups = ["Give up one of these groups, and all the other musts hold:"]
    groups += [_group_text(number, each, line) for number, each in enumerate(shown, 1)]
    groups += _more(len(reasons.corrections) - len(shown))
    clashes = ["These cannot hold together on this line:"]
    shown_clashes = reasons.conflicts[:CORRECTION_ROWS]
    clashes += [wrapped(f"- {_clash_words(clash)}", "  ") for clash in shown_clashes]
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
    gives = "; ".join(give_words(give) for give in correction.gives)
    codes = code_words(line, correction.index)
    return "\n".join(
        [wrapped(f"{number}. {gives}", "   "), wrapped(f"   with {codes}", "        ")]
    )


def give_words(give: Give) -> str:
    """Say what a must would have to give: what is asked, the nearest value, and by how much.

    Parameters
    ----------
    give : Give

    Returns
    -------
    str
    """
    figure = FIGURES[give.target.figure]
    asked = target_words(give.target)
    if give.value != give.value:
        return f"{asked}: the set-up has no such figure"
    value = f"{value_words(figure, give.value)} {figure.unit}".rstrip()
    side = "short" if give.target.low is not None and give.value < give.target.low else "over"
    return f"{asked}: nearest {value}, {amount_words(figure, give.by)} {side}"


def _clash_words(clash: Sequence[Target]) -> str:
    if len(clash) == 1:
        return f"{target_words(clash[0])}, by itself"
    return " with ".join(target_words(target) for target in clash)


def code_words(line: Line, index: dict[str, int]) -> str:
    """Write the codes of a set-up in one line, in the order of the choices."""
    return " ".join(line.choices[name].options[place].code for name, place in index.items())


def front_text(front: Front, objectives: Sequence[Objective], line: Line) -> str:
    """The trade-off front: a few of its set-ups, evenly along it.

    Parameters
    ----------
    front : Front
    objectives : sequence of Objective
    line : Line

    Returns
    -------
    str
    """
    aims = [FIGURES[aim.figure] for aim in objectives]
    words = " against ".join(aim.label.lower() for aim in aims)
    points = list(_evenly(front.points, FRONT_ROWS))
    rows = [[*_values(point, objectives), _front_codes(point, line)] for point in points]
    headers = [f"{aim.label} {aim.unit}".rstrip() for aim in aims]
    table = text_table([*headers, "main choices"], rows, "r" * len(aims))
    shown = "all shown" if len(points) == len(front.points) else f"{len(points)} shown"
    head = (
        f"Trade-off: {words}. Every must holds; no other set-up beats any of these "
        f"{len(front.points):,} ({shown})."
    )
    return f"{wrapped(head)}\n{table}"


def _evenly(points: Sequence[FrontPoint], most: int) -> Iterator[FrontPoint]:
    if len(points) <= most:
        yield from points
        return
    last = len(points) - 1
    yield from (points[round(step * last / (most - 1))] for step in range(most))


def _values(point: FrontPoint, objectives: Sequence[Objective]) -> list[str]:
    return [value_words(FIGURES[aim.figure], point.values[aim.figure]) for aim in objectives]


def _front_codes(point: FrontPoint, line: Line) -> str:
    return code_words(line, {name: point.index[name] for name in FRONT_CHOICES})
