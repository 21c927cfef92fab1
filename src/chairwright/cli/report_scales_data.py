"""What scales under the wheels say, as plain data for JSON."""

from __future__ import annotations

from chairwright.cli.report_json import number
from chairwright.papers.scales_words import Onto, Weighed, beyond, notes

Data = dict[str, object]


def scales_data(weighed: Weighed, onto: Onto | None) -> Data:
    """The whole report as plain data.

    Parameters
    ----------
    weighed : Weighed
    onto : Onto or None

    Returns
    -------
    dict
    """
    found, shift = weighed.found, weighed.shift
    data: Data = {
        "client": weighed.file.client,
        "dated": weighed.file.dated,
        "method": weighed.file.method,
        "measured": {
            name: {
                "value": value,
                "half_width": found.half_width(name),
                "variance_shares": {k: v for k, v in found.shares(name).items() if v > 0.0},
                **_estimate_data(weighed, name),
            }
            for name, value in found.values.items()
        },
        "notes": notes(weighed),
    }
    if shift is not None:
        names = ("mass_kg", "ahead_mm", "left_mm", "up_mm")
        data["occupant_shift"] = {name: getattr(shift, name) for name in names}
    if onto is not None:
        data["onto"] = _onto_data(onto)
    return data


def _estimate_data(weighed: Weighed, name: str) -> Data:
    setup = weighed.setup
    if setup is None or name not in setup.figures:
        return {}
    return {
        "estimate": number(setup.figures[name]),
        "estimate_half_width": setup.spreads.get(name),
        "beyond_the_estimate": beyond(weighed, setup, name),
    }


def _onto_data(onto: Onto) -> Data:
    return {
        "setup": onto.name,
        "figures": {
            name: {
                "value": number(value),
                "half_width": onto.there.half_widths.get(name),
                "estimate": number(onto.setup.figures[name]),
                "estimate_half_width": onto.setup.spreads.get(name),
            }
            for name, value in onto.there.figures.items()
        },
    }
