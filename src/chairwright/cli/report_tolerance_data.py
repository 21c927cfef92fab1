"""How sure a set-up is, as one JSON document."""

from __future__ import annotations

from typing import Any

from chairwright.cli.opened import Opened
from chairwright.figures.registry import FIGURES
from chairwright.fitting.unsure import Unsure, unsure_musts
from chairwright.tolerance.bars import Bar, bars_of
from chairwright.tolerance.model import Input
from chairwright.tolerance.spread import Spread


def tolerance_data(opened: Opened, figure: str | None) -> dict[str, Any]:
    """Everything that ``chairwright tolerance`` says.

    Parameters
    ----------
    opened : Opened
    figure : str or None
        One figure alone; None for all.

    Returns
    -------
    dict
        ``client``, ``line``, ``inputs``, ``figures`` by name, ``on_nominal_values``.
    """
    tolerance = opened.setup.tolerance
    names = tolerance.figures if figure is None else [figure]
    return {
        "client": opened.person.client.reference,
        "line": opened.line.name,
        "coverage_factor": 2,
        "inputs": [_input(each) for each in tolerance.inputs],
        "figures": {
            name: {
                "value": opened.setup.figures[name],
                "unit": FIGURES[name].unit,
                **_spread(tolerance.figures[name], tolerance.inputs),
            }
            for name in names
        },
        "on_nominal_values": [_unsure(item) for item in unsure_musts(opened.setup)],
    }


def _input(each: Input) -> dict[str, Any]:
    return {
        "key": each.key,
        "label": each.label,
        "kind": each.kind,
        "half_width": each.half,
        "unit": each.unit,
        "shape": each.shape,
        "standard_uncertainty": each.standard,
        "source": each.source,
    }


def _spread(spread: Spread, inputs: tuple[Input, ...]) -> dict[str, Any]:
    return {
        "half_width": spread.half,
        "method": "first order" if spread.linear else "Monte Carlo",
        "first_order_half_width": spread.first_order,
        "bars": [_bar(bar) for bar in bars_of(spread, inputs)],
    }


def _bar(bar: Bar) -> dict[str, Any]:
    return {
        "key": bar.what.key,
        "label": bar.what.label,
        "less": bar.less,
        "more": bar.more,
        "share": bar.share,
    }


def _unsure(item: Unsure) -> dict[str, Any]:
    target = item.judged.target
    return {
        "figure": target.figure,
        "low": target.low,
        "high": target.high,
        "place": target.place,
        "value": item.judged.value,
        "margin": item.judged.verdict.margin,
        "margin_half_width": item.spread.half,
        "method": "first order" if item.spread.linear else "Monte Carlo",
        "measure_again": item.again,
        "bars": [_bar(bar) for bar in item.bars],
    }
