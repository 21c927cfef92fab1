"""Forms of weighings and measured chairs: what is typed goes to the engineering and comes back."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from django import forms
from django.forms.boundfield import BoundField

from chairwright_desk.bench.bridge import Bench
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.texts import Texts, line_of
from chairwright_desk.chair_now.bridge import (
    InputError,
    Pads,
    asked_groups,
    feet_choices,
    judged,
    open_of,
    slips_of,
    weighed_of,
)
from chairwright_desk.chair_now.models import Weighing, today
from chairwright_desk.chair_now.written import (
    METHODS,
    PADS,
    measured_text,
    put_problems,
    scale_readings,
    scales_text,
    united,
)
from chairwright_desk.measures.typed import Alone

KEPT = "kept"
USUAL = {"scale_step": "100 g", "tape": "2 mm"}
FEET = {"both": "both sides", "left": "left only", "right": "right only", "none": "none"}
UNITS = {"mm": {"length": "mm", "mass": "kg", "angle": "deg"},
         "in": {"length": "in", "mass": "lb", "angle": "deg"}}  # fmt: skip
RENAMED = {"raised_caster_left": "raised_casters", "level": "level_casters", "setup": "setup"}


def day() -> forms.DateInput:
    """A day, as the browser picks one."""
    return forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d")


@dataclass(frozen=True)
class Part:
    """Fields that are read together."""

    label: str
    help: str
    fields: tuple[BoundField, ...]


def reading(label: str, dimension: str, alone: Alone, *, needed: bool = False) -> forms.CharField:
    """A field for one reading, its unit beside its name.

    Parameters
    ----------
    label, dimension : str
    alone : {"mm", "cm", "in"}
        What a number alone means.
    needed : bool
    """
    unit = UNITS["in" if alone == "in" else "mm"][dimension]
    widget = forms.TextInput(attrs={"class": "figure", "autocomplete": "off"})
    named = f"{label} [{unit}]"
    return forms.CharField(label=named, required=needed, max_length=40, widget=widget)


class WeighForm(forms.Form):
    """Wheel loads of a set-up with its client."""

    weighed_on = forms.DateField(label="Weighed on", initial=today, widget=day())
    setup = forms.ChoiceField(label="Set-up on the pads")
    method = forms.ChoiceField(label="How", choices=list(METHODS.items()), initial="four pads",
                               widget=forms.RadioSelect)  # fmt: skip
    loads_on = forms.BooleanField(
        label="What the client carries was on the chair", required=False, initial=True
    )
    in_use = forms.BooleanField(
        label="Count it for this client's set-ups", required=False, initial=True,
        help_text="In place of the estimate, from now on, while it is the newest.",
    )  # fmt: skip
    revision = forms.IntegerField(widget=forms.HiddenInput, initial=0)

    def __init__(
        self,
        *args: Any,
        texts: Texts,
        setups: list[Setup],
        held: Weighing | None,
        reference: str,
        alone: Alone,
        **options: Any,
    ) -> None:
        super().__init__(*args, **options)
        self.texts, self.setups, self.held = texts, setups, held
        self.reference, self.alone = reference, alone
        names = [(each.pk, each.name) for each in setups]
        if held is not None:
            names.insert(0, (KEPT, f"{held.setup_name}, as it was on that day"))
        self.fields["setup"].choices = names  # type: ignore[attr-defined]
        needed = ("wheelbase", "rear_axle_height", "caster_axle_height")
        for name, (dimension, label) in scale_readings().items():
            field = reading(label, dimension, alone, needed=name in needed)
            field.initial = USUAL.get(name, "")
            self.fields[name] = field

    @property
    def parts(self) -> Iterator[Part]:
        """The readings as they are taken."""
        sizes = ("wheelbase", "rear_axle_height", "caster_axle_height", "rear_track",
                 "caster_track")  # fmt: skip
        yield self._part(
            "Sizes", "On the level, casters trailing. The tracks only for four pads.", sizes
        )
        yield self._part(
            "On the level",
            "Four pads: one load for each wheel. Two pads: both rear wheels, and both casters. "
            "One axle at a time: both casters, and both rear wheels or all together. A sum read "
            "as well is checked.",
            [f"level_{pad}" for pad in PADS],
        )
        yield self._part(
            "Casters on a block",
            "Gives the height of the centre of mass; without it the weighing cannot count for "
            "set-ups. Wheel locks off.",
            ("raised_block", "raised_casters"),
        )
        yield self._part("How finely", "", ("scale_step", "tape"))

    @property
    def empty(self) -> Part:
        """The chair without its client, which is seldom weighed."""
        names = [n for n in self.fields if n.startswith("empty_")]
        return self._part("The chair without the client", "", names)

    @property
    def empty_in_use(self) -> bool:
        """Whether something of it is filled in or wrong."""
        return any(field.value() or field.errors for field in self.empty.fields)

    def _part(self, label: str, words: str, names: Any) -> Part:
        return Part(label, words, tuple(self[name] for name in names))

    def clean(self) -> dict[str, Any]:
        """Work it out, and put what cannot be meant beside its field."""
        data = super().clean() or {}
        if self.errors:
            return data
        fields = {
            name: united(data.get(name, ""), dimension, self.alone)
            for name, (dimension, _) in scale_readings().items()
        }
        fields |= {"method": data["method"], "loads_on": "yes" if data["loads_on"] else "no"}
        self.values = self._values(data, fields)
        try:
            weighed_of(_pads(self.values))
        except InputError as error:
            put_problems(self, error.problems, RENAMED)
        return data

    def _values(self, data: dict[str, Any], fields: dict[str, str]) -> dict[str, Any]:
        """Everything that is kept of a weighing."""
        held = self.held if data["setup"] == KEPT else None
        chosen: Any = held or next(each for each in self.setups if each.pk == data["setup"])
        name = held.setup_name if held else chosen.name
        dated = f"{data['weighed_on']:%Y-%m-%d}"
        return {
            "weighed_on": data["weighed_on"],
            "fields": {name: typed for name, typed in fields.items() if typed},
            "text": scales_text(fields, self.reference, dated, name),
            "client_text": held.client_text if held else self.texts.client,
            "setup_name": name,
            "line": chosen.line,
            "codes": chosen.codes,
            "extras": chosen.extras,
            "in_use": data["in_use"],
        }


def _pads(values: dict[str, Any]) -> Pads:
    return Pads(
        text=values["text"],
        client=values["client_text"],
        line=line_of(values["line"]),
        codes=values["codes"],
        extras=tuple(values["extras"]),
        dated=f"{values['weighed_on']:%Y-%m-%d}",
    )


class MeasuredForm(forms.Form):
    """A chair of any maker, measured with tape, level and scales."""

    name = forms.CharField(label="What it is called", max_length=80,
                           help_text="Such as: present chair, loan chair.")  # fmt: skip
    measured_on = forms.DateField(label="Measured on", initial=today, widget=day())
    foot_supports = forms.ChoiceField(
        label="Foot supports", choices=[(name, FEET[name]) for name in feet_choices()]
    )
    as_it_is = forms.BooleanField(
        label="I have measured again: keep it as it stands", required=False
    )
    revision = forms.IntegerField(widget=forms.HiddenInput, initial=0)

    def __init__(self, *args: Any, bench: Bench, alone: Alone, **options: Any) -> None:
        super().__init__(*args, **options)
        self.bench, self.alone = bench, alone
        self.kinds = {each.name: each for _, group in asked_groups() for each in group}
        for name, each in self.kinds.items():
            self.fields[name] = reading(each.label, each.dimension, alone, needed=each.needed)
        self.slips: dict[str, str] = {}
        self.open: tuple[str, ...] = ()

    @property
    def parts(self) -> Iterator[Part]:
        """The readings in the order of going round the chair."""
        for label, group in asked_groups():
            yield Part(label, "", tuple(self[each.name] for each in group))

    def clean(self) -> dict[str, Any]:
        """Judge it; what cannot be meant, and what may be a slip, stands beside its field."""
        data = super().clean() or {}
        if self.errors:
            return data
        fields = {
            name: united(data.get(name, ""), each.dimension, self.alone)
            for name, each in self.kinds.items()
        } | {"foot_supports": data["foot_supports"]}
        text = measured_text(fields, self.kinds, data["name"])
        held = {name: typed for name, typed in fields.items() if typed}
        self.values = {"name": data["name"], "measured_on": data["measured_on"],
                       "fields": held, "text": text}  # fmt: skip
        try:
            found = judged(text, self.bench)
        except InputError as error:
            put_problems(self, error.problems, {})
            return data
        self.open = open_of(found)
        self.slips = {each.field: each.words for each in slips_of(found)}
        if self.open and not data["as_it_is"]:
            self._name_slips()
        return data

    def _name_slips(self) -> None:
        for name, words in self.slips.items():
            self.add_error(name, f"{words} Measure it again first.")
        if not self.slips:
            self.add_error(None, "The measures do not fit each other; no single slip explains it.")
        self.add_error("as_it_is", "Not kept yet. Correct the value, or tick this box.")
