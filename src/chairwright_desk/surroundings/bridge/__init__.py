"""Places and the engineering: the only files of this app that import `chairwright`."""

from __future__ import annotations

from chairwright_desk.surroundings.bridge.keys import (
    CODE_WORDS,
    KIND_WORDS,
    Key,
    carer_keys,
    common_keys,
    keys_of,
    own_keys,
)
from chairwright_desk.surroundings.bridge.pictures import asked_of, in_words, picture_of, with_chair
from chairwright_desk.surroundings.bridge.read import places_in, troubles_of

__all__ = [
    "CODE_WORDS",
    "KIND_WORDS",
    "Key",
    "asked_of",
    "carer_keys",
    "common_keys",
    "in_words",
    "keys_of",
    "own_keys",
    "picture_of",
    "places_in",
    "troubles_of",
    "with_chair",
]
