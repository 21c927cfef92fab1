"""A measured chair as plain data; a figure that the measures do not give is null."""

from __future__ import annotations

from chairwright.cli.report_json import Data, client_data, judged_data, number
from chairwright.files.measured import Reading
from chairwright.measured.gains import Change
from chairwright.measured.slips import Suspect
from chairwright.papers.measured_words import Judgement, gain_words


def measured_data(found: Judgement) -> Data:
    """The whole judgement.

    Parameters
    ----------
    found : Judgement

    Returns
    -------
    dict
        Keys ``client``, ``name``, ``measures``, ``check``, ``assumed``, ``not_measured``,
        ``figures``, ``spreads``, ``verdicts`` and ``proposed``.
    """
    setup, known = found.stands.setup, found.stands.known
    return {
        "client": client_data(found.person),
        "name": found.file.name,
        "measures": {name: _reading(each) for name, each in found.file.readings.items()},
        "check": {
            "closes": not found.doubt.open_closures,
            "suspects": [_suspect(each) for each in found.doubt.suspects],
            "open": [
                {"words": each.words, "measures": list(each.uses)}
                for each in found.doubt.open_closures
            ],
        },
        "assumed": {name: known.values[name] for name in known.assumed},
        "not_measured": list(known.unknown),
        "figures": {name: number(value) for name, value in setup.figures.items()},
        "spreads": setup.spreads,
        "verdicts": [judged_data(item) for item in setup.judged],
        "proposed": None if found.proposed is None else _proposed(found),
    }


def _reading(reading: Reading) -> Data:
    return {
        "value": reading.value,
        "unit": reading.quantity.unit,
        "typed": reading.quantity.typed,
        "tolerance": reading.tolerance,
        "where": reading.where,
    }


def _suspect(suspect: Suspect) -> Data:
    return {
        "measure": suspect.reading.name,
        "where": suspect.reading.where,
        "typed": suspect.reading.quantity.typed,
        "perhaps": suspect.slip.meant,
        "slip": suspect.slip.words,
    }


def _proposed(found: Judgement) -> Data | None:
    if found.proposed is None:
        return None
    return {
        "name": found.proposed.name,
        "choices": found.proposed.setup.codes,
        "changes": [_change(each) for each in found.changes],
    }


def _change(change: Change) -> Data:
    now, then = change.now, change.then
    return {
        "figure": now.figure.name,
        "kind": change.kind,
        "now": number(now.value),
        "then": number(then.value),
        "change": number(then.value - now.value),
        "beyond_spreads": change.sure,
        "verdict_now": now.word,
        "verdict_then": then.word,
        "words": gain_words(change) if now.word and then.word else None,
    }
