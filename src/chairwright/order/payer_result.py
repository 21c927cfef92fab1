"""What a payer's scheme says of one set-up and its client: classes, codes, lines, what is missing.

Never a promise of payment: the payer decides.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from chairwright.order.payer_lines import OrderLine
from chairwright.order.payer_logic import Step, every
from chairwright.order.payer_model import Document, Entry, Group, Scheme, Truth
from chairwright.order.payer_values import Known

NO_PROMISE = "This is never a promise of payment: the payer decides."
LineStanding = Literal["coded", "depends", "in the class", "not listed", "no code held here"]


@dataclass(frozen=True)
class Judged:
    """One code with what its tests say.

    Parameters
    ----------
    entry : Entry
    fits : Step or None
        Whether the chair has what the code is for; None for what is left over.
    truth : bool or None
        The same, after other classes went before; a declared class is taken as declared.
    covered : Step or None
        The payer's test of the client; None when none is held here.
    overtaken_by : tuple of str
        Classes that go before this one.
    remark : str
    """

    entry: Entry
    fits: Step | None
    truth: Truth
    covered: Step | None
    overtaken_by: tuple[str, ...] = ()
    remark: str = ""

    @property
    def met(self) -> Truth:
        """Whether the chair has it and the payer's test of the client holds as well."""
        return every((self.truth, True if self.covered is None else self.covered.truth))


@dataclass(frozen=True)
class GroupResult:
    """What a group of classes comes to.

    Parameters
    ----------
    group : Group
    classes : tuple of Judged
        Every class, in the file's order.
    declared : str
        Class that somebody declared; empty for none.
    """

    group: Group
    classes: tuple[Judged, ...]
    declared: str = ""

    @property
    def possible(self) -> tuple[Judged, ...]:
        """Classes that the chair has or may have."""
        return tuple(each for each in self.classes if each.truth is not False)

    @property
    def settled(self) -> Judged | None:
        """The one class of the chair; None when several are possible, or none is."""
        (first, *rest) = self.possible or (None,)
        return first if first is not None and not rest and first.truth else None


@dataclass(frozen=True)
class LineResult:
    """What codes one line of the order has.

    Parameters
    ----------
    line : OrderLine
    standing : str
        ``coded``, ``depends``, ``in the class``, ``not listed`` or ``no code held here``.
    codes : tuple of Judged
        That hold; where it depends, that may hold.
    quantity : dict of str to int
        Pieces of each code.
    """

    line: OrderLine
    standing: LineStanding
    codes: tuple[Judged, ...] = ()
    quantity: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True)
class MissingFact:
    """One fact to ask for, and the codes that hang on it."""

    name: str
    decides: tuple[str, ...]


@dataclass(frozen=True)
class Assessment:
    """All that a scheme says of one set-up and its client.

    Parameters
    ----------
    scheme : Scheme
    facts : mapping of str to Known
    general : Step or None
        The payer's test of the client that goes for every class.
    groups : tuple of GroupResult
    accessories : tuple of Judged
        Every accessory of the scheme.
    lines : tuple of LineResult
    missing : tuple of MissingFact
        In the order of the scheme's facts.
    documents : tuple of Document
        Asked for with what holds or may hold.
    """

    scheme: Scheme
    facts: Mapping[str, Known]
    general: Step | None
    groups: tuple[GroupResult, ...]
    accessories: tuple[Judged, ...]
    lines: tuple[LineResult, ...]
    missing: tuple[MissingFact, ...]
    documents: tuple[Document, ...]

    @property
    def not_covered(self) -> tuple[Judged, ...]:
        """Codes that the chair has, or may have, and whose test of the client fails."""
        found = (*(each for group in self.groups for each in group.possible), *self.accessories)
        return tuple(
            each
            for each in found
            if each.truth is not False and each.covered is not None and each.covered.truth is False
        )
