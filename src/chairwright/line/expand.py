"""From the line file as written to the line that the engineering uses, with all its rules."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from chairwright.line import schema
from chairwright.line.choices import NONE
from chairwright.line.model import Choice, FixedPart, FootPlate, Line, Rule
from chairwright.reading import YamlSource


def build_line(written: schema.WrittenLine, choices: dict[str, Choice], source: YamlSource) -> Line:
    """Put a checked line file and its choices together.

    Parameters
    ----------
    written : WrittenLine
    choices : dict of str to Choice
        As `options.expand_choices` makes them.
    source : YamlSource
        The file, for each rule's ``file:line``.

    Returns
    -------
    Line
    """
    housings = written.caster_housings
    return Line(
        name=written.name,
        title=written.title,
        maker=written.maker,
        version=written.version,
        choices=choices,
        rules=tuple(_rules(written, choices, source)),
        fixed_parts=tuple(_fixed_parts(written)),
        foot_plate=_foot_plate(written.foot_supports),
        caster_outset_mm=housings.outset_mm,
        crown_gap_mm=housings.crown_gap_mm,
        folded_seat_mm=written.folding.folded_seat_mm,
        push_handle_behind_mm=written.push_handles.behind_mm,
        push_handle_above_mm=written.push_handles.above_mm,
        path=str(source.path),
    )


def _foot_plate(written: schema.FootSupports) -> FootPlate:
    return FootPlate(
        length_mm=written.plate_length_mm,
        behind_tube_mm=written.plate_behind_tube_mm,
        thickness_mm=written.plate_thickness_mm,
        outer_inset_mm=written.plate_outer_inset_mm,
        width_mm=written.plate_width_mm,
    )


def _fixed_parts(line: schema.WrittenLine) -> Iterator[FixedPart]:
    for part in line.fixed_parts:
        yield FixedPart(part.code, part.name, part.mass_kg, part.at_mm[0], part.at_mm[1], "frame")


def _rules(
    line: schema.WrittenLine, choices: dict[str, Choice], source: YamlSource
) -> Iterator[Rule]:
    for at, rule in enumerate(line.rules):
        when, need = _matched(rule.when, choices), _matched(rule.need, choices)
        yield Rule(when, need, rule.because, source.line_of(("rules", at)))
    yield from _foot_support_rules(choices)
    yield from _fork_rules(choices, line.caster_housings.crown_gap_mm)
    yield from _depth_rules(choices)


def _matched(
    written: dict[str, list[str]], choices: dict[str, Choice]
) -> dict[str, frozenset[str]]:
    return {name: matching_codes(choices[name], codes) for name, codes in written.items()}


def matching_codes(choice: Choice, written: Iterable[str]) -> frozenset[str]:
    """Option codes meant by written ones; ``FM`` means every ``FM-...``.

    Parameters
    ----------
    choice : Choice
    written : iterable of str

    Returns
    -------
    frozenset of str
    """
    wanted = set(written)
    return frozenset(
        code for code in choice.codes if code in wanted or code.partition("-")[0] in wanted
    )


def _foot_support_rules(choices: dict[str, Choice]) -> Iterator[Rule]:
    because = "hanger, hanger length and footplate are fitted together or not at all"
    where = choices["foot_supports"].options[0].where
    absent = frozenset({NONE})
    for name in ("hanger", "leg_length"):
        present = frozenset(choices[name].codes) - absent
        sides = frozenset(choices["foot_supports"].codes) - absent
        yield Rule({"foot_supports": absent}, {name: absent}, because, where)
        yield Rule({"foot_supports": sides}, {name: present}, because, where)


def _fork_rules(choices: dict[str, Choice], gap_mm: float) -> Iterator[Rule]:
    because = f"the caster must fit the fork and stay {gap_mm:g} mm clear of its crown"
    forks = choices["fork"].options
    for caster in choices["caster"].options:
        radius = caster.numbers["radius_mm"]
        fits = frozenset(
            fork.code
            for fork in forks
            if radius <= fork.numbers["largest_radius_mm"]
            and radius + gap_mm <= fork.numbers["drop_mm"]
        )
        yield Rule({"caster": frozenset({caster.code})}, {"fork": fits}, because, caster.where)


def _depth_rules(choices: dict[str, Choice]) -> Iterator[Rule]:
    because = "each side frame is made for a range of seat depths"
    depths = choices["seat_depth"].options
    for frame in choices["side_frame"].options:
        low, high = frame.numbers["depth_from_mm"], frame.numbers["depth_to_mm"]
        fits = frozenset(d.code for d in depths if low <= d.numbers["depth_mm"] <= high)
        need = {"seat_depth": fits}
        yield Rule({"side_frame": frozenset({frame.code})}, need, because, frame.where)
