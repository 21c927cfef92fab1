"""What a line file can get wrong beyond its form: codes, holes, ranges, parts that fit nothing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from chairwright.errors import Problem
from chairwright.line import parts, schema
from chairwright.line.choices import CHOICES
from chairwright.line.codes import codes_in, matching_codes
from chairwright.line.fastener_checks import fastener_mistakes
from chairwright.line.later_checks import later_mistakes
from chairwright.line.made_to_order import LETTERS
from chairwright.line.model import Choice, Line, Rule
from chairwright.line.reachable import Deduction, blockers
from chairwright.reading import YamlSource
from chairwright.validation import place, shown, suggest
from chairwright.yaml_events import KeyPath

HOLED = {"forks": "holes_mm", "anti_tips": "holes_mm", "axle_plates": "rows_mm"}


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
        *_closed_holes(line.axle_plates, source),
        *_depth_ranges(line, source),
        *_upside_down(line, source),
        *_one_of_two(line, source),
        *_unknown_in_rules(line, choices, source),
        *fastener_mistakes(line.fasteners, choices, source),
        *later_mistakes(line.later, source),
    ]


def _double_codes(
    choices: dict[str, Choice], line: schema.WrittenLine, source: YamlSource
) -> Iterator[Problem]:
    pairs = {name: [(o.code, o.where) for o in each.options] for name, each in choices.items()}
    for name, key in (("fixed part", "fixed_parts"), ("extra", "extras")):
        codes = [part.code for part in getattr(line, key)]
        pairs[name] = [(code, source.line_of((key, at))) for at, code in enumerate(codes)]
    for name, items in pairs.items():
        first: dict[str, str] = {}
        again: dict[tuple[str, str], list[str]] = {}
        for code, where in items:
            if first.setdefault(code, where) is not where:
                again.setdefault((where, first[code]), []).append(code)
        for (where, earlier), codes in again.items():
            yield _double(where, f"{name} code {_few(codes)}", earlier)


def _few(codes: Sequence[str]) -> str:
    return codes[0] if len(codes) == 1 else f"{codes[0]} and {len(codes) - 1} more"


def _double(where: str, what: str, first: str) -> Problem:
    return Problem(
        where,
        "a code must stand once within its choice",
        f"{what} a second time (first at line {first.rpartition(':')[2]})",
        "Give one of the two another code or value, or take it out.",
    )


def _double_holes(source: YamlSource) -> Iterator[Problem]:
    tables: list[KeyPath] = [("caster_housings", "rows_mm")]
    for key, holes in HOLED.items():
        tables += [(key, at, holes) for at in range(len(source.data.get(key, ())))]
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


def _closed_holes(plates: Sequence[parts.AxlePlate], source: YamlSource) -> Iterator[Problem]:
    for number, plate in enumerate(plates):
        holes = [f"{column}{row}" for column in plate.columns_mm for row in plate.rows_mm]
        for at, code in enumerate(plate.closed):
            if code not in holes:
                where = place(source, ("axle_plates", number, "closed", at))
                must = "a closed hole must be one of the plate's: its column and its row"
                yield Problem(where, must, shown(code), suggest(code, holes))
        if not set(holes) - set(plate.closed):
            where = place(source, ("axle_plates", number, "closed"))
            remedy = "Take the open ones out of the list, or take the plate out."
            yield Problem(where, "one hole of a plate must be open", "every hole closed", remedy)


def _upside_down(line: schema.WrittenLine, source: YamlSource) -> Iterator[Problem]:
    ranges: list[tuple[KeyPath, float, float]] = [
        (("custom_sizes", name), custom.from_mm, custom.to_mm)
        for name in LETTERS
        if (custom := getattr(line.custom_sizes, name)) is not None
    ]
    stepped: list[tuple[KeyPath, object]] = [
        (("leg_lengths", "lengths_mm"), line.leg_lengths.lengths_mm),
        *(
            (("arm_supports", at, "pad_heights_mm"), arm.pad_heights_mm)
            for at, arm in enumerate(line.arm_supports)
        ),
    ]
    ranges += [
        (at, each.from_mm, each.to_mm) for at, each in stepped if isinstance(each, parts.Steps)
    ]
    for at, low, high in ranges:
        if low > high:
            must = "from_mm must not exceed to_mm"
            yield Problem(place(source, at), must, f"{low:g} and {high:g} mm", SWAP)


SWAP = "Swap the two, or correct one."


def _one_of_two(line: schema.WrittenLine, source: YamlSource) -> Iterator[Problem]:
    """Parts that are written in one of two ways: exactly one of them must be there."""
    pairs = {
        "back_supports": ("behind_post_mm", "settings"),
        "hangers": ("angle_deg", "angles_deg"),
    }
    for key, (one, other) in pairs.items():
        for at, item in enumerate(getattr(line, key)):
            given = [name for name in (one, other) if getattr(item, name) is not None]
            if len(given) != 1:
                must = f"{item.code} must have either {one} or {other}"
                got = "both" if given else "neither"
                remedy = f"Keep {one} for one place, {other} for several."
                yield Problem(place(source, (key, at)), must, got, remedy)


def _depth_ranges(line: schema.WrittenLine, source: YamlSource) -> Iterator[Problem]:
    for at, frame in enumerate(line.side_frames):
        if frame.depth_from_mm > frame.depth_to_mm:
            yield Problem(
                place(source, ("side_frames", at, "depth_from_mm")),
                f"side frame {frame.code}: depth_from_mm must not exceed depth_to_mm",
                f"{frame.depth_from_mm:g} and {frame.depth_to_mm:g} mm",
                SWAP,
            )


def _unknown_in_rules(
    line: schema.WrittenLine, choices: dict[str, Choice], source: YamlSource
) -> Iterator[Problem]:
    for at, rule in enumerate(line.rules):
        for side, written in (("when", rule.when), ("need", rule.need)):
            for name, codes in written.items():
                yield from _unknown(("rules", at, side, name), name, codes, choices, source)


def _unknown(
    at: KeyPath,
    name: str,
    meant: Sequence[str] | schema.SizeRange,
    choices: dict[str, Choice],
    source: YamlSource,
) -> Iterator[Problem]:
    if name not in choices:
        must = "a rule must speak about a choice"
        yield Problem(place(source, at), must, shown(name), suggest(name, CHOICES))
        return
    if isinstance(meant, schema.SizeRange):
        yield from _empty_range(at, choices[name], meant, source)
        return
    for number, code in enumerate(meant):
        if not matching_codes(choices[name], [code]):
            named = [option.part for option in choices[name].options if option.part]
            known = list(dict.fromkeys([*named, *choices[name].codes]))
            must = f"a rule must name codes of {name}"
            yield Problem(place(source, (*at, number)), must, shown(code), suggest(code, known))


def _empty_range(
    at: KeyPath, choice: Choice, meant: schema.SizeRange, source: YamlSource
) -> Iterator[Problem]:
    size = CHOICES[choice.name].size
    low, high = meant.from_, meant.to
    if not size:
        must = f"{choice.name} has no size of its own: a rule must name its codes"
        yield Problem(place(source, at), must, "a range", "Write a list of codes.")
    elif low is None and high is None:
        must = "a range must have an end: from, to or both"
        yield Problem(place(source, at), must, "neither", "Add one, or take the range out.")
    elif not codes_in(choice, low, high):
        ends = f"from {_end(low)} to {_end(high)}"
        must = f"a rule's range of {choice.name} ({size}) must hold at least one option"
        remedy = "Correct the ends: they are in mm or degrees, whatever the maker's units."
        yield Problem(place(source, at), must, ends, remedy)


def _end(size: float | None) -> str:
    return "open" if size is None else f"{size:g}"


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
    found: dict[str, set[str]] = {}
    for option in choice.options:
        if option.kind != "made to order":
            found.setdefault(option.part or option.code, set()).add(option.code)
    return {part: frozenset(codes) for part, codes in found.items()}


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
