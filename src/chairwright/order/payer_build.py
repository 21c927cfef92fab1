"""From a scheme file as written, checked, to the scheme that the program uses."""

from __future__ import annotations

from chairwright.order.payer_model import (
    Backing,
    Certainty,
    ClassTest,
    Disputed,
    Document,
    Entry,
    Fact,
    FactTest,
    Group,
    Joined,
    Origin,
    Reading,
    Scheme,
    Source,
    Test,
)
from chairwright.order.payer_schema import (
    WrittenAccessory,
    WrittenClass,
    WrittenEntry,
    WrittenFact,
    WrittenScheme,
    WrittenTest,
)
from chairwright.reading import YamlSource
from chairwright.yaml_events import KeyPath


def build_scheme(written: WrittenScheme, source: YamlSource) -> Scheme:
    """Build the scheme of a file without mistakes.

    Parameters
    ----------
    written : WrittenScheme
    source : YamlSource
        The file, for each code's ``file:line``.

    Returns
    -------
    Scheme
    """
    return _Builder(written, source).scheme()


class _Builder:
    def __init__(self, written: WrittenScheme, source: YamlSource) -> None:
        self.written = written
        self.file = source
        self.sources = {
            key: Source(key, each.citation, each.certainty, each.dated or "", each.note or "")
            for key, each in written.sources.items()
        }
        self.documents = {
            key: Document(key, each.title, self.backing(each.source, each.certainty))
            for key, each in written.documents.items()
        }

    def scheme(self) -> Scheme:
        written = self.written
        return Scheme(
            name=written.name,
            title=written.title,
            payer=written.payer,
            country=written.country,
            edition=written.edition,
            dated=written.dated,
            note=written.note,
            sources=self.sources,
            facts={name: self.fact(name, each) for name, each in written.facts.items()},
            groups=self.groups(),
            accessories=tuple(
                self.accessory(each, ("accessories", at))
                for at, each in enumerate(written.accessories)
            ),
            covered=None if written.covered is None else self.test(written.covered, None),
            always=tuple(self.documents[key] for key in written.always),
            included={
                name: self.backing(each.source)
                for each in written.included
                for name in each.choices
            },
            not_listed=self.not_listed(),
            parts=written.parts,
            path=str(self.file.path),
        )

    def backing(self, key: str, certainty: Certainty | None = None) -> Backing:
        source = self.sources[key]
        return Backing(source, certainty or source.certainty)

    def fact(self, name: str, written: WrittenFact) -> Fact:
        backing = None
        if written.source is not None:
            backing = self.backing(written.source, written.certainty)
        return Fact(
            name=name,
            kind=written.kind,
            label=written.label,
            ask=written.ask,
            unit=written.unit or "",
            digits=written.digits,
            words=written.words,
            origin=_origin(written),
            unless_told="" if written.unless_told is None else str(written.unless_told),
            backing=backing,
        )

    def groups(self) -> tuple[Group, ...]:
        found = []
        for at, group in enumerate(self.written.groups):
            classes = tuple(
                self.class_(each, ("groups", at, "classes", number))
                for number, each in enumerate(group.classes)
            )
            found.append(Group(group.name, group.title, group.ask, classes))
        return tuple(found)

    def entry(self, written: WrittenEntry, when: WrittenTest | None, at: KeyPath) -> Entry:
        backing = self.backing(written.source, written.certainty)
        return Entry(
            code=written.code,
            title=written.title,
            backing=backing,
            when=None if when is None else self.test(when, backing),
            covered=None if written.covered is None else self.test(written.covered, backing),
            documents=tuple(self.documents[key] for key in written.documents),
            note=written.note or "",
            where=self.file.line_of(at),
        )

    def class_(self, written: WrittenClass, at: KeyPath) -> Entry:
        entry = self.entry(written, written.when, at)
        return Entry(**{**vars(entry), "goes_before": tuple(written.goes_before)})

    def accessory(self, written: WrittenAccessory, at: KeyPath) -> Entry:
        entry = self.entry(written, written.when, at)
        quantity = written.quantity if isinstance(written.quantity, int) else 0
        return Entry(**{**vars(entry), "line": written.line, "quantity": quantity})

    def not_listed(self) -> Entry | None:
        written = self.written.not_listed
        return None if written is None else self.entry(written, None, ("not_listed",))

    def test(self, written: WrittenTest, around: Backing | None) -> Test:
        backing = self._nearest(written, around)
        because = written.because or ""
        for kind, several in (("all", written.all_), ("any", written.any_)):
            if several is not None:
                tests = tuple(self.test(each, backing) for each in several)
                return Joined("all" if kind == "all" else "any", tests, because)
        if written.not_ is not None:
            return Joined("not", (self.test(written.not_, backing),), because)
        if written.readings is not None:
            return Disputed(self._readings(written, backing), because)
        return self._single(written, _needed(backing), because)

    def _nearest(self, written: WrittenTest, around: Backing | None) -> Backing | None:
        if written.source is not None:
            return self.backing(written.source, written.certainty)
        if written.certainty is not None and around is not None:
            return Backing(around.source, written.certainty)
        return around

    def _readings(self, written: WrittenTest, around: Backing | None) -> tuple[Reading, ...]:
        found = []
        for each in written.readings or ():
            backing = around
            if each.source is not None:
                backing = self.backing(each.source, each.certainty)
            elif each.certainty is not None and around is not None:
                backing = Backing(around.source, each.certainty)
            found.append(Reading(each.name, self.test(each.test, backing), _needed(backing)))
        return tuple(found)

    @staticmethod
    def _single(written: WrittenTest, backing: Backing, because: str) -> Test:
        if written.class_ is not None:
            return ClassTest(tuple(written.class_), backing, because)
        wanted = (written.is_, written.has, *(written.one_of or ()))
        return FactTest(
            fact=written.fact or "",
            above=written.above,
            at_least=written.at_least,
            below=written.below,
            at_most=written.at_most,
            wanted=tuple(word for word in wanted if word is not None),
            backing=backing,
            because=because,
        )


def _needed(backing: Backing | None) -> Backing:
    if backing is None:
        msg = "the checks of a scheme file let a test without a source pass"
        raise AssertionError(msg)
    return backing


def _origin(written: WrittenFact) -> Origin | None:
    if written.from_ is None:
        return None
    pairs = (
        Origin("figure", written.from_.figure or ""),
        Origin("size", written.from_.size or ""),
        Origin("part", written.from_.part or ""),
        Origin("positions", written.from_.positions or ""),
        Origin("known", written.from_.known or ""),
    )
    return next(origin for origin in pairs if origin.name)
