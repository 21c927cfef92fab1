"""JPEG and PNG pictures, told by their content; what a camera writes besides is taken out.

Only the parts that make the picture are kept: no place, no day, no camera, nothing behind the
end of the picture. The way up that a camera notes is kept, or photographs would lie on their side.
"""

from __future__ import annotations

import struct
import zlib
from dataclasses import dataclass

LARGEST_BYTES = 10_000_000
LONGEST_SIDE = 12_000
_PNG = b"\x89PNG\r\n\x1a\n"
_PNG_KEPT = {b"IHDR", b"PLTE", b"tRNS", b"gAMA", b"sRGB", b"IDAT", b"IEND"}
_SOF = {*range(0xC0, 0xD0)} - {0xC4, 0xC8, 0xCC}
_ORIENTATION = 0x0112


class NoPicture(ValueError):
    """The content is no picture that is taken; the text says why and what to do."""


@dataclass(frozen=True)
class Image:
    """A picture as it is kept."""

    kind: str
    width: int
    height: int
    content: bytes


def read_image(raw: bytes) -> Image:
    """Check a picture by its content and keep what makes it.

    Parameters
    ----------
    raw : bytes

    Raises
    ------
    NoPicture
        Another kind of file, a damaged one, or one that is too large.
    """
    if len(raw) > LARGEST_BYTES:
        msg = "The picture is larger than 10 MB. Send a smaller one."
        raise NoPicture(msg)
    try:
        if raw.startswith(_PNG):
            image = _png(raw)
        elif raw.startswith(b"\xff\xd8\xff"):
            image = _jpeg(raw)
        else:
            msg = "Only JPEG and PNG pictures are taken; this is another kind of file."
            raise NoPicture(msg)
    except (struct.error, IndexError):
        raise _damaged() from None
    if not (0 < image.width <= LONGEST_SIDE and 0 < image.height <= LONGEST_SIDE):
        msg = f"A side of the picture must be 1 to {LONGEST_SIDE} points."
        raise NoPicture(msg)
    return image


def _damaged() -> NoPicture:
    return NoPicture("The picture is damaged or not whole. Take it again or send another copy.")


def _png(raw: bytes) -> Image:
    kept, at, size, names = [_PNG], len(_PNG), (0, 0), list[bytes]()
    while not names or names[-1] != b"IEND":
        length, name = struct.unpack(">I4s", raw[at : at + 8])
        body = raw[at + 8 : at + 8 + length]
        (check,) = struct.unpack(">I", raw[at + 8 + length : at + 12 + length])
        if zlib.crc32(name + body) != check:
            raise _damaged()
        if not names:
            if name != b"IHDR" or length != 13:
                raise _damaged()
            size = struct.unpack(">II", body[:8])
        if name in _PNG_KEPT:
            kept.append(raw[at : at + 12 + length])
        names.append(name)
        at += 12 + length
    if b"IDAT" not in names:
        raise _damaged()
    return Image("png", size[0], size[1], b"".join(kept))


def _jpeg(raw: bytes) -> Image:
    kept, at, size, turned = [b"\xff\xd8"], 2, (0, 0), 1
    scanned = False
    while True:
        if raw[at] != 0xFF:
            raise _damaged()
        while raw[at + 1] == 0xFF:
            at += 1
        mark = raw[at + 1]
        if mark == 0xD9:
            break
        (length,) = struct.unpack(">H", raw[at + 2 : at + 4])
        end = at + 2 + length
        body = raw[at + 4 : end]
        if length < 2 or end > len(raw):
            raise _damaged()
        if mark in _SOF:
            size = struct.unpack(">HH", body[1:5])
        if mark == 0xE1 and body.startswith(b"Exif\0\0"):
            turned = _orientation(body[6:])
        if mark == 0xDA:
            scanned, end = True, _end_of_scan(raw, end)
        if mark in (0xE0, 0xEE) or not (0xE0 <= mark <= 0xEF or mark == 0xFE):
            kept.append(raw[at:end])
        at = end
    if not scanned:
        raise _damaged()
    if turned != 1:
        kept.insert(1, _turned(turned))
    return Image("jpeg", size[1], size[0], b"".join([*kept, b"\xff\xd9"]))


def _end_of_scan(raw: bytes, at: int) -> int:
    """Where the next mark stands behind the coded points."""
    while True:
        at = raw.index(b"\xff", at) if b"\xff" in raw[at:] else len(raw)
        follows = raw[at + 1]
        if follows != 0 and not 0xD0 <= follows <= 0xD7:
            return at
        at += 2


def _orientation(tiff: bytes) -> int:
    """The way up that a camera notes, 1 to 8; 1 when it notes none."""
    order = {b"II": "<", b"MM": ">"}.get(tiff[:2])
    if order is None or len(tiff) < 14:
        return 1
    (first,) = struct.unpack(f"{order}I", tiff[4:8])
    if first + 2 > len(tiff):
        return 1
    (count,) = struct.unpack(f"{order}H", tiff[first : first + 2])
    for place in range(first + 2, first + 2 + 12 * min(count, 200), 12):
        entry = tiff[place : place + 12]
        if len(entry) == 12 and struct.unpack(f"{order}H", entry[:2])[0] == _ORIENTATION:
            (value,) = struct.unpack(f"{order}H", entry[8:10])
            return int(value) if 1 <= value <= 8 else 1
    return 1


def _turned(way: int) -> bytes:
    """An Exif segment that says the way up and nothing else."""
    entry = struct.pack(">HHIHH", _ORIENTATION, 3, 1, way, 0)
    tiff = b"MM\0*" + struct.pack(">I", 8) + struct.pack(">H", 1) + entry + struct.pack(">I", 0)
    body = b"Exif\0\0" + tiff
    return b"\xff\xe1" + struct.pack(">H", len(body) + 2) + body
