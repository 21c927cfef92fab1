"""Show a client's measures with what was estimated, what looks doubtful, and the segments."""

from __future__ import annotations

import argparse
import json
from collections.abc import Sequence
from dataclasses import asdict

from chairwright.cli.table import text_table
from chairwright.files.client import read_client
from chairwright.person.body import Body, build_body
from chairwright.person.client import Client, Measure
from chairwright.person.estimates import MeasureSet, complete
from chairwright.person.measures import CATALOGUE
from chairwright.person.plausibility import Review, review
from chairwright.units import inches_text

JsonRow = dict[str, object]
_CAUTION = (
    "Estimates come from soldiers (ANSUR II), not from wheelchair users: "
    "measure what the set-up hangs on."
)


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright person``."""
    parser.add_argument("client", metavar="CLIENT", help="client file (YAML)")
    parser.add_argument(
        "--table",
        choices=("de_leva", "winter"),
        default="de_leva",
        help="published table of body segments (default: de_leva)",
    )
    parser.add_argument("--json", action="store_true", help="print JSON instead of tables")


def run(args: argparse.Namespace) -> int:
    """Print one client's measures, plausibility and segments."""
    client = read_client(args.client)
    measures = complete(client)
    body = build_body(client, measures, args.table)
    verdict = review(client)
    if args.json:
        print(json.dumps(_payload(client, measures, body, verdict), indent=2, allow_nan=False))
    else:
        print("\n\n".join(_sections(client, measures, body, verdict)))
    return 0


def _sections(client: Client, measures: MeasureSet, body: Body, verdict: Review) -> list[str]:
    bases = list(dict.fromkeys(m.basis for m in measures if m.estimated))
    notes = [f"estimate {at}: {basis}" for at, basis in enumerate(bases, 1)]
    return [
        f"{client.reference}: {client.sex}, propulsion by {client.propulsion.replace('_', ' ')}",
        _measure_table(measures, bases),
        "\n".join([*notes, _CAUTION]),
        _plausibility(verdict),
        _segment_table(body),
    ]


def _measure_table(measures: MeasureSet, bases: Sequence[str]) -> str:
    headers = ["measure", "side", "as typed", "mm or kg", "inches", "+/-", "known by"]
    rows = [_measure_row(measure, bases) for measure in measures]
    return text_table(headers, rows, "llrrrrl")


def _measure_row(measure: Measure, bases: Sequence[str]) -> list[str]:
    length = measure.quantity.dimension == "length"
    known = f"estimate {bases.index(measure.basis) + 1}" if measure.estimated else "measured"
    return [
        CATALOGUE[measure.name].label,
        "" if measure.side == "middle" else measure.side,
        "" if measure.estimated else measure.quantity.typed,
        f"{measure.value:.0f}" if length else f"{measure.value:.1f}",
        inches_text(measure.value) if length else "",
        f"{measure.tolerance:.0f}" if length else f"{measure.tolerance:.1f}",
        known,
    ]


def _plausibility(verdict: Review) -> str:
    head = (
        f"Plausibility: distance {verdict.distance:.1f} from the population's centre over "
        f"{verdict.degrees_of_freedom} measures; one person in a thousand exceeds "
        f"{verdict.limit:.1f}."
    )
    remarks = [f"- {_at(remark.where)}{remark.text}" for remark in verdict.remarks]
    return "\n".join([head, *(remarks or ["Nothing looks doubtful."])])


def _at(where: str) -> str:
    return f"{where}: " if where else ""


def _segment_table(body: Body) -> str:
    headers = ["segment", "mass kg", "length mm", "centre of mass mm"]
    rows = [
        [each.name, f"{each.mass_kg:.2f}", f"{each.length_mm:.0f}", f"{each.com_mm:.0f}"]
        for each in body.segments
    ]
    rows.append(["whole body", f"{body.mass_kg:.2f}", "", ""])
    table = text_table(headers, rows, "lrrr")
    return f"{table}\nCentre of mass: from the upper end; of trunk and head from the lower end."


def _payload(client: Client, measures: MeasureSet, body: Body, verdict: Review) -> JsonRow:
    return {
        "client": {
            "reference": client.reference,
            "sex": client.sex,
            "propulsion": client.propulsion,
            "amputations": [asdict(amputation) for amputation in client.amputations],
        },
        "measures": [_measure_json(measure) for measure in measures],
        "plausibility": asdict(verdict),
        "segments": {
            "table": body.table,
            "mass_kg": body.mass_kg,
            "rows": [asdict(segment) | {"com_mm": segment.com_mm} for segment in body.segments],
        },
    }


def _measure_json(measure: Measure) -> JsonRow:
    return {
        "name": measure.name,
        "side": measure.side,
        "value": measure.value,
        "unit": measure.quantity.unit,
        "typed": "" if measure.estimated else measure.quantity.typed,
        "tolerance": measure.tolerance,
        "estimated": measure.estimated,
        "basis": measure.basis,
        "where": measure.where,
    }
