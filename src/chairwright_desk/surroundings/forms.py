"""Forms of the places."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from django import forms

from chairwright_desk.clients.models import Client
from chairwright_desk.measures.typed import ALONE
from chairwright_desk.surroundings.bridge import (
    CODE_WORDS,
    Key,
    carer_keys,
    common_keys,
    keys_of,
    own_keys,
    troubles_of,
)
from chairwright_desk.surroundings.models import Spot
from chairwright_desk.surroundings.text import field_at, units_written, written
from chairwright_desk.surroundings.texts import around_of

LONGEST = 40


def _field(key: Key) -> forms.Field:
    if key.options:
        return forms.ChoiceField(
            label=key.label, help_text=key.help, choices=key.options, required=key.needed
        )
    widget = forms.TextInput(attrs={"autocomplete": "off"})
    return forms.CharField(
        label=key.label,
        help_text=key.help,
        required=key.needed,
        max_length=LONGEST,
        widget=widget,
    )


class SpotForm(forms.Form):
    """One place of a kind."""

    name = forms.CharField(
        label="What it is called", max_length=60, help_text="Such as: bathroom door. No address."
    )
    alone = forms.ChoiceField(label="A number alone means", choices=ALONE)
    reason = forms.CharField(
        label="Why it matters", required=False, max_length=400, help_text="Printed on the sheet."
    )
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    def __init__(
        self, *args: Any, client: Client, kind: str, spot: Spot | None = None, **options: Any
    ) -> None:
        super().__init__(*args, **options)
        self.client, self.kind, self.spot = client, kind, spot
        self.keys = (*keys_of(kind), *common_keys())
        for key in self.keys:
            self.fields[key.name] = _field(key)

    def needed(self) -> list[forms.BoundField]:
        """Return the fields without which a place is none, and how much it matters."""
        return [self[key.name] for key in self.keys if key.needed]

    def others(self) -> list[forms.BoundField]:
        """Return the other fields."""
        return [self[key.name] for key in self.keys if not key.needed]

    def typed(self) -> dict[str, str]:
        """Return what was typed, with every unit written out."""
        data = {name: str(value or "") for name, value in self.cleaned_data.items()}
        told = units_written(self.keys, data, data.get("alone") or "mm")
        return told | ({"reason": data["reason"]} if data.get("reason") else {})

    def clean(self) -> dict[str, Any]:
        """Refuse what cannot be read, beside its field, and a second place of one name."""
        data = super().clean() or {}
        if self.errors:
            return data
        fields = self.typed()
        to = written("X-1", around_of(self.client), [(self.kind, data["name"], fields)])
        for name, words in troubles_of(to.text, lambda where: field_at(to, where)).items():
            self.add_error(name if name in self.fields else None, words)
        others = Spot.objects.filter(client=self.client, name=data["name"].strip())
        if others.exclude(pk=self.spot.pk if self.spot else "").exists():
            self.add_error("name", "There is a place of this name already. Add where it is.")
        return data


class HelpersForm(forms.Form):
    """What holds for every place, and who helps."""

    site = forms.ChoiceField(
        label="What is built is",
        required=False,
        choices=(("", "not said (existing)"), ("existing", "existing"), ("new", "new")),
    )
    building = forms.ChoiceField(
        label="It stands in",
        required=False,
        choices=(
            ("", "not said (a dwelling)"),
            ("dwelling", "a dwelling"),
            ("public", "a public building"),
        ),
    )
    codes = forms.MultipleChoiceField(
        label="Public codes shown beside the verdicts",
        required=False,
        choices=CODE_WORDS,
        widget=forms.CheckboxSelectMultiple,
        help_text="They never decide a set-up.",
    )
    helper = forms.ChoiceField(
        label="A carer pushes or lifts",
        required=False,
        choices=(("", "no"), ("yes", "yes")),
    )
    note = forms.CharField(
        label="Note on the surroundings",
        required=False,
        max_length=4000,
        widget=forms.Textarea(attrs={"rows": 3}),
        help_text="No name, no address. Not printed on papers for the shop.",
    )
    alone = forms.ChoiceField(label="A number alone means", choices=ALONE)
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    def __init__(self, *args: Any, **options: Any) -> None:
        super().__init__(*args, **options)
        for before, keys in (("carer_", carer_keys()), ("own_", own_keys())):
            for key in keys:
                self.fields[before + key.name] = _field(key)

    def carer(self) -> list[forms.BoundField]:
        """Return the fields of the carer."""
        return [self[f"carer_{key.name}"] for key in carer_keys()]

    def own(self) -> list[forms.BoundField]:
        """Return the fields of what the client manages alone."""
        return [self[f"own_{key.name}"] for key in own_keys()]

    def typed(self) -> dict[str, str]:
        """Return what was typed, with every unit written out."""
        data = self.cleaned_data
        plain = {name: str(value or "") for name, value in data.items() if name != "codes"}
        alone = plain.get("alone") or "mm"
        told = _both(plain, alone)
        told |= {n: plain[n] for n in ("site", "building", "helper", "note") if plain.get(n)}
        codes = " ".join(data.get("codes") or [])
        return told | ({"codes": codes} if codes else {})

    def clean(self) -> dict[str, Any]:
        """Refuse what cannot be read, beside its field."""
        data = super().clean() or {}
        if not self.errors:
            sample = [("corridor", "sample", {"width": "1 m"})]
            fields = self.typed()
            if any(name.startswith("carer_") for name in fields):
                fields["helper"] = "yes"
            to = written("X-1", fields, sample)
            for name, words in troubles_of(to.text, to.field_at).items():
                self.add_error(name if name in self.fields else None, words)
        return data


def _both(plain: dict[str, str], alone: str) -> dict[str, str]:
    pairs: Iterable[tuple[str, tuple[Key, ...]]] = (
        ("carer_", carer_keys()),
        ("own_", own_keys()),
    )
    told: dict[str, str] = {}
    for before, keys in pairs:
        told |= units_written(keys, plain, alone, before)
    return told


class FileForm(forms.Form):
    """A places file from elsewhere."""

    file = forms.FileField(
        label="Places file", help_text="A file of this program, as Places as text gives it."
    )
