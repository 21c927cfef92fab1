"""Notes and pictures of a client."""

from __future__ import annotations

import struct
import zlib
from typing import Any, cast

from django.core.files.uploadedfile import SimpleUploadedFile

from chairwright_desk.notes.models import Note, Picture, PictureBytes

from ..kit.standing import Standing
from ..kit.world import World


def png(width: int = 40, height: int = 30) -> bytes:
    """A grey picture, written after the PNG specification (ISO/IEC 15948)."""

    def chunk(name: bytes, body: bytes) -> bytes:
        return (
            struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))
        )

    rows = b"".join(b"\0" + b"\x9c" * width for _ in range(height))
    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    parts = ((b"IHDR", head), (b"IDAT", zlib.compress(rows)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(chunk(name, body) for name, body in parts)


def made(world: World) -> Note:
    """A note and a picture of AVG-001, made once a world."""
    if "note" not in world.made:
        world.made["note"] = Note.objects.create(client=world.client, text="Sits well.\nOnce more.")
        picture = Picture.objects.create(
            client=world.client, caption="the doorway", kind="png", width=40, height=30, size=90
        )
        PictureBytes.objects.create(picture=picture, content=png())
        world.made["picture"] = picture
    return cast(Note, world.made["note"])


def _client(world: World) -> tuple[str]:
    made(world)
    return (world.client.pk,)


def _note(world: World) -> tuple[str, str]:
    return (world.client.pk, made(world).pk)


def _picture(world: World) -> tuple[str, str]:
    made(world)
    return (world.client.pk, cast(Picture, world.made["picture"]).pk)


def _text(_world: World) -> dict[str, Any]:
    return {"text": "The cushion is worn."}


def _changed(world: World) -> dict[str, Any]:
    made(world).refresh_from_db()
    return {**_text(world), "revision": made(world).revision}


def _file(_world: World) -> dict[str, Any]:
    return {"file": SimpleUploadedFile("a.png", png()), "caption": "the kerb"}


ENTRIES = [
    Standing("notes:show", _client),
    Standing("notes:new", _client, _text),
    Standing("notes:change", _note, _changed),
    Standing("notes:remove", _note, look=False),
    Standing("notes:add-picture", _client, _file),
    Standing("notes:picture", _picture, look=False),
    Standing("notes:remove-picture", _picture, look=False),
]
