"""Forms of signing in and of one's own account."""

from __future__ import annotations

from typing import Any, ClassVar

from django import forms
from django.contrib.auth.password_validation import validate_password
from django.core.exceptions import ValidationError

from chairwright_desk.accounts.models import Team, User
from chairwright_desk.accounts.roles import Role


class SignInForm(forms.Form):
    """Name and password."""

    name = forms.CharField(
        label="Sign-in name",
        max_length=80,
        widget=forms.TextInput(attrs={"autocomplete": "username", "autocapitalize": "none"}),
    )
    password = forms.CharField(
        label="Password",
        max_length=200,
        strip=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "current-password"}),
    )


class OwnForm(forms.ModelForm):  # type: ignore[type-arg]
    """What a person sets for himself or herself."""

    class Meta:
        model = User
        fields = ("shown", "units", "language")
        labels: ClassVar = {"shown": "Name shown", "units": "Lengths in", "language": "Dates"}


class PasswordForm(forms.Form):
    """A new password, typed twice."""

    new_password = forms.CharField(
        label="New password",
        help_text="At least 10 characters; not only figures, not a common word.",
        max_length=200,
        strip=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "new-password"}),
    )
    new_password_again = forms.CharField(
        label="The same once more",
        max_length=200,
        strip=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "new-password"}),
    )

    def clean(self) -> dict[str, Any]:
        """Check the rules of Django's validators, and that both are the same."""
        data = super().clean() or {}
        first, second = data.get("new_password"), data.get("new_password_again")
        if first and second and first != second:
            self.add_error("new_password_again", "This is not the same as the line above.")
        if first:
            try:
                validate_password(first)
            except ValidationError as error:
                self.add_error("new_password", error)
        return data


class PersonForm(forms.Form):
    """A new person, with a first role in a team."""

    name = forms.CharField(label="Sign-in name", max_length=80)
    shown = forms.CharField(label="Name shown", max_length=80)
    team = forms.ModelChoiceField(Team.objects.all(), label="Team", required=False)
    new_team = forms.CharField(label="or a new team", max_length=80, required=False)
    role = forms.ChoiceField(label="Role", choices=Role.choices)

    def clean_name(self) -> str:
        """Return the name in small letters; it must be free."""
        name = str(self.cleaned_data["name"]).strip().lower()
        if User.objects.filter(name=name).exists():
            msg = "Somebody signs in with this name already; choose another."
            raise ValidationError(msg)
        return name

    def clean(self) -> dict[str, Any]:
        """One team must be named."""
        data = super().clean() or {}
        if bool(data.get("team")) == bool(data.get("new_team")):
            self.add_error("team", "Choose a team, or write the name of a new one.")
        return data


class RoleForm(forms.Form):
    """One more role for a person."""

    team = forms.ModelChoiceField(Team.objects.all(), label="Team")
    role = forms.ChoiceField(label="Role", choices=Role.choices)
