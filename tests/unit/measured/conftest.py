"""A described set-up to change."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.cli.opened import open_setup
from chairwright.fitting.described import Described

SETUP = Path(__file__).parents[3] / "examples" / "setups" / "avg-001.yaml"


@pytest.fixture(scope="session")
def base() -> Described:
    return open_setup(SETUP).setup
