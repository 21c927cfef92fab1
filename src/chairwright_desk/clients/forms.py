"""Forms of the client record."""

from __future__ import annotations

from typing import Any

from django import forms

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
