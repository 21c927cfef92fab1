"""Re-fits on the everyday line: the whole trade-off by itself, and the whole command."""

from __future__ import annotations

from functools import partial

from chairwright.cli.opened import open_setup
from chairwright.files.client import read_client
from chairwright.fitting.person import read_person
from chairwright.order.refit import Present, refit
from tests.bench.machine import Table, timed
from tests.bench.processes import cold

EXAMPLES = ("chi-007", "hem-004")


def refits() -> Table:
    """Median wall times, and how many starts of the command the trade-off takes."""
    start = cold("-m", "chairwright.cli.main", "--help")
    rows = []
    for name in EXAMPLES:
        client, setup = f"examples/refit/{name}.yaml", f"examples/setups/{name}.yaml"
        opened = open_setup(setup)
        present = Present(opened.name, opened.setup, opened.person.client)
        alone = timed(partial(refit, read_person(read_client(client)), present), 3)
        whole = cold("-m", "chairwright.cli.main", "refit", client, "--from", setup, times=3)
        rows.append([name.upper(), f"{alone:.2f}", f"{whole:.2f}", f"{alone / start:.0f}"])
    return Table(["re-fit", "trade-off, s", "whole command, s", "trade-off in starts"], rows)
