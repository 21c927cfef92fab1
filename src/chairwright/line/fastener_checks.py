"""What a line file can get wrong about its fasteners: unknown choices and codes, said twice."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from chairwright.errors import Problem
from chairwright.line.choices import CHOICES, NONE
from chairwright.line.codes import matching_codes
from chairwright.line.model import Choice
from chairwright.line.schema import WrittenFastener
from chairwright.reading import YamlSource
from chairwright.validation import place, shown, suggest


def fastener_mistakes(
    fasteners: Sequence[WrittenFastener], choices: Mapping[str, Choice], source: YamlSource
) -> list[Problem]:
    """Fasteners of choices or codes that do not exist, and those that stand twice.

    Parameters
    ----------
    fasteners : sequence of WrittenFastener
    choices : mapping of str to Choice
    source : YamlSource
        The file, for each problem's ``file:line``.

    Returns
    -------
    list of Problem
    """
    return [*_unknown(fasteners, choices, source), *_twice(fasteners, choices, source)]


def _unknown(
    fasteners: Sequence[WrittenFastener], choices: Mapping[str, Choice], source: YamlSource
) -> Iterator[Problem]:
    for at, each in enumerate(fasteners):
        if each.choice not in choices:
            where = place(source, ("fasteners", at, "choice"))
            must = "a fastener must hold something of a choice"
            yield Problem(where, must, shown(each.choice), suggest(each.choice, CHOICES))
            continue
        options = choices[each.choice].options
        known = dict.fromkeys([*(o.part for o in options if o.part), *(o.code for o in options)])
        for number, code in enumerate(each.of or ()):
            if code == NONE or code not in known:
                where = place(source, ("fasteners", at, "of", number))
                must = f"a fastener must name codes of {each.choice}"
                remedy = suggest(code, [word for word in known if word != NONE])
                yield Problem(where, must, shown(code), remedy)


def _twice(
    fasteners: Sequence[WrittenFastener], choices: Mapping[str, Choice], source: YamlSource
) -> Iterator[Problem]:
    first: dict[tuple[str, str, str], int] = {}
    for at, each in enumerate(fasteners):
        if each.choice not in choices:
            continue
        choice = choices[each.choice]
        codes = choice.codes if each.of is None else matching_codes(choice, each.of)
        kept = [first.setdefault((each.choice, each.what, code), at) for code in sorted(codes)]
        if any(one != at for one in kept):
            line = source.line_of(("fasteners", min(kept))).rpartition(":")[2]
            got = f"{shown(each.what)} a second time (first at line {line})"
            must = f"each fastener of {each.choice} must stand once for a code"
            remedy = "Keep one of the two, or name other codes under of."
            yield Problem(place(source, ("fasteners", at)), must, got, remedy)
