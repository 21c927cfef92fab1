"""An own target on a figure of a place: searched, judged with its spread, and shown."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.figures.registry import FIGURES
from chairwright.files.client import read_client
from chairwright.fitting.fit import fit_client
from chairwright.fitting.ledger import ledger
from chairwright.fitting.person import read_person
from chairwright.line.load import load_line
from chairwright.person.client import OwnTarget

EXAMPLE = Path(__file__).parents[3] / "examples" / "clients" / "avg-001.yaml"
RAMP = "rim_force_n@up_4.76_concrete"


def target(figure: str, high: float) -> OwnTarget:
    return OwnTarget(figure, None, high, must=True, weight=1.0, reason="the ramp at home")


def test_a_ramp_is_searched_judged_and_shown() -> None:
    client = read_client(EXAMPLE)
    client = replace(client, own_targets=(*client.own_targets, target(RAMP, 52.0)))
    person = read_person(client)
    assert person.targets[-1].figure == RAMP
    fit = fit_client(client, load_line("everyday"), objectives=None)
    assert fit.best is not None and fit.setup is not None
    (judged,) = [each for each in fit.setup.judged if each.target.figure == RAMP]
    assert judged.value == fit.setup.figures[RAMP] <= 52.0
    assert 0 < judged.spread < 5
    assert list(fit.setup.figures) == [*FIGURES, RAMP]
    assert ledger(fit.setup)[-1].figure is FIGURES[RAMP]


def test_a_place_that_no_figure_knows_is_refused() -> None:
    client = read_client(EXAMPLE)
    wrong = replace(client, own_targets=(target("rim_force_n@up_4.76_ice", 52.0),))
    with pytest.raises(InputError):
        read_person(wrong)
