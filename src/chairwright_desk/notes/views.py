"""Notes and pictures of a client."""

from __future__ import annotations

from django.contrib import messages
from django.db import transaction
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse

from chairwright_desk.audit.trail import note_change, note_read, note_removal
from chairwright_desk.base.access import find, page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions, save_revised
from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.kept import drop, filled, forget_record
from chairwright_desk.notes.forms import NoteForm, PictureForm
from chairwright_desk.notes.models import Note, Picture, PictureBytes

MOST_PICTURES = 100


def _client(request: Request, client_id: str) -> Client:
    return find(request, Client.objects.select_related("team"), client_id)


@page("note.see")
def show(request: Request, client_id: str) -> HttpResponse:
    """List notes and pictures, the newest first."""
    client = _client(request, client_id)
    note_read(request, client, ["notes"])
    context = {
        "client": client,
        "notes": Note.objects.filter(client=client).select_related("changed_by"),
        "pictures": Picture.objects.filter(client=client),
    }
    return render(request, "notes/show.html", context)


@page("note.change", "GET", "POST")
def new(request: Request, client_id: str) -> HttpResponse:
    """Write a note."""
    client, key = _client(request, client_id), f"notes.new:{client_id}"
    form = filled(request, key, NoteForm)
    if request.method == "POST" and form.is_valid():
        with transaction.atomic():
            note = Note.objects.create(
                client=client, text=form.cleaned_data["text"], changed_by=request.user
            )
            note_change(request, note, ["text"])
        drop(request, key)
        messages.success(request, "The note is saved.")
        return redirect("notes:show", client.pk)
    context = {"client": client, "form": form, "form_key": key}
    return render(request, "notes/note.html", context)


@page("note.change", "GET", "POST")
def change(request: Request, client_id: str, note_id: str) -> HttpResponse:
    """Change a note."""
    client = _client(request, client_id)
    note = find(request, Note.objects.filter(client=client), note_id)
    key = f"notes.note:{note.pk}"
    initial = {"text": note.text, "revision": note.revision}
    form = filled(request, key, NoteForm, initial=initial)
    if request.method == "POST" and form.is_valid():
        values = {"text": form.cleaned_data["text"]}
        try:
            save_revised(request, note, form.cleaned_data["revision"] or 0, values)
        except Overtaken as error:
            back = reverse("notes:show", args=[client.pk])
            return both_versions(request, error, {"text": "Note"}, back)
        drop(request, key)
        messages.success(request, "The note is saved.")
        return redirect("notes:show", client.pk)
    context = {"client": client, "form": form, "form_key": key, "note": note}
    return render(request, "notes/note.html", context)


@page("note.change", "POST")
def remove(request: Request, client_id: str, note_id: str) -> HttpResponse:
    """Remove a note."""
    note = find(request, Note.objects.filter(client=client_id), note_id)
    with transaction.atomic():
        note_removal(request, note)
        forget_record(note.pk)
        note.delete()
    messages.success(request, "The note is removed.")
    return redirect("notes:show", client_id)


@page("picture.change", "GET", "POST")
def add_picture(request: Request, client_id: str) -> HttpResponse:
    """Add a picture."""
    client, key = _client(request, client_id), f"notes.picture:{client_id}"
    form = filled(request, key, PictureForm)
    if request.method == "POST" and form.is_valid() and form.image is not None:
        if Picture.objects.filter(client=client).count() >= MOST_PICTURES:
            form.add_error("file", f"There are {MOST_PICTURES} pictures: remove one first.")
        else:
            _keep(request, client, form)
            drop(request, key)
            messages.success(request, "The picture is kept.")
            return redirect("notes:show", client.pk)
    context = {"client": client, "form": form, "form_key": key}
    return render(request, "notes/picture.html", context)


def _keep(request: Request, client: Client, form: PictureForm) -> None:
    image = form.image
    if image is None:
        return
    with transaction.atomic():
        picture = Picture.objects.create(
            client=client,
            caption=form.cleaned_data["caption"],
            kind=image.kind,
            width=image.width,
            height=image.height,
            size=len(image.content),
            changed_by=request.user,
        )
        PictureBytes.objects.create(picture=picture, content=image.content)
        note_change(request, picture, ["caption", "content"])


@page("picture.see")
def picture(request: Request, client_id: str, picture_id: str) -> HttpResponse:
    """Serve one picture to those who may see it."""
    found = find(request, Picture.objects.filter(client=client_id), picture_id)
    note_read(request, found)
    content = bytes(PictureBytes.objects.get(picture=found).content)
    answer = HttpResponse(content, content_type=f"image/{found.kind}")
    answer["Content-Disposition"] = "inline"
    return answer


@page("picture.change", "POST")
def remove_picture(request: Request, client_id: str, picture_id: str) -> HttpResponse:
    """Remove a picture."""
    found = find(request, Picture.objects.filter(client=client_id), picture_id)
    with transaction.atomic():
        note_removal(request, found)
        found.delete()
    messages.success(request, "The picture is removed.")
    return redirect("notes:show", client_id)
