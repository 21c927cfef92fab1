"""Notes and pictures: told by content, camera data taken out, served with permission."""

from __future__ import annotations

import io
from contextlib import suppress
from typing import Any

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from PIL import Image as Pillow

from chairwright_desk.notes.images import NoPicture, read_image
from chairwright_desk.notes.models import Picture

from ..kit.world import World
from ..standing.notes import made, png


def jpeg(*, turned: int = 1, progressive: bool = False, mark: bytes = b"") -> bytes:
    """A JPEG written by Pillow, another program, with a camera's notes."""
    image = Pillow.effect_noise((64, 48), 60.0).convert("RGB")
    notes = Pillow.Exif()
    notes[0x0112] = turned
    notes[0x010F] = "camera of the clinic"
    out = io.BytesIO()
    image.save(out, "JPEG", exif=notes, progressive=progressive, comment=mark or b"where it was")
    return out.getvalue()


def points(raw: bytes) -> Any:
    return list(Pillow.open(io.BytesIO(raw)).convert("RGB").tobytes())


@pytest.mark.parametrize("progressive", [False, True])
@pytest.mark.parametrize("turned", [1, 6, 8])
def test_a_photograph_keeps_its_points_and_its_way_up_and_loses_the_rest(
    turned: int, progressive: bool
) -> None:
    """Against Pillow, which reads both."""
    raw = jpeg(turned=turned, progressive=progressive)
    kept = read_image(raw)
    assert (kept.kind, kept.width, kept.height) == ("jpeg", 64, 48)
    assert points(kept.content) == points(raw)
    exif = dict(Pillow.open(io.BytesIO(kept.content)).getexif())
    assert exif == ({} if turned == 1 else {0x0112: turned})
    assert b"camera" not in kept.content
    assert b"where it was" not in kept.content


def test_what_hangs_behind_a_picture_is_cut_off() -> None:
    for raw in (jpeg(), png()):
        kept = read_image(raw + b"<script>alert(1)</script>")
        assert b"script" not in kept.content
        assert points(kept.content) == points(raw)


def test_words_in_a_png_are_taken_out() -> None:
    from PIL.PngImagePlugin import PngInfo

    words, out = PngInfo(), io.BytesIO()
    words.add_text("Author", "somebody")
    Pillow.new("RGBA", (9, 7), (10, 20, 30, 40)).save(out, "PNG", pnginfo=words)
    kept = read_image(out.getvalue())
    assert b"somebody" not in kept.content
    assert (kept.width, kept.height) == (9, 7)
    assert points(kept.content) == points(out.getvalue())


def test_anything_else_is_refused_with_a_reason() -> None:
    gif = io.BytesIO()
    Pillow.new("P", (4, 4)).save(gif, "GIF")
    others = [gif.getvalue(), b"", b"%PDF-1.7", b"<svg/>", b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n"]
    for raw in others:
        with pytest.raises(NoPicture):
            read_image(raw)


@pytest.mark.parametrize("whole", [jpeg(), png()], ids=["jpeg", "png"])
def test_a_picture_cut_short_anywhere_is_refused(whole: bytes) -> None:
    for length in range(0, len(whole) - 1, 7):
        with pytest.raises(NoPicture):
            read_image(whole[:length])


def test_a_changed_byte_never_brings_the_desk_down() -> None:
    for whole in (jpeg(), png()):
        for at in range(0, len(whole), 3):
            changed = whole[:at] + bytes([whole[at] ^ 0x55]) + whole[at + 1 :]
            with suppress(NoPicture):
                assert read_image(changed).content


def upload(world: World, name: str, raw: bytes) -> Any:
    address = reverse("notes:add-picture", args=[world.client.pk])
    data = {"file": SimpleUploadedFile(name, raw), "caption": "the kerb"}
    return world.visitor("clinician").post(address, data)


def test_a_wrong_file_is_said_at_its_field_and_the_words_stay(world: World) -> None:
    answer = upload(world, "photo.jpg", b"%PDF-1.7 not a photograph")
    told = answer.content.decode()
    assert "Only JPEG and PNG" in told
    assert 'value="the kerb"' in told
    assert not Picture.objects.exists()
    large = upload(world, "large.png", png() + b"\0" * 10_000_000)
    assert "larger than 10 MB" in large.content.decode()


def test_a_picture_is_served_by_its_content_and_to_those_who_may(world: World) -> None:
    assert upload(world, "page.html", jpeg()).status_code == 302
    picture = Picture.objects.get()
    address = reverse("notes:picture", args=[world.client.pk, picture.pk])
    answer = world.visitor("reader").get(address)
    assert answer.headers["Content-Type"] == "image/jpeg"
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    assert Pillow.open(io.BytesIO(answer.content)).size == (64, 48)
    assert world.visitor("builder").get(address).status_code == 403
    assert world.visitor("clinician", other=True).get(address).status_code == 404


def test_two_who_change_a_note_are_shown_both(world: World) -> None:
    note = made(world)
    address = reverse("notes:change", args=[world.client.pk, note.pk])
    first = world.visitor("clinician").post(address, {"text": "one", "revision": 1})
    second = world.visitor("specialist").post(address, {"text": "two", "revision": 1})
    assert first.status_code == 302
    assert second.status_code == 409
    assert "two" in second.content.decode()


def test_the_page_says_who_sees_a_note_and_it_is_so(world: World) -> None:
    note = made(world)
    page = world.visitor("clinician").get(reverse("notes:new", args=[world.client.pk]))
    assert "No name. Builders do not see it" in page.content.decode()
    address = reverse("notes:show", args=[world.client.pk])
    assert note.text.splitlines()[0] in world.visitor("reader").get(address).content.decode()
    assert world.visitor("builder").get(address).status_code == 403
