"""The papers of a handover as an accessible PDF (PDF/UA-1): a check, and a page to take home."""

from __future__ import annotations

import re
from typing import Any

from chairwright.line.choices import NONE
from chairwright.order.handover import CheckGroup, Handover, Measured, Review
from chairwright.order.parts import BY_FOOT, SettingRow
from chairwright.papers.typeset import Paper, typeset
from chairwright.papers.words import Units
from chairwright.units import inches_text

TEMPLATE = "pack/handover.typ"
WITHOUT_NUMBER = "without number"
MEASURE_WORDS = (
    "On a level floor, tyres at full pressure, casters trailing. What is called loaded, with the "
    "client on the cushion. Must: outside that end the chair misses what the client needs; do not "
    "hand it over."
)
HANDED_WORDS = "Everything above was checked. What is not good is written here, and who mends it:"
SIGNATURES = (
    ("Checked by, name", "Signature", "Date"),
    ("Handed over by, name", "Signature", "Date"),
    ("Received by the client or the carer", "Signature", "Date"),
)
PLACES_WORDS = (
    "The numbers are calculated, not tried. Try each place first with a trained helper beside you."
)
HOME_WORDS = "I have been shown all this, and have got a copy."
HOME_SIGNATURES = ("Client or carer", "Shown by", "Date")
MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
_UNIT = re.compile(r"(?<=\d) (?=(?:kg|degrees|mm)\b)")
SIXTEENTHS = 16
DATED = ("every week", "every month", "every year")
ADVICE_SOURCE = "What stands without a number here: common practice, no source."


def handover_pdf(handover: Handover, paper: Paper = "a4", units: Units = "mm") -> bytes:
    """Typeset the papers of one handover.

    Parameters
    ----------
    handover : Handover
        Text is printed as it stands; nothing in it is read as markup.
    paper : {"a4", "us-letter"}
    units : {"mm", "in"}
        ``in`` adds inches to the dimensions.

    Returns
    -------
    bytes
        A tagged PDF; the same handover gives the same bytes.

    Raises
    ------
    ValueError
        When the paper is neither of the two.
    """
    content = handover_content(handover, units)
    return typeset(TEMPLATE, content, paper)


class _Numbered:
    """Numbers sources in the order in which they are first met."""

    def __init__(self) -> None:
        self.numbers: dict[str, int] = {}

    def of(self, sources: str) -> str:
        each = dict.fromkeys(self._number(source) for source in sources.split("; "))
        return ", ".join(str(number) for number in sorted(each))

    def _number(self, source: str) -> int:
        return self.numbers.setdefault(source, len(self.numbers) + 1)

    def listed(self) -> list[dict[str, str]]:
        return [{"short": str(at), "citation": source} for source, at in self.numbers.items()]


def handover_content(handover: Handover, units: Units = "mm") -> dict[str, Any]:
    """Everything that the template prints.

    Parameters
    ----------
    handover : Handover
    units : {"mm", "in"}
    """
    check, home = _Numbered(), _Numbered()
    return {
        **_heading(handover),
        "measure_words": MEASURE_WORDS,
        "settings": _settings(handover.settings),
        "inches": units == "in",
        "measured": [_measured(each, units, check) for each in handover.measured],
        "groups": [_group(each, check) for each in handover.groups],
        "taught": [
            {"what": each.what, "source": check.of(each.source)} for each in handover.taught
        ],
        "handed_words": HANDED_WORDS,
        "signatures": SIGNATURES,
        "sources": check.listed(),
        **_home(handover, home),
        "home_sources": home.listed(),
        "advice_source": ADVICE_SOURCE,
    }


def _heading(handover: Handover) -> dict[str, Any]:
    number, revision = handover.order_number, f"revision {handover.revision}"
    return {
        "reference": handover.reference,
        "set_up": handover.set_up,
        "line": f"{handover.line_title}, version {handover.line_version}",
        "order": number or WITHOUT_NUMBER,
        "order_words": f"{number}, {revision}" if number else revision,
        "revision": str(handover.revision),
        "delivered": handover.delivered,
        "rated": handover.rated,
    }


