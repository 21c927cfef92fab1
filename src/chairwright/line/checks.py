"""What a line file can get wrong beyond its form: codes, holes, ranges, parts that fit nothing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from chairwright.errors import Problem
from chairwright.line import schema
from chairwright.line.choices import CHOICES
from chairwright.line.expand import matching_codes
from chairwright.line.model import Choice, Line, Rule
from chairwright.line.reachable import Deduction, blockers
from chairwright.reading import YamlSource
from chairwright.validation import place, shown, suggest
from chairwright.yaml_events import KeyPath

HOLED = ("forks", "anti_tips")


def mistakes(
    line: schema.WrittenLine, choices: dict[str, Choice], source: YamlSource
) -> list[Problem]:
    """Codes that stand twice, holes and ranges that cannot be, rules about unknown things.

    Parameters
    ----------
    line : WrittenLine
    choices : dict of str to Choice
    source : YamlSource

    Returns
    -------
    list of Problem
        In the order of the checks; empty when the rules can be built.
    """
    return [
        *_double_codes(choices, line, source),
        *_double_holes(source),
        *_closed_holes(line.axle_plate, source),
        *_no_hole_left(choices, source),
        *_depth_ranges(line, source),
        *_unknown_in_rules(line, choices, source),
    ]


def _double_codes(
    choices: dict[str, Choice], line: schema.WrittenLine, source: YamlSource
) -> Iterator[Problem]:
    pairs = {name: [(o.code, o.where) for o in each.options] for name, each in choices.items()}
    pairs["fixed part"] = [
        (part.code, source.line_of(("fixed_parts", at))) for at, part in enumerate(line.fixed_parts)
    ]
    for name, items in pairs.items():
        first: dict[str, str] = {}
        told: set[tuple[str, str]] = set()
        for code, where in items:
            part = code.partition("-")[0]
            if first.setdefault(code, where) is not where and (part, where) not in told:
                told.add((part, where))
                yield _double(where, f"{name} code {code}", first[code])


def _double(where: str, what: str, first: str) -> Problem:
    return Problem(
        where,
        "a code must stand once within its choice",
        f"{what} a second time (first at line {first.rpartition(':')[2]})",
        "Give one of the two another code or value, or take it out.",
    )


def _double_holes(source: YamlSource) -> Iterator[Problem]:
    tables: list[KeyPath] = [("axle_plate", "rows_mm"), ("caster_housings", "rows_mm")]
    for key in HOLED:
        tables += [(key, at, "holes_mm") for at in range(len(source.data[key]))]
    for at in tables:
        first: dict[int, KeyPath] = {}
        for hole in _inside(source.data, at):
            here = (*at, hole)
            number = int(float(hole))
            if first.setdefault(number, here) != here:
                line = source.line_of(first[number]).rpartition(":")[2]
                got = f"{shown(hole)} a second time (first on line {line})"
                remedy = "Keep one of the two."
                yield Problem(place(source, here), "a hole must stand once", got, remedy)


def _inside(data: object, at: KeyPath) -> Iterable[int | str]:
    for key in at:
        data = data[key]  # type: ignore[index]
    return data if isinstance(data, Mapping) else ()


def _closed_holes(plate: schema.AxlePlate, source: YamlSource) -> Iterator[Problem]:
    holes = [f"{column}{row}" for column in plate.columns_mm for row in plate.rows_mm]
    for at, code in enumerate(plate.closed):
        if code not in holes:
            where = place(source, ("axle_plate", "closed", at))
            must = "a closed hole must be one of the plate's: its column and its row"
            yield Problem(where, must, shown(code), suggest(code, holes))


def _no_hole_left(choices: dict[str, Choice], source: YamlSource) -> Iterator[Problem]:
    if not choices["axle_hole"].options:
        where = place(source, ("axle_plate", "closed"))
        remedy = "Take the open ones out of the list."
        yield Problem(where, "one axle hole at least must be open", "every hole closed", remedy)


def _depth_ranges(line: schema.WrittenLine, source: YamlSource) -> Iterator[Problem]:
    for at, frame in enumerate(line.side_frames):
        if frame.depth_from_mm > frame.depth_to_mm:
            yield Problem(
                place(source, ("side_frames", at, "depth_from_mm")),
                f"side frame {frame.code}: depth_from_mm must not exceed depth_to_mm",
                f"{frame.depth_from_mm:g} and {frame.depth_to_mm:g} mm",
                "Swap the two, or correct one.",
            )


def _unknown_in_rules(
    line: schema.WrittenLine, choices: dict[str, Choice], source: YamlSource
) -> Iterator[Problem]:
    for at, rule in enumerate(line.rules):
        for side, written in (("when", rule.when), ("need", rule.need)):
            for name, codes in written.items():
                yield from _unknown(("rules", at, side, name), name, codes, choices, source)


def _unknown(
    at: KeyPath, name: str, codes: Sequence[str], choices: dict[str, Choice], source: YamlSource
) -> Iterator[Problem]:
    if name not in choices:
        must = "a rule must speak about a choice"
        yield Problem(place(source, at), must, shown(name), suggest(name, CHOICES))
        return
    for number, code in enumerate(codes):
        if not matching_codes(choices[name], [code]):
            parts = dict.fromkeys(known.partition("-")[0] for known in choices[name].codes)
            known = [*parts, *(each for each in choices[name].codes if each not in parts)]
            must = f"a rule must name codes of {name}"
            yield Problem(place(source, (*at, number)), must, shown(code), suggest(code, known))


def unreachable(line: Line) -> list[Problem]:
    """Rules that leave nothing, or parts that no complete set-up can have.

    A part with several holes or pad heights counts as one: it must be possible with one of them.

    Parameters
    ----------
    line : Line

    Returns
    -------
    list of Problem
        One for the rules when they allow nothing at all; otherwise one for each such part.
    """
    deduction = Deduction(line)
    seen = deduction.example({})
    if seen is None:
        return [_nothing_allowed(line, blockers(line, {}))]
    found = []
    for name, choice in line.choices.items():
        for part, codes in _parts(choice).items():
            if codes & seen[name]:
                continue
            example = deduction.example({name: codes})
            if example is None:
                where = next(o.where for o in choice.options if o.code in codes)
                found.append(_cannot_be(where, name, part, blockers(line, {name: codes})))
            else:
                seen = {each: seen[each] | example[each] for each in seen}
    return found


def _parts(choice: Choice) -> dict[str, frozenset[str]]:
    parts: dict[str, set[str]] = {}
    for code in choice.codes:
        parts.setdefault(code.partition("-")[0], set()).add(code)
    return {part: frozenset(codes) for part, codes in parts.items()}


def _nothing_allowed(line: Line, rules: Sequence[Rule]) -> Problem:
    where = rules[0].where if rules else line.path
    must = "the rules must allow at least one set-up"
    return Problem(where, must, f"none: {_reasons(rules)}", "Loosen one of them.")


def _cannot_be(where: str, name: str, part: str, rules: Sequence[Rule]) -> Problem:
    must = f"{name} {part} must be possible in at least one set-up"
    remedy = f"Correct its sizes or the rule, or take {part} out."
    return Problem(where, must, f"none: {_reasons(rules)}", remedy)


def _reasons(rules: Sequence[Rule]) -> str:
    return "; ".join(dict.fromkeys(_reason(rule) for rule in rules))


def _reason(rule: Rule) -> str:
    return f"{rule.because} (line {rule.where.rpartition(':')[2]})"
