"""The text of a line file as it comes from a form: a file, or text that was typed."""

from __future__ import annotations

from django.core.files.uploadedfile import UploadedFile

from chairwright_desk.base.requests import Request

MOST_BYTES = 300_000
KINDS = {
    b"%PDF": "a PDF",
    b"PK\x03\x04": "a packed file, such as a spreadsheet or a text program's own",
    b"\x89PNG": "a picture",
    b"\xff\xd8\xff": "a picture",
    b"GIF8": "a picture",
    b"\xd0\xcf\x11\xe0": "a file of an office program",
    b"\x1f\x8b": "a packed file",
    b"\x7fELF": "a program",
    b"MZ": "a program",
}
PLAIN = "A line file is plain text (YAML), as a text editor saves it."


def take_file(request: Request) -> str:
    """Put a file's text where the form has its text field; what was typed stays when it cannot be.

    Parameters
    ----------
    request : Request
        Its ``POST`` holds the text afterwards, so that it is kept whatever comes next.

    Returns
    -------
    str
        What is wrong with the file; empty when nothing is, or there is none.
    """
    file = request.FILES.get("file")
    if not isinstance(file, UploadedFile):
        return ""
    trouble, text = _read(file)
    if trouble:
        return trouble
    fields = request.POST.copy()
    fields["text"] = text
    request.POST = fields  # type: ignore[assignment]
    return ""


def _read(file: UploadedFile[bytes]) -> tuple[str, str]:
    """What is wrong, or the text."""
    size = file.size or 0
    start = file.read(4096)
    kind = next((words for mark, words in KINDS.items() if start.startswith(mark)), "")
    if kind:
        return f"This is {kind}. {PLAIN}", ""
    if size > MOST_BYTES:
        return (
            f"This file has {size:,} bytes; the desk takes line files of up to {MOST_BYTES:,}. "
            "Check that it is the right file; a line file is a few pages of text."
        ), ""
    raw = start + file.read()
    if not raw.strip():
        return "This file is empty. Fill it in, or choose another.", ""
    if b"\x00" in raw:
        return f"This is no text. {PLAIN}", ""
    return _decoded(raw)


def _decoded(raw: bytes) -> tuple[str, str]:
    try:
        return "", raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        byte = error.object[error.start]
        return (
            f"Line {line} of this file holds the byte 0x{byte:02X}, which is not UTF-8. Save the "
            "file as UTF-8 with a text editor and choose it again."
        ), ""