def _settings(rows: tuple[SettingRow, ...]) -> list[dict[str, Any]]:
    """Holes and settings, each with whether there is anything to tick left and right."""
    feet = next((row.code for row in rows if row.choice == "foot_supports"), "both")
    footed = {"foot_supports", *BY_FOOT}
    return [
        {
            "label": row.label,
            "code": row.code,
            "words": row.words,
            "sides": [row.choice not in footed or feet in (side, "both", NONE)
                      for side in ("left", "right")],
        }
        for row in rows
    ]  # fmt: skip


def _measured(each: Measured, units: Units, sources: _Numbered) -> dict[str, Any]:
    dimension = each.dimension
    unit, digits = dimension.unit, dimension.digits
    low, high = (_number(end, digits) for end in (each.low, each.high))
    ordered_in = allowed_in = ""
    if units == "in" and unit == "mm":
        ends = (_inches(end).removesuffix(" in") for end in (each.low, each.high))
        ordered_in = _inches(dimension.value)
        allowed_in = f"{' to '.join(ends)} in"
    return {
        "label": dimension.label,
        "from": dimension.from_,
        "to": dimension.to,
        "ordered": f"{_number(dimension.value, digits)} {unit}",
        "ordered_in": ordered_in,
        "allowed": f"{low} to {high}",
        "allowed_in": allowed_in,
        "must": each.must,
        "source": sources.of(each.source),
    }


def _inches(length_mm: float) -> str:
    return inches_text(length_mm, SIXTEENTHS).replace("-", "−")


def _number(value: float, digits: int) -> str:
    text = f"{value:.{digits}f}"
    return text.lstrip("-") if float(text) == 0.0 else text.replace("-", "−")


def _group(group: CheckGroup, sources: _Numbered) -> dict[str, Any]:
    return {
        "title": group.title,
        "cautions": group.cautions,
        "checks": [
            {
                "what": each.what,
                "asked": each.asked,
                "reading": each.reading,
                "source": sources.of(each.source),
            }
            for each in group.checks
        ],
    }


def _home(handover: Handover, sources: _Numbered) -> dict[str, Any]:
    upkeep = [
        {
            "often": each.often,
            "first": day_words(each.first),
            "dated": each.often in DATED,
            "work": each.work,
            "source": sources.of(each.source),
        }
        for each in handover.upkeep
    ]
    return {
        "advice": [
            {"title": each.title, "words": [_kept(words) for words in each.words]}
            for each in handover.advice
        ],
        "places": [
            {
                "name": _capital(each.name),
                "size": each.size,
                "words": [_kept(words) for words in each.words],
            }
            for each in handover.places
        ],
        "places_words": PLACES_WORDS,
        "upkeep": upkeep,
        "months": [
            {
                "number": str(each.number),
                "until": day_words(each.until),
                "weeks": each.weeks,
                "service": each.service,
            }
            for each in handover.months
        ],
        "review_words": _review(handover.review, sources),
        "home_words": HOME_WORDS,
        "home_signatures": HOME_SIGNATURES,
    }


def _review(review: Review, sources: _Numbered) -> str:
    days = ""
    if review.earliest:
        days = f", that is from {day_words(review.earliest)} to {day_words(review.latest)}"
    return f"{review.words}{days} ({sources.of(review.source)}). Sooner when anything changes."


def day_words(day: str) -> str:
    """Write a day for people: ``8 December 2026``; empty for none.

    Examples
    --------
    >>> day_words("2026-12-08").replace("\u00a0", " ")
    '8 December 2026'
    """
    if not day:
        return ""
    year, month, date = day.split("-")
    return f"{int(date)}\u00a0{MONTHS[int(month) - 1]}\u00a0{year}"


def _kept(words: str) -> str:
    """Keep a number and its unit on one line."""
    return _UNIT.sub("\u00a0", words)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
