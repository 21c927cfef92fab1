"""Which options of a run have room on a lesson sheet, and what is said of the rest."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chairwright.fitting.allowed import plain
from chairwright.fitting.sweep import SweptRun, Tried


def shown_options(run: SweptRun, most: int) -> tuple[Tried, ...]:
    """The options that stand, thinned when there are too many.

    Parameters
    ----------
    run : SweptRun
    most : int
        Columns that there is room for, 3 at least.

    Returns
    -------
    tuple of Tried
        In the order of the run: both ends, the present one with its neighbours, and others
        spread evenly between.
    """
    standing = run.standing
    here = next(at for at, each in enumerate(standing) if each.status == "as it stands")
    kept = set(_wanted(len(standing), here)[:most])
    for at in _evenly(len(standing), most):
        if len(kept) >= most:
            break
        kept.add(at)
    return tuple(standing[at] for at in sorted(kept))


def _wanted(count: int, here: int) -> list[int]:
    near = [here, 0, count - 1, here + 1, here - 1]
    return list(dict.fromkeys(at for at in near if 0 <= at < count))


def _evenly(count: int, most: int) -> list[int]:
    """Every position, those spread evenly first."""
    first = [round(step * (count - 1) / max(most - 1, 1)) for step in range(most)]
    return list(dict.fromkeys([*first, *range(count)]))


def notes_of(run: SweptRun, shown: Sequence[Tried]) -> tuple[str, ...]:
    """Say what had to follow, what cannot be, and how many options are left out.

    Parameters
    ----------
    run : SweptRun
    shown : sequence of Tried

    Returns
    -------
    tuple of str
        Sentences.
    """
    notes = list(_followed(shown))
    for reasons, codes in _grouped(run).items():
        notes.append(f"{_listed(codes)}: {'; '.join(reasons)}.")
    left = len(run.standing) - len(shown)
    if left:
        notes.append(f"{left} more {'option stands' if left == 1 else 'options stand'} as well.")
    return tuple(notes)


def _followed(shown: Sequence[Tried]) -> Iterator[str]:
    followed: dict[str, list[str]] = {}
    for each in shown:
        for name, code in (each.also or {}).items():
            followed.setdefault(name, []).append(f"{code} with {each.option.code}")
    for name, pairs in followed.items():
        yield f"So that it stands, the {plain(name)} goes to {', '.join(pairs)}."


def _grouped(run: SweptRun) -> dict[tuple[str, ...], list[str]]:
    """Options that cannot be, under their reasons."""
    found: dict[tuple[str, ...], list[str]] = {}
    for each in run.tried:
        if not each.stands:
            reasons = tuple(_without(each.option.code, reason) for reason in each.reasons)
            found.setdefault(reasons, []).append(each.option.code)
    return found


def _without(code: str, reason: str) -> str:
    """A reason that starts with its own option, without it: ``needs side frame SFR: ...``."""
    before, _, after = reason.partition(f" {code} needs ")
    return f"needs {after}" if after and " and " not in before else reason


def _listed(codes: Sequence[str]) -> str:
    return codes[0] if len(codes) == 1 else f"{', '.join(codes[:-1])} and {codes[-1]}"
