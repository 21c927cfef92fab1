"""A seat-height chart as rows for a spreadsheet and as plain data: every column of axle holes."""

from __future__ import annotations

import csv
import io
import itertools
import math
from collections.abc import Iterator

import numpy as np

from chairwright.fitting.heights_chart import SHOWN, STANDS, HeightsChart
from chairwright.fitting.heights_fixed import SQUARED, VARIED
from chairwright.units import MM_PER_INCH

Data = dict[str, object]
LENGTHS = tuple(name for name in SHOWN if name.endswith("_mm"))
ANGLES = tuple(name for name in SHOWN if name.endswith("_deg"))
INCHES = tuple(f"{name.removesuffix('_mm')}_in" for name in LENGTHS)
PLACE = ("rear_wheel", "axle_column", "axle_row", "axle_hole", "caster", "fork")
STATE = ("stands", "reason", SQUARED, "stem_setting_deg")


def chart_csv(chart: HeightsChart) -> str:
    """One row for each rear wheel, axle hole, caster and fork hole, standing or not.

    Parameters
    ----------
    chart : HeightsChart

    Returns
    -------
    str
        With a head line; millimetres to 0.1, inches and degrees to 0.01; empty cells and a
        reason where no chair stands.
    """
    fixed = {name: option.code for name, option in chart.fixed.items()}
    lead = (chart.line.name, chart.line.version, *fixed.values())
    figures = zip(*_printed_columns(chart), strict=True)
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(("line", "version", *fixed, *PLACE, *STATE, *LENGTHS, *INCHES, *ANGLES))
    writer.writerows(
        (*lead, *place, *state, *values)
        for place, state, values in zip(_places(chart), _states(chart), figures, strict=True)
    )
    return out.getvalue()


def _places(chart: HeightsChart) -> Iterator[tuple[str, ...]]:
    """Codes of each combination, in the order of the chart's arrays."""
    codes = {
        name: [chart.line.choices[name].options[at].code for at in chart.options[name]]
        for name in VARIED
    }
    labels = {
        at: (column.label, number) for column in chart.columns for number, at in column.rows.items()
    }
    holes = [
        (*labels[at], code)
        for at, code in zip(chart.options["axle_hole"], codes["axle_hole"], strict=True)
    ]
    for wheel, hole, caster, fork in itertools.product(
        codes["rear_wheel"], holes, codes["caster"], codes["fork"]
    ):
        yield wheel, *hole, caster, fork


def _states(chart: HeightsChart) -> Iterator[tuple[str, str, str, str]]:
    options = chart.line.choices[SQUARED].options
    settings = [(option.code, f"{option.numbers['angle_deg']:g}") for option in options]
    for why, setting in zip(
        chart.why.ravel().tolist(), chart.setting.ravel().tolist(), strict=True
    ):
        if why == STANDS:
            yield "yes", "", *settings[setting]
        else:
            yield "no", chart.reasons[why], "", ""


def _printed_columns(chart: HeightsChart) -> Iterator[list[str]]:
    for name in LENGTHS:
        yield _printed(chart, name, 1.0, 1)
    for name in LENGTHS:
        yield _printed(chart, name, 1.0 / MM_PER_INCH, 2)
    for name in ANGLES:
        yield _printed(chart, name, 1.0, 2)


def _printed(chart: HeightsChart, name: str, scale: float, digits: int) -> list[str]:
    values = np.round(chart.figures[name].ravel() * scale, digits) + 0.0  # no minus nought
    return ["" if math.isnan(value) else f"{value:.{digits}f}" for value in values.tolist()]


def chart_data(chart: HeightsChart) -> Data:
    """The whole chart.

    Parameters
    ----------
    chart : HeightsChart

    Returns
    -------
    dict
        Keys ``line``, ``fixed``, ``axle_column``, ``axle_columns``, ``level_deg`` and
        ``combinations``; lengths in mm, angles in degrees, ``null`` where no chair stands.
    """
    line = chart.line
    return {
        "line": {"name": line.name, "title": line.title, "version": line.version},
        "fixed": {
            name: {"code": option.code, "name": option.name} for name, option in chart.fixed.items()
        },
        "axle_column": chart.column.label,
        "axle_columns": {
            column.label: {"x_mm": column.x_mm, "rows": list(column.rows)}
            for column in chart.columns
        },
        "level_deg": chart.level_deg,
        "combinations": list(_combinations(chart)),
    }


def _combinations(chart: HeightsChart) -> Iterator[Data]:
    figures = {name: chart.figures[name].ravel().tolist() for name in SHOWN}
    for row, (place, state) in enumerate(zip(_places(chart), _states(chart), strict=True)):
        stands = state[0] == "yes"
        yield {
            **dict(zip(PLACE, place, strict=True)),
            "stands": stands,
            "reason": state[1],
            SQUARED: state[2] or None,
            **{name: figures[name][row] if stands else None for name in SHOWN},
        }
