"""The example clients on the bench."""

from __future__ import annotations

from pathlib import Path

from chairwright.files.setup import read_setup
from chairwright_desk.bench.bridge import Bench, State, open_bench, state_of

EXAMPLES = Path(__file__).parents[3] / "examples"


def client_text(name: str) -> str:
    """What the client file of an example holds."""
    return (EXAMPLES / "clients" / f"{name}.yaml").read_text()


def places_text(name: str) -> str:
    """What the places file of an example holds."""
    return (EXAMPLES / "places" / f"{name}.yaml").read_text()


def bench_of(name: str, *, places: bool = False) -> Bench:
    """An example client on the line of the example's set-up."""
    line = read_setup(EXAMPLES / "setups" / f"{name}.yaml").line
    return open_bench(client_text(name), line, places_text(name) if places else "")


def opened(name: str, *, places: bool = False) -> State:
    """An example set-up."""
    codes = read_setup(EXAMPLES / "setups" / f"{name}.yaml").choices
    return state_of(bench_of(name, places=places), codes)
