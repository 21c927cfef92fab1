"""Client files and places files, as text or as JSON."""

from __future__ import annotations

import json
from typing import Annotated, Any

from pydantic import Field, JsonValue

from chairwright_desk.api.shapes.base import Given, Revision, Text


class FileGiven(Given):
    """A file as text; its revision stands for its content, 0 where there is none yet."""

    text: str
    revision: int


class FilePut(Revision):
    """A file, as text or as the same in JSON: one of both."""

    text: Text | None = None
    file: Annotated[
        dict[str, JsonValue] | None,
        Field(description="The fields of the file, with its format."),
    ] = None

    def as_text(self) -> str | None:
        """Return the text; None when not exactly one of both was sent."""
        if (self.text is None) == (self.file is None):
            return None
        return self.text if self.text is not None else yaml_of(self.file)


def yaml_of(value: Any) -> str:
    """Return a JSON value as YAML, which JSON is a part of: one field a line.

    Parameters
    ----------
    value : dict
    """
    told = sorted(value.items(), key=lambda pair: pair[0] != "format")
    return "".join(
        f"{json.dumps(name)}: {json.dumps(each, ensure_ascii=False)}\n" for name, each in told
    )
