"""Which class a payer's scheme gives the chair, and which facts it still asks for."""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.order.payer import assess
from chairwright.order.payer_facts import facts_of
from chairwright.order.payer_lines import feet_fitted, order_lines
from chairwright.order.payer_load import load_scheme
from chairwright.order.payer_result import NO_PROMISE, Assessment
from chairwright.order.payer_words import class_words
from chairwright_desk.bench.bridge.kept import Kept
from chairwright_desk.bench.bridge.opened import State

SCHEME = "us-hcpcs"


@dataclass(frozen=True)
class PayerShown:
    """What a scheme says of a chair.

    Parameters
    ----------
    scheme : str
        Title and edition.
    classes : tuple of (str, str)
        What is classed, and the class.
    missing : tuple of str
        Facts that it still asks for.
    promise : str
        That nothing is promised.
    """

    scheme: str
    classes: tuple[tuple[str, str], ...]
    missing: tuple[str, ...]
    promise: str = NO_PROMISE


_PAID: Kept[PayerShown] = Kept(128)


def payer_shown(state: State) -> PayerShown | None:
    """Judge a set-up by the payer's scheme that is shipped.

    Parameters
    ----------
    state : State
        With the spreads of its own.

    Returns
    -------
    PayerShown or None
        None when there is no such chair.
    """
    if state.setup is None:
        return None
    return _PAID.of((state.bench.key, *state.index.values()), lambda: _shown(_assessed(state)))


def _assessed(state: State) -> Assessment:
    scheme, person, setup = load_scheme(SCHEME), state.bench.person, state.setup
    if setup is None:
        raise AssertionError(NO_CHAIR)
    facts = facts_of(scheme, setup, person.client, person.measures, {})
    return assess(scheme, facts, order_lines(scheme, setup), feet_fitted(setup))


NO_CHAIR = "only a chair that stands is classed"


def _shown(found: Assessment) -> PayerShown:
    asked = found.scheme.asked
    return PayerShown(
        scheme=f"{found.scheme.title}, {found.scheme.edition}",
        classes=tuple((each.group.title, class_words(each)) for each in found.groups),
        missing=tuple(asked[each.name].ask for each in found.missing),
    )
