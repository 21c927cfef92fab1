"""The lesson sheet of one sweep: title, small drawings, strips over numbers, reasons, cautions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from chairwright.drawing.lesson_plan import lesson_plans
from chairwright.drawing.lesson_side import lesson_sides
from chairwright.drawing.lesson_strip import Strip, strip_sheet
from chairwright.drawing.sheet import Sheet
from chairwright.drawing.svg import to_svg
from chairwright.figures.registry import GROUPS, Figure
from chairwright.fitting.described import Described
from chairwright.fitting.extras import fitted_extras
from chairwright.fitting.moved import moved_figures
from chairwright.fitting.person import Person
from chairwright.fitting.sweep import Sweep, SweptRun, Tried
from chairwright.line.choices import CHOICES
from chairwright.papers.cautions import beside
from chairwright.papers.lesson import (
    LessonBlock,
    LessonCell,
    LessonPayload,
    LessonPicture,
    LessonRow,
    LessonWhy,
)
from chairwright.papers.lesson_columns import notes_of, shown_options
from chairwright.papers.lesson_kinds import kind_of, lesson_figures, title_of
from chairwright.papers.lesson_why import Why, why
from chairwright.papers.lesson_words import (
    afterwards,
    change_words,
    extra_words,
    option_words,
    run_words,
)
from chairwright.papers.payload import Drawing, Source
from chairwright.papers.typeset import Paper
from chairwright.papers.words import (
    SourceNumbers,
    Units,
    inches_words,
    range_words,
    spread_words,
    unit_words,
    value_words,
)
from chairwright.targets.target import Target

STRIPS = 5
STRIP_MM = 6.0
WIDEST_COLUMN_MM = 24.0


@dataclass(frozen=True)
class Room:
    """What there is room for [mm]."""

    figures: int
    columns: int
    strips_mm: float
    wide_mm: float
    picture_mm: float


ROOMS: dict[tuple[Paper, int], Room] = {
    ("a4", 1): Room(8, 9, 134.0, 178.0, 66.0),
    ("a4", 2): Room(7, 6, 57.0, 178.0, 50.0),
    ("us-letter", 1): Room(8, 9, 134.0, 184.0, 56.0),
    ("us-letter", 2): Room(6, 6, 57.0, 184.0, 44.0),
}
"""Paper and number of runs on it."""


def lesson_of(
    sweep: Sweep, setup_id: str, units: Units = "mm", paper: Paper = "a4"
) -> LessonPayload:
    """Put a sweep into the words and drawings of a lesson sheet.

    Parameters
    ----------
    sweep : Sweep
        One or two runs, at least one of them with another option that stands.
    setup_id : str
        What the set-up is called on the sheet.
    units : {"mm", "in"}
        ``"in"`` adds inches to the lengths in the table.
    paper : {"a4", "us-letter"}

    Returns
    -------
    LessonPayload
    """
    runs = [run for run in sweep.runs if len(run.standing) > 1]
    room = ROOMS[paper, len(runs)]
    whys = {run.run.name: _whys(sweep, run, room) for run in runs}
    every = (text for each in whys.values() for one in each for text in one.sources)
    numbers = SourceNumbers(every, brief)
    shown = {one.figure for each in whys.values() for one in each}
    pictures, scale = _pictures(sweep, runs, room)
    return LessonPayload(
        title=title_of(sweep),
        client_reference=sweep.person.client.reference,
        setup_id=setup_id,
        line_title=sweep.line.title,
        line_version=sweep.line.version,
        present=_present(sweep),
        pictures=pictures,
        legend=f"{_legend(sweep.choice).format(scale=scale)} {STRIP_LEGEND}",
        blocks=tuple(_block(sweep, run, whys[run.run.name], numbers, room, units) for run in runs),
        afterwards=afterwards(sweep.choice),
        others=_others(sweep, runs, shown),
        cautions=tuple(_cautions(shown, sweep.person)),
        sources=tuple(Source(str(number), words) for number, words in numbers.listed),
    )


def _present(sweep: Sweep) -> str:
    """The option that the set-up has, and the accessories on it."""
    extras = fitted_extras(sweep.line)
    beside = f"; extras: {extra_words(extras)}" if extras else ""
    return f"{CHOICES[sweep.choice].label} {option_words(sweep.option)}{beside}"


LEGEND = (
    "Side views 1:{scale:g} from the right: plumb line from the centre of mass, dashed lines to "
    "the tipping edges with their angles (wheels locked), thin dashes where wheels, seat and back "
    "were."
)
PLAN_LEGEND = (
    "Plans 1:{scale:g}, front to the right: dashed the area between the tyre contacts, with the "
    "centre of mass in it, and where wheels and seat were."
)
STRIP_LEGEND = "Strips: full dot as it stands, dashes an end of what must hold."
SEEN_FROM_ABOVE = frozenset({"camber", "hand_rim", "seat_width", "arm_support"})
"""Choices that are about width."""

SURER = "The same body sits in each: how far a figure moves is surer than the figure itself. "
FORMULA = "First principles"


def brief(source: str) -> tuple[str, ...]:
    """A source as a lesson lists it: all theory pages as one."""
    return (f"{FORMULA} (theory)",) if source.startswith(FORMULA) else (source,)


def _legend(choice: str) -> str:
    return PLAN_LEGEND if choice in SEEN_FROM_ABOVE else LEGEND


def _whys(sweep: Sweep, run: SweptRun, room: Room) -> tuple[Why, ...]:
    return tuple(
        why(sweep.choice, run, figure) for figure in lesson_figures(sweep, run, room.figures)
    )


def _block(
    sweep: Sweep,
    run: SweptRun,
    whys: Sequence[Why],
    numbers: SourceNumbers,
    room: Room,
    units: Units,
) -> LessonBlock:
    shown = shown_options(run, room.columns)
    present = next(at for at, each in enumerate(shown) if each.status == "as it stands")
    figures = [each.figure for each in whys]
    wide = min(room.strips_mm, WIDEST_COLUMN_MM * len(shown))
    rows = [
        _row(sweep, shown, present, figure, units, wide if at < STRIPS else 0.0)
        for at, figure in enumerate(figures)
    ]
    return LessonBlock(
        heading=kind_of(sweep.choice, run.run.along).title,
        range=run_words(sweep, run),
        columns=tuple(each.option.code for each in shown),
        present=present,
        rows=(*rows, *_closing_rows(shown)),
        whys=tuple(LessonWhy(one.figure.label, one.text, numbers.of(one.sources)) for one in whys),
        notes=notes_of(run, shown),
    )


def _row(
    sweep: Sweep,
    shown: Sequence[Tried],
    present: int,
    figure: Figure,
    units: Units,
    strips_mm: float,
) -> LessonRow:
    setups = [each.setup for each in shown if each.setup is not None]
    values = [setup.figures[figure.name] for setup in setups]
    must = _must(sweep.base, figure)
    musts = () if must is None else (must,)
    return LessonRow(
        label=figure.label,
        unit=unit_words(figure, sweep.line),
        cells=tuple(
            LessonCell(
                value_words(figure, value, *musts),
                "" if at == present else change_words(figure, values[present], value),
                inches_words(figure, value).removesuffix(" in") if units == "in" else "",
            )
            for at, value in enumerate(values)
        ),
        must=_beside(sweep.base, figure, must, values),
        strip=_strip(figure, shown, values, present, must, strips_mm) if strips_mm else None,
    )


def _beside(base: Described, figure: Figure, must: Target | None, values: Sequence[float]) -> str:
    """What must hold, and the spread of the figure as the set-up stands."""
    spread = spread_words(figure, base.spreads.get(figure.name, 0.0))
    asked = "" if must is None else f"must {range_words(must, *values)}"
    return ", ".join(part for part in (asked, spread) if part)


def _must(base: Described, figure: Figure) -> Target | None:
    return next(
        (
            item.target
            for item in base.judged
            if item.target.must and item.target.figure == figure.name
        ),
        None,
    )


def _strip(
    figure: Figure,
    shown: Sequence[Tried],
    values: Sequence[float],
    present: int,
    must: Target | None,
    width_mm: float,
) -> Drawing:
    pairs = zip(shown, values, strict=True)
    told = ", ".join(f"{each.option.code} {value_words(figure, value)}" for each, value in pairs)
    words = f"{figure.label} by option: {told}"
    ends = (None, None) if must is None else (must.low, must.high)
    strip = Strip(words, values, present, 2.0 * figure.scale, *ends)
    return _drawing(
        strip_sheet(strip, width_mm, STRIP_MM), f"strip-{figure.name.replace('_', '-')}"
    )


def _closing_rows(shown: Sequence[Tried]) -> Iterator[LessonRow]:
    if any(each.squared for each in shown):
        cells = tuple(
            LessonCell(each.squared.code, f"{each.squared.stem_deg:.1f}")
            if each.squared
            else LessonCell("–")
            for each in shown
        )
        yield LessonRow("Square again with", "deg left", cells)
    yield LessonRow("Musts missed", "", tuple(LessonCell(str(len(each.missed))) for each in shown))


def _pictures(
    sweep: Sweep, runs: Sequence[SweptRun], room: Room
) -> tuple[tuple[LessonPicture, ...], float]:
    chosen = list(_states(sweep, runs))
    earlier = next(at for at, (each, _) in enumerate(chosen) if each.status == "as it stands")
    shapes = [each.setup.shape for each, _ in chosen if each.setup is not None]
    draw = lesson_plans if sweep.choice in SEEN_FROM_ABOVE else lesson_sides
    drawn = draw(shapes, earlier, room.wide_mm / max(3, len(shapes)), room.picture_mm)
    pictures = (
        LessonPicture(_drawing(sheet, f"side-{at}"), caption)
        for at, (sheet, (_, caption)) in enumerate(zip(drawn.sheets, chosen, strict=True))
    )
    return tuple(pictures), drawn.scale


def _states(sweep: Sweep, runs: Sequence[SweptRun]) -> Iterator[tuple[Tried, str]]:
    """Ends of the first run, the set-up as it stands, ends of the second run."""
    ends = [[*_ends(sweep, run)] for run in runs]
    first = ends[0]
    if len(runs) == 1 and first and first[-1][0].option is runs[0].standing[-1].option:
        yield from first[:-1]
        yield _as_it_stands(runs[0])
        yield first[-1]
        return
    yield from first
    yield _as_it_stands(runs[0])
    for more in ends[1:]:
        yield from more


def _as_it_stands(run: SweptRun) -> tuple[Tried, str]:
    here = run.tried[run.present]
    return here, f"{here.option.code}: as it stands"


def _ends(sweep: Sweep, run: SweptRun) -> Iterator[tuple[Tried, str]]:
    words = kind_of(sweep.choice, run.run.along).ends if run.run.along else ("", "")
    for each, word in zip((run.standing[0], run.standing[-1]), words, strict=True):
        if each.status != "as it stands":
            yield each, f"{each.option.code}: {word}" if word else each.option.code


def _others(sweep: Sweep, runs: Sequence[SweptRun], shown: set[Figure]) -> str:
    setups = [setup for run in runs for setup in run.setups()]
    rest = [figure for figure in moved_figures(sweep.base, setups) if figure not in shown]
    if not rest:
        return ""
    move = "figures move" if len(rest) > 1 else "figure moves"
    return f"{len(rest)} more {move}: chairwright sweep --all."


def _cautions(shown: set[Figure], person: Person) -> Iterator[str]:
    groups = {figure.group for figure in shown}
    for group in GROUPS:
        if group in groups:
            yield from beside(group, person.weighed)
    yield SURER


def _drawing(sheet: Sheet, prefix: str) -> Drawing:
    return Drawing(to_svg(sheet, prefix), f"{sheet.title}. {sheet.description}", sheet.width_mm)
