"""Mistakes in the form and the names of scheme files, each with its line and its remedy's words."""

from __future__ import annotations

from dataclasses import dataclass
from importlib.resources import files

DEMO = (files("chairwright.order") / "schemes" / "demo.yaml").read_text("utf-8")


@dataclass(frozen=True)
class Seed:
    """One mistake: what the text was, what it becomes, where, and words of the message.

    ``place`` is text after the change that stands once, on the line that must be named.
    """

    name: str
    old: str
    new: str
    place: str
    words: tuple[str, ...]

    @property
    def text(self) -> str:
        assert DEMO.count(self.old) == 1, self.old
        return DEMO.replace(self.old, self.new)

    @property
    def line(self) -> int:
        assert self.text.count(self.place) == 1, self.place
        return self.text[: self.text.index(self.place)].count("\n") + 1


W1 = "when: {fact: chair_mass, below: 12}"
W2 = "when: {fact: chair_mass, at_least: 12, at_most: 17}"
X20 = "when: {fact: cushion, is: shaped}"
X30 = "when: {fact: extras, has: table}"
TRIAL = '{fact: trial, is: "yes"}'
HEAD = "format: chairwright payer scheme 1"

FORM = (
    Seed(
        "another kind of file",
        HEAD,
        "format: chairwright line 2",
        "chairwright line 2",
        ("format", "chairwright payer scheme 1"),
    ),
    Seed("a tab", "  load: {kind: mass", "\tload: {kind: mass", "\tload", ("spaces, no tabs",)),
    Seed("a bracket left open", X20, "when: {fact: cushion, is: shaped", "X20", ("Close every",)),
    Seed(
        "a key in other spelling",
        "  client_mass: {kind: mass, unit: kg",
        "  client_mass: {kind: mass, units: kg",
        "client_mass: {kind",
        ("units", "Did you mean unit?"),
    ),
    Seed(
        "a key forgotten",
        "title: shaped cushion, line",
        "line",
        "code: X20",
        ("title must be given", "Add title"),
    ),
    Seed(
        "a fact twice",
        "  pushes: {kind",
        "  load: {kind: number, label: a, ask: b}\n  pushes: {kind",
        "label: a, ask: b",
        ("a key must stand once",),
    ),
    Seed(
        "a date that is none",
        'edition: "1, invented"\ndated: "2026-01-01"',
        'edition: "1, invented"\ndated: "2026-13-01"',
        "2026-13-01",
        ("dated",),
    ),
    Seed(
        "a certainty that is not one",
        'ladders", certainty: invented',
        'ladders", certainty: sure',
        "certainty: sure",
        ("certainty", "Known here: read"),
    ),
    Seed(
        "a limit with its unit",
        W1,
        "when: {fact: chair_mass, below: 12 kg}",
        "below: 12 kg",
        ("12 kg", "decimal"),
    ),
)

NAMES = (
    Seed(
        "an unknown fact",
        W1,
        "when: {fact: chair_mas, below: 12}",
        "chair_mas,",
        ("a fact that facts lists", "Did you mean chair_mass?"),
    ),
    Seed(
        "an unknown source",
        "title: middling, source: rules",
        "title: middling, source: rule",
        "source: rule,",
        ("a source must be one of sources", "Did you mean rules?"),
    ),
    Seed(
        "an unknown paper",
        "documents: [trial_record]",
        "documents: [trial_note]",
        "[trial_note]",
        ("a paper must be one of documents", "trial_record"),
    ),
    Seed(
        "a fact that nothing asks for",
        "trial: {kind: yes or no",
        "tried: {kind: yes or no",
        "tried: {kind",
        ("each of facts must be used", "nothing names tried"),
    ),
    Seed(
        "a class twice",
        "{code: W3, title: heavy",
        "{code: W2, title: heavy",
        "title: heavy",
        ("W2 a second time", "Join the two"),
    ),
    Seed(
        "a code for a line that is not there",
        "line: seat_width, source",
        "line: seat_wdth, source",
        "line: seat_wdth",
        ("a line must be a choice", "Did you mean seat_width?"),
    ),
    Seed(
        "a choice that is not there",
        "hand_rim, seat_width, arm_support",
        "hand_rim, seat, arm_support",
        "hand_rim, seat,",
        ("included must name choices", "'seat'"),
    ),
    Seed(
        "a class that goes before nothing known",
        "goes_before: [A1]",
        "goes_before: [A9]",
        "[A9]",
        ("goes_before must name classes", "'A9'"),
    ),
    Seed(
        "classes in a circle",
        "source: rules, otherwise: true",
        "source: rules, goes_before: [A0], otherwise: true",
        "goes_before: [A0]",
        ("no class may go before itself", "circle"),
    ),
    Seed(
        "a class without a test",
        W2,
        "note: in the middle",
        "code: W2",
        ("W2 must have either when or otherwise", "neither"),
    ),
    Seed(
        "a group named as a fact",
        "- name: load_class",
        "- name: load",
        "- name: load\n",
        ("must not have the name of a fact", "Rename"),
    ),
    Seed(
        "a part that is no word of the fact",
        "Q75: shaped",
        "Q75: shapely",
        "Q75: shapely",
        ("must be one of the fact's words", "Did you mean shaped?"),
    ),
    Seed(
        "parts of a choice that no fact reads",
        "    cushion: {CF2: plain",
        "    belt: {CF2: plain",
        "belt: {CF2",
        ("a choice that a fact is read from", "'belt'"),
    ),
)
