"""One client on several lines: the best of each, or why there is none."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from chairwright.errors import InputError, Problem
from chairwright.fitting.allowed import plain
from chairwright.fitting.fit import MOST_CORRECTIONS, Fit, fit_person
from chairwright.fitting.person import Person, read_person
from chairwright.fitting.settled import where_settled
from chairwright.fitting.to_order import ToOrder
from chairwright.fitting.weighed import WeighedClient
from chairwright.line.codes import matching_codes
from chairwright.line.model import Line
from chairwright.person.client import Client
from chairwright.places.model import Surroundings
from chairwright.validation import suggest

MOST_CODES = 8


@dataclass(frozen=True)
class OnLine:
    """What came out on one line.

    Parameters
    ----------
    line : Line
    fit : Fit or None
        None when the line was not tried.
    lacks : tuple of str
        Why it was not tried: what is settled for the client and this line does not have.
    without : tuple of str
        Extras that the client is to have and this line does not have.
    """

    line: Line
    fit: Fit | None
    lacks: tuple[str, ...] = ()
    without: tuple[str, ...] = ()


@dataclass(frozen=True)
class SideBySide:
    """One client on several lines, in the order in which they were named."""

    person: Person
    results: tuple[OnLine, ...]

    @property
    def currencies(self) -> tuple[str, ...]:
        """Currencies of the lines, each once."""
        return tuple(dict.fromkeys(each.line.currency for each in self.results))


def fit_lines(
    client: Client,
    lines: Sequence[Line],
    *,
    surroundings: Surroundings | None = None,
    weighed: WeighedClient | None = None,
    to_order: ToOrder = "when-needed",
    most_corrections: int | None = MOST_CORRECTIONS,
    progress: Callable[[str], None] = lambda _: None,
) -> SideBySide:
    """Fit one client on several lines.

    Parameters
    ----------
    client : Client
        A settled choice may name codes of several lines; of each line its own count.
    lines : sequence of Line
    surroundings, weighed, to_order, most_corrections
        As for `fit.fit_client`.
    progress : callable
        Told in a few words what is being done.

    Returns
    -------
    SideBySide
        A line that has none of the codes to which a choice is settled is not tried.

    Raises
    ------
    InputError
        When a code is in none of the lines, or the client file asks for what cannot be meant.
    """
    problems = [*_unknown_choices(client, lines), *_unknown_extras(client, lines)]
    if problems:
        raise InputError(*problems)
    results = []
    for line in lines:
        lacks = tuple(_lacks(client, line))
        own, without = _for_line(client, line)
        fit = None
        if not lacks:
            fit = fit_person(
                read_person(own, surroundings, weighed),
                line,
                objectives=None,
                to_order=to_order,
                most_corrections=most_corrections,
                progress=lambda words, name=line.name: progress(f"{name}: {words}"),  # type: ignore[misc]
            )
        results.append(OnLine(line, fit, lacks, without))
    return SideBySide(read_person(client, surroundings, weighed), tuple(results))


def _unknown_choices(client: Client, lines: Sequence[Line]) -> Iterator[Problem]:
    for name, codes in client.fixed_choices.items():
        choices = [line.choices[name] for line in lines]
        known = [code for choice in choices for code in choice.codes]
        for code in codes:
            if not any(matching_codes(choice, [code]) for choice in choices):
                yield Problem(
                    where=where_settled(client, name),
                    must="a settled choice must name options of one of the lines",
                    got=repr(code),
                    remedy=suggest(code, known),
                )


def _unknown_extras(client: Client, lines: Sequence[Line]) -> Iterator[Problem]:
    known = {extra.code: extra.name for line in lines for extra in line.extras}
    for code in client.extras:
        if code not in known:
            yield Problem(
                where=f"{client.where.get(f'extras.{code}', '')}: extras".removeprefix(": "),
                must="it must be an extra of one of the lines",
                got=repr(code),
                remedy=suggest(code, (f"{each} ({name})" for each, name in known.items())),
            )


def _lacks(client: Client, line: Line) -> Iterator[str]:
    """Clauses for the settled choices of which a line has no code."""
    for name, codes in client.fixed_choices.items():
        choice = line.choices[name]
        if not matching_codes(choice, codes):
            own = list(choice.codes)
            shown = ", ".join(own[:MOST_CODES]) + (" and more" if len(own) > MOST_CODES else "")
            yield (
                f"the client file settles the {plain(name)} to {' or '.join(codes)}, which this "
                f"line does not have. Its own are {shown}: add to the list what would do."
            )


def _for_line(client: Client, line: Line) -> tuple[Client, tuple[str, ...]]:
    """The client with the codes that a line has, and the extras that it lacks."""
    settled = {
        name: tuple(code for code in codes if matching_codes(line.choices[name], [code]))
        for name, codes in client.fixed_choices.items()
    }
    known = {extra.code for extra in line.extras}
    without = tuple(code for code in client.extras if code not in known)
    extras = tuple(code for code in client.extras if code in known)
    return replace(client, fixed_choices=settled, extras=extras), without
