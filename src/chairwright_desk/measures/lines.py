"""Writing a text for the engineering line by line, knowing which field of a form each line is.

Every value has a line of its own, so that what the engineering says of ``client:12`` comes back
to the field that stands there.
"""

from __future__ import annotations

import json
import re
from dataclasses import dataclass, field

from chairwright_desk.measures.typed import plain_number, tidied

_BREAKS = re.compile("[\x7f-\x9f\u2028\u2029\ufeff]")
"""Signs that YAML takes for line ends or refuses; they stand in the text by their numbers."""
_LINE = re.compile(r"[a-z]+:(\d+)(?::\s*(\S+))?")


@dataclass
class Written:
    """A text and the fields that its lines come from.

    Parameters
    ----------
    rows : list of str
    fields : dict of int to str
        Line number to the field's name.
    """

    rows: list[str] = field(default_factory=list)
    fields: dict[int, str] = field(default_factory=dict)

    @property
    def text(self) -> str:
        """The whole text."""
        return "\n".join(self.rows) + "\n"

    def put(self, depth: int, words: str, name: str = "") -> None:
        """Write one line.

        Parameters
        ----------
        depth : int
            Levels of indentation.
        words : str
            As it stands in the text.
        name : str
            Of the field; empty for a line of nobody's.
        """
        self.rows.append("  " * depth + words)
        if name:
            self.fields[len(self.rows)] = name

    def text_of(self, depth: int, key: str, value: str, name: str = "") -> None:
        """Write a key with a text, unless the text is empty.

        Parameters
        ----------
        depth : int
        key, value : str
        name : str
            Of the field.
        """
        if value.strip():
            self.put(depth, f"{key}: {quoted(value.strip())}", name)

    def number_of(self, depth: int, key: str, value: str, name: str = "") -> None:
        """Write a key with a plain number, unless it is empty; another text is left as a text.

        Parameters
        ----------
        depth : int
        key, value : str
        name : str
            Of the field.
        """
        if value.strip():
            number = plain_number(value)
            told = quoted(value.strip()) if number is None else f"{number:.10g}"
            self.put(depth, f"{key}: {told}", name)

    def end_of(self, depth: int, key: str, value: str, name: str = "") -> None:
        """Write an end of a range: a plain number, or a value with its unit.

        Parameters
        ----------
        depth : int
        key, value : str
        name : str
            Of the field.
        """
        self.number_of(depth, key, tidied(value), name)

    def field_at(self, where: str) -> str:
        """Return the field that ``client:12: measures.hip_width`` is about; empty for none."""
        found = _LINE.match(where)
        return self.fields.get(int(found[1]), "") if found else ""


def quoted(text: str) -> str:
    """Return a text in double quotes, safe in the file whatever it holds."""
    told = json.dumps(text, ensure_ascii=False)
    return _BREAKS.sub(lambda found: f"\\u{ord(found[0]):04x}", told)


def key_at(where: str) -> str:
    """Return the last key of ``places:12: places.clear_width``; empty for none."""
    found = _LINE.match(where)
    return found[2].rpartition(".")[2] if found and found[2] else ""
