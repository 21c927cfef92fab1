"""Times and memory, as ratios against a named alternative in the same run; nothing is asserted.

``make bench`` prints the tables; ``python -m tests.bench.run --write`` also writes them, with the
machine named, to ``docs/validation/search-speed.md`` and its picture.
"""

from __future__ import annotations

import sys

from chairwright.cli.table import text_table
from tests.bench.desk_start import first_page
from tests.bench.desk_steps import bench_in_browser
from tests.bench.machine import machine
from tests.bench.page import CLIENTS, ENUMERATION, SIZES, SOLVER, write_page
from tests.bench.processes import cold_starts, memory, pack, with_places
from tests.bench.ratios import against_enumeration, against_solver
from tests.bench.refits import refits
from tests.bench.searches import by_client, by_size


def main(arguments: list[str]) -> None:
    """Measure, print, and write the page when asked to."""
    tables = {
        CLIENTS: by_client(),
        SIZES: by_size(),
        ENUMERATION: against_enumeration(),
        SOLVER: against_solver(),
        "Whole processes": cold_starts(),
        "Fits with places": with_places(),
        "Re-fits": refits(),
        "Papers of an order": pack(),
        "Memory": memory(),
        "Start of the desk": first_page(),
        "The bench in a browser": bench_in_browser(),
    }
    print("; ".join(machine()))
    for title, table in tables.items():
        print(f"\n{title}")
        print(text_table(table.columns, table.rows, right="l" + "r" * (len(table.columns) - 1)))
    if "--write" in arguments:
        write_page(machine(), tables)


if __name__ == "__main__":
    main(sys.argv[1:])
