"""Forms of notes and pictures."""

from __future__ import annotations

from typing import Any

from django import forms

from chairwright_desk.notes.images import LARGEST_BYTES, Image, NoPicture, read_image


class NoteForm(forms.Form):
    """The remark."""

    text = forms.CharField(
        label="Note",
        max_length=4000,
        widget=forms.Textarea(attrs={"rows": 5}),
        help_text="No name. Builders do not see it, and no paper of the desk prints it.",
    )
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)


class PictureForm(forms.Form):
    """A picture and what it shows."""

    file = forms.FileField(
        label="Picture",
        help_text="JPEG or PNG, up to 10 MB. Place, day and camera are taken out of it.",
        widget=forms.ClearableFileInput(attrs={"accept": "image/jpeg,image/png"}),
    )
    caption = forms.CharField(
        label="What it shows",
        max_length=200,
        help_text="Read out to people who do not see it. No name.",
    )

    image: Image | None = None

    def clean_file(self) -> Any:
        """Check the picture by its content."""
        upload = self.cleaned_data["file"]
        if upload.size > LARGEST_BYTES:
            msg = "The picture is larger than 10 MB. Send a smaller one."
            raise forms.ValidationError(msg)
        try:
            self.image = read_image(upload.read())
        except NoPicture as error:
            raise forms.ValidationError(str(error)) from None
        return upload
