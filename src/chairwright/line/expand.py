"""From the line file as written to the line that the engineering uses, with all its rules."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from chairwright.line import schema
from chairwright.line.choices import NONE
from chairwright.line.codes import codes_in, matching_codes
from chairwright.line.model import Choice, Fastener, FixedPart, Later, Line, LineUpkeep, Rule
from chairwright.line.parts import Extra, Part
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
    housings, folding = written.caster_housings, written.folding
    return Line(
        name=written.name,
        title=written.title,
        maker=written.maker,
        version=written.version,
        choices=choices,
        rules=tuple(_rules(written, choices, source)),
        fixed_parts=tuple(_fixed_part(part) for part in written.fixed_parts),
        extras=tuple(_fixed_part(extra) for extra in written.extras),
        caster_outset_mm=housings.outset_mm,
        crown_gap_mm=housings.crown_gap_mm,
        folded_seat_mm=math.nan if folding is None else folding.folded_seat_mm,
        folds_to_width_mm=0.0 if folding is None else folding.folds_to_width_mm,
        currency=written.currency,
        base_price=written.base_price,
        build_days=written.build_days,
        typed_in=written.typed_in,
        path=str(source.path),
        fasteners=tuple(_fastener(each, choices[each.choice]) for each in written.fasteners),
        later=_later(written),
        upkeep=tuple(LineUpkeep(each.often, each.work, each.source) for each in written.upkeep),
    )


def _later(line: schema.WrittenLine) -> Later:
    """What the file says; without a word the side frames are the frame, and so is a rigid seat."""
    written = line.later
    if written is None:
        return Later(frozenset({"side_frame"} | (set() if line.folding else {"seat_width"})))
    return Later(
        frame=frozenset(written.frame),
        frame_price=written.frame_price,
        frame_minutes=math.nan if written.frame_minutes is None else written.frame_minutes,
        part_prices=dict(written.part_prices or {}),
        minutes=dict(written.minutes or {}),
        source=written.source,
    )


def _fastener(written: schema.WrittenFastener, choice: Choice) -> Fastener:
    codes = choice.codes if written.of is None else matching_codes(choice, written.of)
    return Fastener(
        choice=written.choice,
        codes=frozenset(codes) - {NONE},
        what=written.what,
        tool=written.tool,
        pieces=written.pieces,
        torque_nm=math.nan if written.torque_nm is None else written.torque_nm,
        note=written.note or "",
        source=written.source,
    )


def _fixed_part(part: Part | Extra) -> FixedPart:
    return FixedPart(
        code=part.code,
        name=part.name,
        mass_kg=part.mass_kg,
        x_mm=part.at_mm[0],
        z_mm=part.at_mm[1],
        price=part.price,
        extra_days=float(part.days),
        load_limit_kg=math.inf if part.load_limit_kg is None else part.load_limit_kg,
    )


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
    written: Mapping[str, list[str] | schema.SizeRange], choices: dict[str, Choice]
) -> dict[str, frozenset[str]]:
    return {
        name: codes_in(choices[name], meant.from_, meant.to)
        if isinstance(meant, schema.SizeRange)
        else matching_codes(choices[name], meant)
        for name, meant in written.items()
    }


def _foot_support_rules(choices: dict[str, Choice]) -> Iterator[Rule]:
    because = "hanger, hanger length and footplate are fitted together or not at all"
    where = choices["foot_supports"].options[0].where
    absent = frozenset({NONE})
    for name in ("hanger", "foot_plate", "leg_length"):
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
