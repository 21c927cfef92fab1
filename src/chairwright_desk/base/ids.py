"""Names of records in addresses: opaque, random, never said aloud."""

from __future__ import annotations

import secrets

LETTERS = "23456789abcdefghjkmnpqrstuvwxyz"
LENGTH = 16
"""16 letters of 31: about 79 bits, too many to guess."""


def new_id() -> str:
    """Return a fresh random name."""
    return "".join(secrets.choice(LETTERS) for _ in range(LENGTH))
