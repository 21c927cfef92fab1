"""What the places changed, in sentences."""

from __future__ import annotations

from chairwright.fitting.place_effect import PlaceEffect
from chairwright.line.choices import CHOICES


def effect_words(effect: PlaceEffect) -> tuple[str, ...]:
    """What the places changed, in sentences.

    Parameters
    ----------
    effect : PlaceEffect

    Returns
    -------
    tuple of str
    """
    if not effect.changed:
        return ("Without the places the best set-up would be the same.",)
    changed = ", ".join(
        f"{CHOICES[name].label.lower()} {before} to {after}"
        for name, (before, after) in effect.changed.items()
    )
    names = dict.fromkeys(item.target.place for item in effect.decided or effect.drew)
    decided = f" Decided by: {', '.join(names)}." if names else ""
    return (f"Because of the places, against the best set-up without them: {changed}.{decided}",)
