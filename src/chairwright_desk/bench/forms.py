"""Forms around the bench."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from django import forms

from chairwright_desk.bench.bridge import InputError, open_bench
from chairwright_desk.bench.texts import lines_known

LONGEST = 200_000


class NewForm(forms.Form):
    """Name and line of a new set-up."""

    name = forms.CharField(label="Name", max_length=80, help_text="Such as: first idea, shorter.")
    line = forms.ChoiceField(label="Product line")

    def __init__(self, *args: Any, team_id: str, **options: Any) -> None:
        super().__init__(*args, **options)
        self.fields["line"].choices = lines_known(team_id)  # type: ignore[attr-defined]


class NameForm(forms.Form):
    """Name, whether it is the chair as it is, and its accessories."""

    name = forms.CharField(label="Name", max_length=80)
    present = forms.BooleanField(label="This is the chair that the client has now", required=False)
    extras = forms.MultipleChoiceField(
        label="Accessories", required=False, widget=forms.CheckboxSelectMultiple
    )
    revision = forms.IntegerField(widget=forms.HiddenInput)

    def __init__(self, *args: Any, known: Iterable[tuple[str, str]], **options: Any) -> None:
        super().__init__(*args, **options)
        self.fields["extras"].choices = list(known)  # type: ignore[attr-defined]


class FileForm(forms.Form):
    """A client file and a places file, as text."""

    client_text = forms.CharField(
        label="Client file",
        max_length=LONGEST,
        widget=forms.Textarea(attrs={"rows": 18, "spellcheck": "false"}),
        help_text="What a file that begins with “format: chairwright client 1” holds.",
    )
    places_text = forms.CharField(
        label="Places file",
        max_length=LONGEST,
        required=False,
        widget=forms.Textarea(attrs={"rows": 10, "spellcheck": "false"}),
        help_text="What a file that begins with “format: chairwright places 1” holds.",
    )
    revision = forms.IntegerField(widget=forms.HiddenInput)

    def clean(self) -> dict[str, Any]:
        """Refuse what cannot be read, with every mistake at its line."""
        data = super().clean() or {}
        if "client_text" in data and "places_text" in data:
            try:
                open_bench(data["client_text"], "everyday", data["places_text"])
            except InputError as error:
                for problem in error.problems:
                    field = "places_text" if problem.where.startswith("places") else "client_text"
                    self.add_error(field, str(problem))
        return data
