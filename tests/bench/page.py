"""The page of results and its picture."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from tests.bench.chart import Series, chart
from tests.bench.machine import Table

PAGE = Path("docs/validation/search-speed.md")
PICTURE = Path("docs/images/search-speed.svg")
CLIENTS, SIZES = "Whole searches on the everyday line", "Size of the space"
ENUMERATION, SOLVER = "Against vectorised full enumeration", "Against CP-SAT"
WORDS = {
    CLIENTS: """\
Every set-up that the line's rules leave each example client, standard options only. Median of
three runs in one process, one thread.""",
    SIZES: """\
The average client's space with options taken away evenly round the best set-up, and the whole of
it. What the search costs hangs little on the size: what counts is how many set-ups are nearly as
good as the best.

![Time of the search, of full enumeration and of CP-SAT against the number of set-ups][picture]

[picture]: ../images/search-speed.svg""",
    ENUMERATION: """\
The same space, every set-up that the rules allow looked at with the same formulas on arrays of up
to 50,000 rows, the same least cost. The search's time holds all its preparation; below a million
set-ups it is nearly all preparation.""",
    SOLVER: """\
The same least cost proven by the CP-SAT solver of OR-Tools, run with 2 and with 8 workers on all
cores; the quicker one counts. The search runs in one thread. Building the solver's model is shown,
but is not in the ratio; the search's own preparation is in its time.

How the model is made (`tests/oracles/cp_sat.py`):

- Every choice is a variable. The nine choices of the running gear are one variable more, over the
  combinations that stand and hold the musts on seat and caster stem; so are the four of the hip.
- A figure of few of these variables is a table that this program filled: heights, angles, widths,
  clearances. So the solver is spared the geometry, and what a table rules out it need not find.
- Masses and moments are sums of tables; balance is products of the running gear's sine and cosine
  with those sums; elbow and outline are sums of squares and tangents. These formulas are its own.
- Its costs are whole millionths and its arcs are chords: a cost may differ in the fourth digit.

Random medium lines for seven clients, with price, delivery and mass among the targets, are compared
in `tests/oracles/test_cp_sat.py`. For the whole space the tables would have more than a million
rows each; that is not tried.""",
    "Whole processes": "From the command to its end, median of five.",
    "Fits with places": """\
`chairwright fit CLIENT` with its trade-off front, and the same with the client's places: from the
command to its end, median of three. The second run searches twice, with and without the places, to
tell what they decide.""",
    "Papers of an order": """\
`chairwright papers`: quotation, order, build sheet, adjust sheet, letter, handover, label and
set-up sheet of one client, from the command to the last file written. Median of five.""",
    "Re-fits": """\
The trade-off of a re-fit by itself, and `chairwright refit` from the command to its end; the last
column in starts of an empty Python process.""",
    "Memory": "Peak resident memory of one process.",
    "Start of the desk": "`chairwright desk` from the command to the first page answered.",
    "The bench in a browser": """\
Sliders of the bench moved one by one in Chromium: from the event to the frame after the drawing was
replaced, in ms; and finding the best, from the click to the drawing shown, in s.""",
}


def write_page(machine: Sequence[str], tables: Mapping[str, Table]) -> None:
    """Write the page and the picture."""
    parts = [
        "# Speed of the search",
        f"Measured by `python -m tests.bench.run --write` on: {'; '.join(machine)}.\n"
        "Times are of this machine; ratios compare within one run. Nothing here is asserted by a "
        "test.",
    ]
    for title, table in tables.items():
        parts += [f"## {title}", WORDS[title], _markdown(table)]
    PAGE.write_text("\n\n".join(parts) + "\n", encoding="utf-8")
    PICTURE.write_text(chart(series(tables)), encoding="utf-8")


def series(tables: Mapping[str, Table]) -> list[Series]:
    """What the picture shows: the search, and what it is compared with."""
    sizes = tables[SIZES]
    return [
        Series("best set-up", "disc", "", _points(sizes, 1)),
        Series("front of three", "ring", "6 4", _points(sizes, 2)),
        Series("every set-up tried", "square", "2 3", _points(tables[ENUMERATION], 2), before=True),
        Series("CP-SAT", "triangle", "10 3 2 3", _points(tables[SOLVER], 2)),
    ]


def _points(table: Table, column: int) -> tuple[tuple[float, float], ...]:
    return tuple((float(row[0]), float(row[column])) for row in table.rows)


def _markdown(table: Table) -> str:
    rule = ["---"] + ["---:"] * (len(table.columns) - 1)
    return "\n".join(f"| {' | '.join(row)} |" for row in (table.columns, rule, *table.rows))
