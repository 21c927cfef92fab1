"""Why a best set-up is as it is: target by target, and choice by choice."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from chairwright.fitting.described import Described
from chairwright.fitting.fit import Fit
from chairwright.fitting.next_best import NextBest, next_best
from chairwright.fitting.one_change import one_change
from chairwright.fitting.target_reasons import Reason, reasons_of
from chairwright.search.space import Space

TELL_EACH = 5


@dataclass(frozen=True)
class Why:
    """The explanation of a best set-up.

    Parameters
    ----------
    setup : Described
    cost : float
        Of all missed preferences.
    reasons : tuple of Reason
        In the order of the targets.
    choices : tuple of NextBest
        What matters most first; in the order of the choices where alike.
    only : tuple of str
        Choices with a single option that is open.
    """

    setup: Described
    cost: float
    reasons: tuple[Reason, ...]
    choices: tuple[NextBest, ...]
    only: tuple[str, ...]


def why_best(fit: Fit, progress: Callable[[str], None] = lambda _: None) -> Why:
    """Explain a best set-up.

    Parameters
    ----------
    fit : Fit
        With a best set-up.
    progress : callable
        Told in a few words what is being done.

    Returns
    -------
    Why
        Exact: each next best set-up is proven like the best.

    Raises
    ------
    ValueError
        When nothing fits.
    """
    if fit.best is None or fit.setup is None:
        message = "only a set-up that holds every must can be explained so"
        raise ValueError(message)
    changes = one_change(_no_dearer(fit), fit.best.index, fit.person.targets)
    open_choices = [name for name, options in fit.space.allowed.items() if len(options) > 1]
    found = []
    for number, name in enumerate(open_choices, 1):
        if number % TELL_EACH == 1:
            progress(f"the next best of choice {number} of {len(open_choices)}")
        found.append(next_best(fit, fit.setup, name, changes))
    return Why(
        setup=fit.setup,
        cost=fit.best.cost,
        reasons=reasons_of(fit.setup, changes),
        choices=tuple(sorted(found, key=_what_matters_most)),
        only=tuple(name for name in fit.space.allowed if name not in open_choices),
    )


def _what_matters_most(each: NextBest) -> tuple[bool, float, float]:
    return each.setup is not None, -each.surcharge_more, -each.costs_more


def _no_dearer(fit: Fit) -> Space:
    """The space; where the surcharge must be least, without sizes of a greater surcharge."""
    if fit.extent != "needed" or fit.setup is None:
        return fit.space
    surcharge = {name: fit.line.column(name, "surcharge") for name in fit.space.allowed}
    return replace(
        fit.space,
        allowed={
            name: options[surcharge[name][options] <= surcharge[name][fit.setup.index[name]]]
            for name, options in fit.space.allowed.items()
        },
    )
