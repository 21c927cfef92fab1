"""Reading one mapping of a hand-written file field by field, gathering every problem."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Any

from chairwright.errors import InputError, Problem
from chairwright.reading import YamlSource
from chairwright.units import Dimension, Quantity, parse_quantity
from chairwright.validation import place, shown, suggest
from chairwright.yaml_events import Key, KeyPath


class Findings:
    """Everything wrong with one file, gathered so that it can be reported at once.

    Parameters
    ----------
    source : YamlSource
        The file.
    """

    def __init__(self, source: YamlSource) -> None:
        self.source = source
        self._found: list[tuple[int, Problem]] = []

    def add(self, at: KeyPath, problem: Problem) -> None:
        """Keep a problem that was found at a place of the file."""
        line = int(self.source.line_of(at).rpartition(":")[2])
        self._found.append((line, problem))

    def raise_any(self) -> None:
        """Raise one error with every problem, by line; do nothing when there is none.

        Raises
        ------
        InputError
        """
        if self._found:
            self._found.sort(key=lambda found: found[0])
            raise InputError(*(problem for _, problem in self._found))


class Fields:
    """One mapping of a file and the problems that its reading brings up.

    A reader that finds nothing usable notes a problem and returns None (or the default), so
    that reading goes on and the user sees all problems at once.

    Parameters
    ----------
    findings : Findings
        Where problems are gathered.
    data : mapping
        The mapping's content.
    at : tuple
        Its place in the file.
    """

    def __init__(self, findings: Findings, data: Mapping[Key, Any], at: KeyPath = ()) -> None:
        self.findings = findings
        self.data = data
        self.at = at

    def where(self, key: Key) -> str:
        """Return ``file:line`` of a field, or of what is around it."""
        return self.findings.source.line_of((*self.at, key))

    def refuse(self, key: Key, must: str, got: str, remedy: str) -> None:
        """Note a problem with a field.

        Parameters
        ----------
        key : str or int
        must, got, remedy : str
            As for `chairwright.errors.Problem`.
        """
        at = (*self.at, key)
        where = place(self.findings.source, at)
        self.findings.add(at, Problem(where, must, got, remedy))

    def check_keys(self, *known: str, hints: Mapping[str, str] | None = None) -> None:
        """Note every key that is not known.

        Parameters
        ----------
        *known : str
        hints : mapping of str to str, optional
            Remedy for a key that people are likely to try.
        """
        for key in self.data:
            if key not in known:
                remedy = (hints or {}).get(str(key)) or suggest(key, known)
                self.refuse(key, "a key must be one that this file knows", repr(key), remedy)

    def has(self, key: str) -> bool:
        """Return whether a field stands here with a value."""
        return self.data.get(key) is not None

    def text(self, key: Key, example: str = "", longest: int = 120) -> str | None:
        """Return a text field as it was typed; None when it is missing or wrong.

        Parameters
        ----------
        key : str or int
        example : str
            Shown when the field is missing; empty makes the field optional.
        longest : int
            Most characters.
        """
        value = self.data.get(key)
        if value is None:
            if example:
                self.refuse(key, f"{key} must be given", "nothing", f"Add {key}: {example}")
            return None
        typed = self.findings.source.text_of((*self.at, key)).strip()
        if isinstance(value, (bool, list, Mapping)) or not 0 < len(typed) <= longest:
            must = f"it must be text of at most {longest} characters"
            self.refuse(key, must, shown(value), "Shorten it or write it in quotes.")
            return None
        return typed

    def choice(self, key: str, options: Collection[str], default: str = "") -> str | None:
        """Return one of a few words; None after noting a problem.

        Parameters
        ----------
        key : str
        options : collection of str
        default : str
            Makes the field optional.
        """
        value = self.data.get(key)
        if value is None and default:
            return default
        if value is None:
            remedy = f"Add {key}: {' or '.join(options)}"
            self.refuse(key, f"{key} must be given", "nothing", remedy)
            return None
        if isinstance(value, str) and value in options:
            return value
        must = f"it must be one of {', '.join(options)}"
        self.refuse(key, must, shown(value), suggest(value, options))
        return None

    def number(self, key: str, low: float, high: float) -> float | None:
        """Return a plain number; None when it is not there or after noting a problem.

        Parameters
        ----------
        key : str
        low, high : float
            Both ends are allowed.
        """
        value = self.data.get(key)
        if value is None:
            return None
        if isinstance(value, (int, float)) and not isinstance(value, bool) and low <= value <= high:
            return float(value)
        must = f"it must be a plain number from {low:g} to {high:g}"
        self.refuse(key, must, shown(value), "Correct the number; leave out any unit.")
        return None

    def flag(self, key: str) -> bool:
        """Return a yes or no field; False when it is not there."""
        value = self.data.get(key, False)
        if isinstance(value, bool):
            return value
        self.refuse(key, "it must be true or false", shown(value), "Write true or false.")
        return False

    def quantity(self, key: Key, dimension: Dimension, low: float = 0.0) -> Quantity | None:
        """Return a value with its unit; None after noting a problem.

        Parameters
        ----------
        key : str or int
        dimension : {"length", "mass", "angle"}
        low : float [mm, kg or degrees]
            Least value; zero refuses what is negative.
        """
        value = self.data.get(key)
        if value is None:
            self.refuse(key, "a value must be given", "nothing", "Write it, or take the line out.")
            return None
        where = place(self.findings.source, (*self.at, key))
        try:
            found = parse_quantity(value, dimension, where)
        except InputError as error:
            for problem in error.problems:
                self.findings.add((*self.at, key), problem)
            return None
        if found.value < low:
            self.refuse(key, "it must not be negative", found.typed, "Take the minus sign out.")
            return None
        return found

    def child(self, key: Key) -> Fields | None:
        """Return a field that is itself a mapping; None when it is not there."""
        value = self.data.get(key)
        if value is None:
            return None
        if isinstance(value, Mapping):
            return Fields(self.findings, value, (*self.at, key))
        remedy = "Indent key: value lines under it."
        self.refuse(key, "it must hold keys and values", shown(value), remedy)
        return None

    def children(self, key: str) -> list[Fields]:
        """Return a field that is a list of mappings; empty when it is not there."""
        value = self.data.get(key)
        if value is None:
            return []
        if not isinstance(value, list):
            remedy = "Start each entry with '- ' on a line of its own."
            self.refuse(key, "it must be a list", shown(value), remedy)
            return []
        holder = self.inside(key, value)
        return [child for child in map(holder.child_or_problem, range(len(value))) if child]

    def inside(self, key: Key, items: list[Any]) -> Fields:
        """Return a list's items as fields named by their positions."""
        return Fields(self.findings, dict(enumerate(items)), (*self.at, key))

    def child_or_problem(self, key: Key) -> Fields | None:
        """Return a mapping that must be there; None after noting a problem."""
        if self.data.get(key) is None:
            remedy = "Fill the entry in or take it out."
            self.refuse(key, "an entry must hold keys and values", "nothing", remedy)
        return self.child(key)


def open_file(source: YamlSource, kind: str, reference: str) -> Fields:
    """Check a file's format line and return its top mapping.

    Parameters
    ----------
    source : YamlSource
    kind : str
        What the format line must say, for example ``"chairwright client 1"``.
    reference : str
        Page that describes the format.

    Returns
    -------
    Fields

    Raises
    ------
    InputError
        When the file is of another kind or version.
    """
    found = source.data.get("format")
    if found != kind:
        must = f"the file must say 'format: {kind}'"
        remedy = f"Name a file of that kind, or write that line at its top; see {reference}."
        raise InputError(Problem(source.line_of(("format",)), must, shown(found), remedy))
    return Fields(Findings(source), source.data)
