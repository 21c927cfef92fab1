"""Forms of the client record."""

from __future__ import annotations

from datetime import date
from typing import Any

from django import forms
from django.utils import timezone

from chairwright_desk.accounts.models import Team, User


class ClientForm(forms.Form):
    """Reference number, team and how long the record is kept."""

    reference = forms.CharField(
        label="Reference number",
        help_text="Letters and figures that say nothing of the person, such as AVG-001.",
        max_length=40,
    )
    team = forms.ModelChoiceField(Team.objects.none(), label="Team", empty_label=None)
    keep_until = forms.DateField(
        label="Kept until",
        help_text="When the record is due to be removed.",
        required=False,
        widget=forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d"),
    )

    def __init__(self, *args: Any, user: User, **options: Any) -> None:
        super().__init__(*args, **options)
        teams = user.teams_for("client.change")
        self.fields["team"].queryset = Team.objects.filter(pk__in=teams)  # type: ignore[attr-defined]


class ChangeForm(forms.Form):
    """What may be changed later; `revision` says which version was shown."""

    reference = ClientForm.base_fields["reference"]
    keep_until = ClientForm.base_fields["keep_until"]
    revision = forms.IntegerField(widget=forms.HiddenInput)


NOT_REMEMBERED = {"autocomplete": "off", "spellcheck": "false"}
"""The browser neither keeps what is typed nor sends it to be checked."""
EARLIEST_BIRTH = date(1900, 1, 1)


class IdentityForm(forms.Form):
    """Who the client is; everything may be left empty."""

    name = forms.CharField(
        label="Name",
        max_length=120,
        required=False,
        widget=forms.TextInput(attrs=NOT_REMEMBERED),
    )
    born = forms.DateField(
        label="Date of birth",
        help_text="Growth takes the age from the measures, not from here.",
        required=False,
        widget=forms.DateInput(attrs={"type": "date", **NOT_REMEMBERED}, format="%Y-%m-%d"),
    )
    diagnosis = forms.CharField(
        label="Diagnosis",
        max_length=2000,
        required=False,
        widget=forms.Textarea(attrs={"rows": 5, **NOT_REMEMBERED}),
    )
    revision = forms.IntegerField(min_value=0, widget=forms.HiddenInput)

    def clean_born(self) -> date | None:
        """Refuse a day on which nobody who sits in a chair was born."""
        born: date | None = self.cleaned_data["born"]
        if born is not None and not EARLIEST_BIRTH <= born <= timezone.localdate():
            msg = "This must be a day from 1900 to today. Look at the year."
            raise forms.ValidationError(msg)
        return born

    def clean_diagnosis(self) -> str:
        """Write every end of a line in one way, so that what is sent unchanged is unchanged."""
        return str(self.cleaned_data["diagnosis"]).replace("\r\n", "\n")
