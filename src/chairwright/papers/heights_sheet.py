"""A seat-height chart to print: one rear wheel a page, millimetres and inches."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import asdict, dataclass
from itertools import groupby

from chairwright.fitting.heights_chart import HeightsChart
from chairwright.papers.heights_blocks import Block, blocks, fork_part, lettered
from chairwright.papers.heights_words import (
    NOT_HELD,
    NOT_SQUARE,
    SQUARE_WORDS,
    STEM_WORDS,
    WHAT,
    Cell,
    cells_of,
    facts,
    level_words,
    named,
    settings_words,
    unsquare_words,
)
from chairwright.papers.typeset import Paper, typeset

COLUMNS_WIDE: dict[Paper, int] = {"a4": 21, "us-letter": 20}
"""Fork holes side by side across a page on its side."""


@dataclass(frozen=True)
class Group:
    """Neighbouring columns under one head: a caster or a fork."""

    code: str
    name: str
    count: int


@dataclass(frozen=True)
class Row:
    """One axle hole, or several that are alike; dashes carry the letter of their reason."""

    label: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True)
class Band:
    """One table: casters over forks over fork holes, axle holes down."""

    casters: tuple[Group, ...]
    forks: tuple[Group, ...]
    holes: tuple[str, ...]
    rows: tuple[Row, ...]


@dataclass(frozen=True)
class WheelPage:
    """One rear wheel.

    Parameters
    ----------
    code, name : str
    bands : tuple of Band
    left_out : tuple of tuple of str
        Reason, and the casters and fork holes that have no height at any axle hole.
    letters : tuple of tuple of str
        Letter and reason of each kind of dash.
    settings : str
        Stem settings in words.
    unsquare : str
        What the mark beside a stem angle means; empty when there is none.
    """

    code: str
    name: str
    bands: tuple[Band, ...]
    left_out: tuple[tuple[str, str], ...]
    letters: tuple[tuple[str, str], ...]
    settings: str
    unsquare: str


def heights_pdf(chart: HeightsChart, paper: Paper = "a4") -> bytes:
    """Typeset a chart, one page or more for each rear wheel.

    Parameters
    ----------
    chart : HeightsChart
    paper : {"a4", "us-letter"}
        On its side.

    Returns
    -------
    bytes
        A tagged PDF; the same chart gives the same bytes.
    """
    line = chart.line
    content = {
        "line": {
            "name": line.name,
            "title": line.title,
            "version": line.version,
            "maker": line.maker,
        },
        "inches_first": line.typed_in == "in",
        "facts": facts(chart),
        "level": level_words(chart),
        "pages": [asdict(page) for page in wheel_pages(chart, COLUMNS_WIDE[paper])],
        "what": WHAT,
        "stem": f"{STEM_WORDS} {SQUARE_WORDS}",
        "not_held": NOT_HELD,
    }
    return typeset("heights_sheet.typ", content, paper)


def wheel_pages(chart: HeightsChart, wide: int) -> list[WheelPage]:
    """Cut a chart into pages.

    Parameters
    ----------
    chart : HeightsChart
    wide : int
        Most fork holes side by side.

    Returns
    -------
    list of WheelPage
        Rear wheels with which nothing stands are told on a page without tables.
    """
    cut = [(block, cells_of(chart, block)) for block in blocks(chart)]
    letters = lettered(
        each.reason for _, rows in cut for row in rows for each in row if each.reason
    )
    return [
        _page(chart, list(own), letters, wide)
        for _, own in groupby(cut, lambda each: each[0].wheel)
    ]


Cut = Sequence[tuple[Block, list[list[Cell]]]]


def _page(chart: HeightsChart, cut: Cut, letters: dict[str, str], wide: int) -> WheelPage:
    wheel = chart.option("rear_wheel", cut[0][0].wheel)
    cells = [each for _, rows in cut for row in rows for each in row]
    used = {each.reason for each in cells}
    marked = any(each.stem.endswith(NOT_SQUARE) for each in cells)
    return WheelPage(
        code=wheel.code,
        name=named(wheel),
        bands=tuple(_band(chart, part, letters) for part in _bands(cut, wide)),
        left_out=tuple(_left_out(chart, [block for block, _ in cut])),
        letters=tuple((letter, reason) for reason, letter in letters.items() if reason in used),
        settings=settings_words(chart, (each.setting for each in cells)),
        unsquare=unsquare_words(chart) if marked else "",
    )


@dataclass(frozen=True)
class _Column:
    """One fork hole under one caster with its cells."""

    caster: int
    fork: int
    cells: tuple[Cell, ...]


def _bands(cut: Cut, wide: int) -> Iterator[list[_Column]]:
    """Columns of a page in tables no wider than the paper; a caster is split only when it must."""
    band: list[_Column] = []
    for block, rows in cut:
        columns = [
            _Column(block.caster, fork, tuple(row[at] for row in rows))
            for at, fork in enumerate(block.forks)
        ]
        if band and len(band) + len(columns) > wide:
            yield band
            band = []
        while len(columns) > wide:
            yield columns[:wide]
            columns = columns[wide:]
        band += columns
    if band:
        yield band


def _band(chart: HeightsChart, columns: Sequence[_Column], letters: dict[str, str]) -> Band:
    codes = [chart.line.choices["axle_hole"].options[at].code for at in chart.column.rows.values()]
    rows = zip(codes, zip(*(column.cells for column in columns), strict=True), strict=True)
    return Band(
        casters=tuple(_casters(chart, columns)),
        forks=tuple(_forks(chart, columns)),
        holes=tuple(chart.option("fork", column.fork).code for column in columns),
        rows=tuple(_rows(rows, letters)),
    )


def _casters(chart: HeightsChart, columns: Sequence[_Column]) -> Iterator[Group]:
    for caster, own in groupby(columns, lambda column: column.caster):
        option = chart.option("caster", caster)
        yield Group(option.code, named(option), len(list(own)))


def _forks(chart: HeightsChart, columns: Sequence[_Column]) -> Iterator[Group]:
    def key(column: _Column) -> tuple[int, str]:
        return column.caster, fork_part(chart.option("fork", column.fork))

    for (_, part), own in groupby(columns, key):
        together = list(own)
        name = chart.option("fork", together[0].fork).name.rpartition(", hole")[0]
        yield Group(part, name, len(together))


def _rows(rows: Iterable[tuple[str, tuple[Cell, ...]]], letters: dict[str, str]) -> Iterator[Row]:
    """Neighbouring rows of the same dashes become one."""

    def key(row: tuple[str, tuple[Cell, ...]]) -> tuple[str, ...] | str:
        return tuple(each.reason for each in row[1]) if all(e.reason for e in row[1]) else row[0]

    for _, alike in groupby(rows, key):
        same = list(alike)
        label = same[0][0] if len(same) == 1 else f"{same[0][0]} to {same[-1][0]}"
        cells = (Cell(reason=letters[e.reason]) if e.reason else e for e in same[0][1])
        yield Row(label, tuple(cells))


def _left_out(chart: HeightsChart, cut: Sequence[Block]) -> Iterator[tuple[str, str]]:
    found: dict[str, dict[str, list[str]]] = {}
    for block in cut:
        caster = chart.option("caster", block.caster).code
        for each in block.left_out:
            found.setdefault("; or ".join(each.reasons), {}).setdefault(each.codes, []).append(
                caster
            )
    for reason, places in found.items():
        yield (
            reason,
            "; ".join(f"{', '.join(casters)} in {codes}" for codes, casters in places.items()),
        )
