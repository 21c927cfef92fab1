"""Reading JSON from outside: one bundle of HL7 FHIR, with a place in the file for every refusal."""

from __future__ import annotations

import json
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Any, NoReturn

from chairwright.errors import InputError, Problem
from chairwright.reading import read_text_file

LIMIT_BYTES = 5_000_000
MOST_DIGITS = 40


@dataclass(frozen=True)
class Found:
    """One resource of a bundle.

    Parameters
    ----------
    where : str
        Such as ``bundle.json: entry[2].resource``.
    data : dict
    url : str
        Its ``fullUrl``; empty when it has none.
    """

    where: str
    data: dict[str, Any]
    url: str = ""


def read_bundle(path: Path | str) -> tuple[Found, ...]:
    """Read every resource of a bundle.

    Parameters
    ----------
    path : Path or str

    Returns
    -------
    tuple of Found
        In the order of the file; entries without a resource are left out.

    Raises
    ------
    InputError
        When the file cannot be read, is larger than 5 MB, is no JSON, or no bundle.
    """
    data = _json(path)
    kind = data.get("resourceType") if isinstance(data, dict) else None
    if kind != "Bundle":
        got = f"the resourceType {kind!r}" if isinstance(kind, str) else "something else"
        remedy = "Ask the other program for a Bundle of HL7 FHIR R4 in JSON."
        _refuse(f"{path}: resourceType", "the file must hold a Bundle", got[:80], remedy)
    entries = data.get("entry", [])
    if not isinstance(entries, list):
        _refuse(f"{path}: entry", "it must be a list", type(entries).__name__, "Export it again.")
    return tuple(_resources(path, entries))


def _resources(path: Path | str, entries: list[Any]) -> Iterator[Found]:
    for at, entry in enumerate(entries):
        where = f"{path}: entry[{at}]"
        if not isinstance(entry, dict):
            _refuse(where, "an entry must be an object", type(entry).__name__, "Export it again.")
        resource = entry.get("resource")
        if resource is None:
            continue
        if not isinstance(resource, dict) or not isinstance(resource.get("resourceType"), str):
            must = "a resource must be an object with a resourceType"
            _refuse(f"{where}.resource", must, type(resource).__name__, "Export it again.")
        url = entry.get("fullUrl")
        yield Found(f"{where}.resource", resource, url if isinstance(url, str) else "")


def _json(path: Path | str) -> Any:
    text = read_text_file(path, LIMIT_BYTES)
    remedy = "Ask the other program for a Bundle of HL7 FHIR R4 in JSON, not in XML."
    try:
        return json.loads(
            text, parse_float=_number, parse_int=_number, parse_constant=_number,
            object_pairs_hook=_once,
        )  # fmt: skip
    except json.JSONDecodeError as error:
        where = f"{path}:{error.lineno}"
        got = f"{error.msg.lower()} at column {error.colno}"
        _refuse(where, "the file must be JSON", got, remedy)
    except RecursionError:
        _refuse(str(path), "the file must be JSON of a few levels", "thousands of levels", remedy)
    except ValueError as error:
        _refuse(str(path), "the file must be JSON", str(error), remedy)


def _number(text: str) -> Decimal:
    if text.lstrip("-")[:1].isdigit() and len(text) <= MOST_DIGITS:
        with suppress(InvalidOperation):
            return Decimal(text)
    message = f"the number {text[:MOST_DIGITS]}"
    raise ValueError(message)


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        names = [name for name, _ in pairs]
        twice = next(name for name in names if names.count(name) > 1)
        message = f"{twice[:40]!r} twice in one object"
        raise ValueError(message)
    return found


def _refuse(where: str, must: str, got: str, remedy: str) -> NoReturn:
    raise InputError(Problem(where, must, got, remedy))
