"""What is said of a client besides measures, in a few lines."""

from __future__ import annotations

from chairwright_desk.measures.bridge import LEVEL_WORDS, LIMBS, has_share
from chairwright_desk.measures.forms import LIMB_WORDS, LOAD_PLACES, LOADS, PROPULSION
from chairwright_desk.measures.text import Fields


def facts_of(body: Fields, able: Fields) -> list[tuple[str, str]]:
    """Return label and words of what is known.

    Parameters
    ----------
    body : mapping of str to str
        The set of measures in use.
    able : mapping of str to str
        How the client moves.
    """
    told = [("Sex", body.get("sex", "")), ("Age", body.get("age", ""))]
    told += [(LIMB_WORDS[limb], _lost(body, limb)) for limb in LIMBS if body.get(limb)]
    told.append(("Share of leg mass", body.get("leg_mass_factor", "")))
    told.append(("The chair is moved", dict(PROPULSION).get(able.get("propulsion", ""), "")))
    told += [
        ("Always on it", _load(able, at)) for at in range(LOADS) if able.get(f"load_name_{at}")
    ]
    told.append(("Accessories", able.get("extras", "")))
    return [(label, words) for label, words in told if words]


def _lost(body: Fields, limb: str) -> str:
    words = f"lost {LEVEL_WORDS.get(body[limb], body[limb])}"
    share = body.get(f"{limb}_share") or "0.5"
    return f"{words}, {share} of the cut bone remains" if has_share(body[limb]) else words


def _load(able: Fields, at: int) -> str:
    place = dict(LOAD_PLACES).get(able.get(f"load_place_{at}", ""), "")
    return f"{able[f'load_name_{at}']}, {able.get(f'load_mass_{at}', '')}, {place}"
