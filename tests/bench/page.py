"""The page of results and its picture."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from tests.bench.chart import chart
from tests.bench.machine import Table

PAGE = Path("docs/validation/search-speed.md")
PICTURE = Path("docs/images/search-speed.svg")
SIZES = "Size of the space"
WORDS = {
    "Whole searches on the everyday line": (
        "Every set-up that the line's rules leave each example client, standard options only. "
        "Median of three runs in one process, one thread."
    ),
    SIZES: (
        "The average client's space with options taken away evenly round the best set-up, and "
        "the whole of it. What the search costs hangs little on the size:\n"
        "what counts is how many set-ups are nearly as good as the best.\n\n"
        "![Time of the search against the size of the space](../images/search-speed.svg)"
    ),
    "Against vectorised full enumeration": (
        "The same space, the same formulas on blocks of 200,000 rows, the same least cost."
    ),
    "Against CP-SAT": (
        "The same least cost proven by the CP-SAT solver of OR-Tools with two workers. Its model "
        "is described in `tests/oracles/cp_sat.py`: each figure of few choices is a\n"
        "table that this program filled, so the solver is spared the geometry; masses, balance, "
        "elbow and outline are its own sums and products. Building the\n"
        "model is not counted. Its costs are whole millionths, so they may differ in the fourth "
        "digit."
    ),
    "Whole processes": "From the command to its end, median of five.",
    "Memory": "Peak resident memory of one process.",
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
    PICTURE.write_text(chart(tables[SIZES].rows), encoding="utf-8")


def _markdown(table: Table) -> str:
    rule = ["---"] + ["---:"] * (len(table.columns) - 1)
    return "\n".join(f"| {' | '.join(row)} |" for row in (table.columns, rule, *table.rows))
