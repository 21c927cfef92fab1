"""Forms of the lines."""

from __future__ import annotations

from typing import Any

from django import forms

from chairwright_desk.accounts.models import Team, User
from chairwright_desk.lines.posted import MOST_BYTES

FILE = forms.FileField(
    label="Line file",
    required=False,
    help_text="A text file (YAML), up to 300 kB. It takes the place of the text below.",
    widget=forms.FileInput(attrs={"accept": ".yaml,.yml,.txt,text/plain"}),
)
TEXT = forms.CharField(
    label="Or its text",
    required=False,
    strip=False,
    widget=forms.Textarea(attrs={"rows": 18, "spellcheck": "false", "class": "code"}),
)


class TextForm(forms.Form):
    """A line file, as a file or as text."""

    file = FILE
    text = TEXT

    def __init__(self, *args: Any, trouble: str = "", **options: Any) -> None:
        super().__init__(*args, **options)
        self.trouble = trouble

    def clean(self) -> dict[str, Any]:
        """Ask for one of the two, and for plain text of a sensible size."""
        data = super().clean() or {}
        text = data.get("text", "").replace("\r\n", "\n")
        data["text"] = text
        if self.trouble:
            self.add_error("file", self.trouble)
        elif not text.strip():
            self.add_error("file", "Choose a file, or write its text below.")
        if len(text.encode("utf-8", "surrogatepass")) > MOST_BYTES:
            self.add_error("text", f"At most {MOST_BYTES:,} bytes; a line file is a few pages.")
        return data


class NewForm(TextForm):
    """A line that the team does not have yet."""

    team = forms.ModelChoiceField(Team.objects.none(), label="Team", empty_label=None)
    field_order = ("team", "file", "text")

    def __init__(self, *args: Any, user: User, **options: Any) -> None:
        super().__init__(*args, **options)
        teams = user.teams_for("line.change")
        self.fields["team"].queryset = Team.objects.filter(pk__in=teams).order_by("name")  # type: ignore[attr-defined]


class ChangeForm(TextForm):
    """The next version of a line; `revision` says which was shown."""

    revision = forms.IntegerField(widget=forms.HiddenInput)
