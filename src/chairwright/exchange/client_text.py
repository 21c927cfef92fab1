"""A client file with other values of single measures; every other line stays as it is."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from chairwright.errors import InputError, Problem
from chairwright.exchange.fhir_measures import Seen
from chairwright.files.client import LIMIT_BYTES
from chairwright.reading import YamlSource, read_text_file, read_yaml
from chairwright.yaml_events import EventReader, Key

MEASURES = "measures"


def with_measures(path: Path | str, seen: Sequence[Seen]) -> str:
    """The text of a client file with new values of some measures.

    Parameters
    ----------
    path : Path or str
        Client file; it is not changed.
    seen : sequence of Seen

    Returns
    -------
    str
        Comments, order and all other values as they were. A measure that the file does not have
        yet stands as the first one.

    Raises
    ------
    InputError
        When the file is written in another way than usual, so that a person has to change it.
    """
    source = read_yaml(path, LIMIT_BYTES)
    lines = read_text_file(path, LIMIT_BYTES).splitlines(keepends=True)
    if (MEASURES,) not in source.lines or not isinstance(source.data.get(MEASURES), dict):
        raise InputError(_by_hand(source, (MEASURES,), "there must be measures"))
    wanted = _wanted(source.data, seen)
    for each in reversed(seen):
        if each.measure not in source.data[MEASURES]:
            _insert(lines, source, each)
    for each in seen:
        if each.measure in source.data[MEASURES]:
            _replace(lines, source, each, shift=_inserted(source, seen))
    text = "".join(lines)
    if EventReader(str(path), text).build() != wanted:
        raise InputError(_by_hand(source, (MEASURES,), "measures must be written one a line"))
    return text


def _inserted(source: YamlSource, seen: Sequence[Seen]) -> int:
    return sum(each.measure not in source.data[MEASURES] for each in seen)


def _wanted(data: dict[Key, Any], seen: Sequence[Seen]) -> dict[Key, Any]:
    """What the changed file must say, worked out apart from its text."""
    measures = dict(data[MEASURES])
    for each in seen:
        old = measures.get(each.measure)
        typed = each.quantity.typed
        measures[each.measure] = {**old, "value": typed} if isinstance(old, dict) else typed
    return {**data, MEASURES: measures}


def _insert(lines: list[str], source: YamlSource, each: Seen) -> None:
    at = source.lines[MEASURES,]
    first = next(iter(source.data[MEASURES]), None)
    indent = "  "
    if first is not None:
        line = lines[source.lines[MEASURES, first] - 1]
        indent = line[: len(line) - len(line.lstrip())]
    end = "\r\n" if lines[at - 1].endswith("\r\n") else "\n"
    lines.insert(at, f"{indent}{each.measure}: {each.quantity.typed}{end}")


def _replace(lines: list[str], source: YamlSource, each: Seen, shift: int) -> None:
    inner = isinstance(source.data[MEASURES][each.measure], dict)
    key = (MEASURES, each.measure, "value") if inner else (MEASURES, each.measure)
    at = source.lines.get(key, source.lines[MEASURES, each.measure]) - 1 + shift
    old = re.escape(source.text_of(key).strip("\"'"))
    entry = re.compile(rf"(\b{key[-1]}[\"']?\s*:\s*)[\"']?{old}[\"']?(?=\s*(?:[,}}#]|$))")
    lines[at], found = entry.subn(rf"\g<1>{each.quantity.typed}", lines[at], count=1)
    if not found:
        raise InputError(_by_hand(source, key, "a value must stand on the line of its name"))


def _by_hand(source: YamlSource, key: tuple[str, ...], must: str) -> Problem:
    remedy = "Change the file by hand: the lines to paste are printed without --out."
    return Problem(source.line_of(key), must, "another way of writing", remedy)
