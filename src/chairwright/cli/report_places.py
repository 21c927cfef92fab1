"""Places beside a set-up: what each asks, its verdict, and what would help, as text and data."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import asdict

from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described, Judged
from chairwright.fitting.fit import Fit
from chairwright.fitting.place_effect import PlaceEffect, place_effect
from chairwright.fitting.place_verdicts import PlaceVerdict, place_verdicts
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.papers.words import measured_words, range_words, wrapped
from chairwright.places.codes import differences, judge_all, summary
from chairwright.places.model import Surroundings

Data = dict[str, object]

CAUTION = (
    "Measure the real door, ramp and table before relying on this. Try slopes and steps with a "
    "helper behind; local codes and licensed practice decide."
)
CODES_CAUTION = "Public codes are told beside the chair's own verdict and never decide a set-up."


def fit_places_sections(fit: Fit, setup: Described) -> list[str]:
    """Places in a fitting: verdict of each, and which of them decided.

    Parameters
    ----------
    fit : Fit
        With surroundings.
    setup : Described

    Returns
    -------
    list of str
    """
    verdicts = place_verdicts(fit.person, setup)
    sections = [places_text(verdicts, setup.line)]
    effect = place_effect(fit)
    if effect is not None:
        sections.append(effect_text(effect, setup.line))
    return sections


def places_text(verdicts: Sequence[PlaceVerdict], line: Line) -> str:
    """Every place with its verdict, what is asked of it and the notes.

    Parameters
    ----------
    verdicts : sequence of PlaceVerdict
    line : Line

    Returns
    -------
    str
    """
    lines = ["The client's places", wrapped(CAUTION)]
    for each in verdicts:
        lines.append(f"- {place_head(each)}")
        lines += [wrapped(f"    {asked_words(item, line)}", "      ") for item in each.judged]
        lines += [wrapped(f"    Note: {note}", "      ") for note in each.notes]
    return "\n".join(lines)


def place_head(verdict: PlaceVerdict) -> str:
    """Name and verdict of a place; a wish says that it is one."""
    wish = "" if verdict.place.must else " (a wish)"
    return f"{verdict.place.name}{wish}: {verdict.word}"


def asked_words(item: Judged, line: Line) -> str:
    """One target of a place: verdict, figure, what is asked, why and from where.

    Parameters
    ----------
    item : Judged
    line : Line
    """
    figure, target = FIGURES[item.target.figure], item.target
    value = measured_words(figure, item.value, line, item.target)
    reason = target.reason.removeprefix(f"{target.place}: ")
    kind = "" if target.must else ", preferred"
    missed = item.verdict.word == "fails" and not target.must
    word = "not as preferred" if missed else item.verdict.word
    asked = range_words(target, item.value)
    return f"{word}: {figure.label} {value} ({asked}{kind}): {reason} [{target.source}]"


def effect_text(effect: PlaceEffect, line: Line) -> str:
    """Say what the places changed, and which of them decided.

    Parameters
    ----------
    effect : PlaceEffect
    line : Line

    Returns
    -------
    str
    """
    head = "What the places decide"
    if not effect.changed:
        return f"{head}\nNothing: without them the best set-up would be the same."
    changed = ", ".join(
        f"{CHOICES[name].label.lower()} {before} -> {after}"
        for name, (before, after) in effect.changed.items()
    )
    lines = [head, wrapped(f"Because of them, against the best set-up without: {changed}.")]
    for item in effect.decided or effect.drew:
        lines.append(wrapped(f"- {item.target.place}: {_without(item, line)}", "  "))
    return "\n".join(lines)


def _without(item: Judged, line: Line) -> str:
    figure = FIGURES[item.target.figure]
    value = measured_words(figure, item.value, line, item.target)
    asks = "asks for" if item.target.must else "prefers"
    asked = range_words(item.target, item.value)
    return f"{asks} {figure.label} {asked}; without the places it was {value}"


def codes_text(surroundings: Surroundings) -> str:
    """What the public codes that the file names say of its places, and where they differ.

    Parameters
    ----------
    surroundings : Surroundings

    Returns
    -------
    str
        Empty when the file names none.
    """
    judgements = judge_all(surroundings)
    if not judgements:
        return ""
    lines = ["What public codes say", wrapped(CODES_CAUTION)]
    name = ""
    for each in judgements:
        if each.place.name != name:
            name = each.place.name
            lines.append(f"- {name}")
        lines.append(wrapped(f"    {summary(each)}", "      "))
    lines += [wrapped(words, "  ") for words in _differences(surroundings)]
    return "\n".join(lines)


def _differences(surroundings: Surroundings) -> Iterator[str]:
    for each in differences(judge_all(surroundings)):
        kept = ", ".join(each.holds) or "no code"
        yield (
            f"- Codes differ on {each.place.name}: kept under {kept}, not under "
            f"{', '.join(each.fails)}."
        )


def codes_data(surroundings: Surroundings) -> list[Data]:
    """What the public codes say as plain data, place by place."""
    return [
        {
            "place": each.place.name,
            "code": each.code.key,
            "verdict": each.word,
            "words": summary(each),
        }
        for each in judge_all(surroundings)
    ]


def places_data(fit: Fit) -> Data | None:
    """Places of a fitting as plain data; None when no places were given.

    Parameters
    ----------
    fit : Fit

    Returns
    -------
    dict or None
    """
    if fit.person.surroundings is None or fit.setup is None:
        return None
    effect = place_effect(fit)
    return {
        "places": [verdict_data(each) for each in place_verdicts(fit.person, fit.setup)],
        "without_places": None if effect is None else effect_data(effect),
    }


def effect_data(effect: PlaceEffect) -> Data:
    """What the places changed as plain data."""
    return {
        "changed": {
            name: {"without": before, "with": after}
            for name, (before, after) in effect.changed.items()
        },
        "decided": list(dict.fromkeys(item.target.place for item in effect.decided)),
        "drew": list(dict.fromkeys(item.target.place for item in effect.drew)),
    }


def verdict_data(verdict: PlaceVerdict) -> Data:
    """One place's verdict as plain data."""
    return {
        "name": verdict.place.name,
        "kind": verdict.place.kind,
        "must": verdict.place.must,
        "verdict": verdict.word,
        "asked": [
            {
                **asdict(item.target),
                "value": item.value if item.value == item.value else None,
                "verdict": item.verdict.word,
            }
            for item in verdict.judged
        ],
        "notes": list(verdict.notes),
    }
