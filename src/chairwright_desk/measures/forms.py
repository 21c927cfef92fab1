"""Forms of the measures: one set of a day, how the client moves, and files from elsewhere."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from django import forms
from django.utils import timezone

from chairwright_desk.measures.bridge import (
    CHOICE_WORDS,
    LIMBS,
    Kind,
    KindGroup,
    kind_groups,
    kinds,
    levels_of,
    troubles_of,
)
from chairwright_desk.measures.text import Parts, can_be_seated, units_written, written
from chairwright_desk.measures.typed import ALONE

LONGEST = 40
LOADS, SETTLED, RANGES = 4, 4, 4
PROPULSION = (
    ("hands", "with both hands"),
    ("feet", "with both feet"),
    ("hand_and_foot_left", "with the left hand and foot"),
    ("hand_and_foot_right", "with the right hand and foot"),
    ("carer", "is pushed by a carer"),
)
SEX = (("", "not chosen yet"), ("female", "female"), ("male", "male"))
LOAD_PLACES = (
    ("backpack", "on the back posts"),
    ("under_seat", "under the seat"),
    ("lap", "on the lap"),
    ("foot_support", "on the foot support"),
)
LIMB_WORDS = {limb: limb.replace("_", " ").capitalize() for limb in LIMBS}
NOT_KEPT = ("taken_on", "revision", "alone")


@dataclass(frozen=True)
class Row:
    """One measure in the form: its boxes, left before right, and its spread."""

    kind: Kind
    boxes: tuple[tuple[str, forms.BoundField], ...]
    give: forms.BoundField


@dataclass(frozen=True)
class RowGroup:
    """Measures that are taken together."""

    group: KindGroup
    rows: tuple[Row, ...]


def _box(label: str, **attrs: str) -> forms.CharField:
    told = {"autocomplete": "off", "spellcheck": "false", **attrs}
    widget = forms.TextInput(attrs=told)
    return forms.CharField(label=label, required=False, max_length=LONGEST, widget=widget)


class TypedForm(forms.Form):
    """A form whose fields are kept as typed, and read by the engineering before they are saved."""

    def typed(self) -> dict[str, str]:
        """Return what stands in the fields, with every unit written out, empty ones left out."""
        data = self.cleaned_data
        plain = {n: str(v) for n, v in data.items() if n not in NOT_KEPT and v not in (None, "")}
        return units_written(plain, data.get("alone") or "mm")

    def say(self, troubles: dict[str, list[str]]) -> None:
        """Put what the engineering cannot read beside its field."""
        for name, words in troubles.items():
            if name in self.fields:
                self.add_error(name, words)


class MeasuringForm(TypedForm):
    """The body as it was found on one day."""

    taken_on = forms.DateField(
        label="Measured on", widget=forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d")
    )
    alone = forms.ChoiceField(
        label="A number alone means",
        choices=ALONE,
        help_text="Or write the unit: 16 1/4 in, 41 cm.",
    )
    sex = forms.ChoiceField(label="Sex", choices=SEX, help_text="Chooses the body tables.")
    age = forms.CharField(
        label="Age in years", required=False, max_length=8, help_text="For children: growth."
    )
    leg_mass_factor = forms.CharField(
        label="Share of leg mass that is there",
        required=False,
        max_length=8,
        help_text="1 without an entry; down to 0.7 where legs have wasted.",
    )
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    def __init__(self, *args: Any, **options: Any) -> None:
        super().__init__(*args, **options)
        self.fields["taken_on"].initial = timezone.localdate()
        for kind in kinds().values():
            self._add_measure(kind)
        for limb in LIMBS:
            choices = [
                ("", "whole"),
                *((each, f"lost: {words}") for each, words in levels_of(limb)),
            ]
            self.fields[limb] = forms.ChoiceField(
                label=LIMB_WORDS[limb], choices=choices, required=False
            )
            self.fields[f"{limb}_share"] = _box(
                f"{LIMB_WORDS[limb]}: share of the cut bone that remains", placeholder="0.5"
            )

    def _add_measure(self, kind: Kind) -> None:
        tape = kind.name.replace("_", "-")
        about = {"aria-describedby": f"how-{kind.name} beside-{kind.name}", "data-tape": tape}
        for side, name in kind.fields:
            self.fields[name] = _box(f"{kind.label}, {side}" if side else kind.label, **about)
        self.fields[f"{kind.name}_give"] = _box(
            f"{kind.label}, give or take", placeholder=kind.usual, **{"data-tape": tape}
        )

    def groups(self) -> Iterator[RowGroup]:
        """Yield the measures in the order in which they are taken."""
        for group in kind_groups():
            yield RowGroup(group, tuple(self._row(kind) for kind in group.kinds))

    def limbs(self) -> list[tuple[forms.BoundField, forms.BoundField]]:
        """Return each limb with what is left of it."""
        return [(self[limb], self[f"{limb}_share"]) for limb in LIMBS]

    def _row(self, kind: Kind) -> Row:
        boxes = tuple((side, self[name]) for side, name in kind.fields)
        return Row(kind, boxes, self[f"{kind.name}_give"])

    def clean(self) -> dict[str, Any]:
        """Refuse what cannot be read, beside its field; an unfinished set may be saved."""
        data = super().clean() or {}
        if not self.errors:
            body = self.typed()
            parts = Parts("X-1", {"sex": "female", **body}, {"propulsion": "carer"})
            to = written(parts)
            troubles = troubles_of(to.text, to.field_at)
            if not can_be_seated(body):
                troubles.pop("", None)
            self.say(troubles)
        return data


@dataclass(frozen=True)
class Folded:
    """Rows alike: the first stands open; the others are folded until one of them is used."""

    first: list[forms.BoundField]
    further: list[list[forms.BoundField]]
    used: bool


class AbilitiesForm(TypedForm):
    """How the client moves, what goes along, what is settled and what is expected."""

    propulsion = forms.ChoiceField(label="The chair is moved", choices=PROPULSION)
    note = forms.CharField(
        label="Note on the client's life with the chair",
        required=False,
        max_length=4000,
        widget=forms.Textarea(attrs={"rows": 4}),
        help_text="No name. It is not printed on papers for the shop.",
    )
    extras = forms.CharField(
        label="Accessories to be fitted",
        required=False,
        max_length=200,
        widget=forms.TextInput(attrs={"list": "known-extras", "autocomplete": "off"}),
        help_text="Choose a code of the product line; several with blanks between them.",
    )
    over_years = forms.CharField(
        label="Over how many years", required=False, max_length=8, help_text="5 without an entry."
    )
    expected_reason = forms.CharField(label="Why this is expected", required=False, max_length=400)
    alone = forms.ChoiceField(label="A number alone means", choices=ALONE)
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    def __init__(self, *args: Any, parts: Parts, **options: Any) -> None:
        super().__init__(*args, **options)
        self.parts = parts
        for at in range(LOADS):
            self.fields[f"load_name_{at}"] = _box("What")
            self.fields[f"load_mass_{at}"] = _box("Mass")
            self.fields[f"load_place_{at}"] = forms.ChoiceField(
                label="Where", choices=LOAD_PLACES, required=False
            )
        settled = [("", "none"), *CHOICE_WORDS.items()]
        for at in range(SETTLED):
            self.fields[f"settled_choice_{at}"] = forms.ChoiceField(
                label="Choice", choices=settled, required=False
            )
            self.fields[f"settled_codes_{at}"] = _box("Codes that may stay", list="known-codes")
        measures = [("", "none"), *((kind.name, kind.label) for kind in kinds().values())]
        for at in range(RANGES):
            self.fields[f"range_measure_{at}"] = forms.ChoiceField(
                label="Measure", choices=measures, required=False
            )
            self.fields[f"range_least_{at}"] = _box("Least, at the end")
            self.fields[f"range_most_{at}"] = _box("Most, at the end")

    def _rows(self, count: int, *names: str) -> Folded:
        rows = [[self[f"{name}_{at}"] for name in names] for at in range(count)]
        further = any(row[0].value() or row[1].value() for row in rows[1:])
        return Folded(rows[0], rows[1:], further)

    def loads(self) -> Folded:
        """Return the rows of what goes along every day."""
        return self._rows(LOADS, "load_name", "load_mass", "load_place")

    def settled(self) -> Folded:
        """Return the rows of choices that are settled."""
        return self._rows(SETTLED, "settled_choice", "settled_codes")

    def ranges(self) -> Folded:
        """Return the rows of what is expected to change."""
        return self._rows(RANGES, "range_measure", "range_least", "range_most")

    def typed(self) -> dict[str, str]:
        """Return what was typed; the place of a load that is not there is left out."""
        told = super().typed()
        for at in range(LOADS):
            if told.get(f"load_name_{at}") or told.get(f"load_mass_{at}"):
                told.setdefault(f"load_place_{at}", LOAD_PLACES[0][0])
            else:
                told.pop(f"load_place_{at}", None)
        return told

    def clean(self) -> dict[str, Any]:
        """Refuse what cannot be read, beside its field."""
        data = super().clean() or {}
        if not self.errors:
            body = {"sex": "female", **self.parts.body}
            to = written(Parts("X-1", body, self.typed()))
            self.say(troubles_of(to.text, to.field_at))
        return data


class BroughtForm(forms.Form):
    """A file from elsewhere."""

    file = forms.FileField(
        label="File",
        help_text="A client file of this program, a health record (FHIR R4, JSON), or a table "
        "(CSV) with the columns measure, side and value.",
    )
