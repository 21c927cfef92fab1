"""Measures and the engineering: the only files of this app that import `chairwright`."""

from __future__ import annotations

from chairwright.errors import InputError
from chairwright_desk.measures.bridge.catalogue import (
    CHOICE_WORDS,
    LEVEL_WORDS,
    LIMBS,
    Kind,
    KindGroup,
    has_share,
    kind_groups,
    kinds,
    levels_of,
)
from chairwright_desk.measures.bridge.codes import LineCodes, codes_of_line
from chairwright_desk.measures.bridge.understood import (
    Beside,
    Understood,
    lost_fields,
    troubles_of,
    understand,
)

__all__ = [
    "CHOICE_WORDS",
    "LEVEL_WORDS",
    "LIMBS",
    "Beside",
    "InputError",
    "Kind",
    "KindGroup",
    "LineCodes",
    "Understood",
    "codes_of_line",
    "has_share",
    "kind_groups",
    "kinds",
    "levels_of",
    "lost_fields",
    "troubles_of",
    "understand",
]
