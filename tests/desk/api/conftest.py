"""Each test of the API begins with no call counted."""

from __future__ import annotations

from importlib.util import find_spec

import pytest

if find_spec("django") is not None:
    from django.core.cache import cache

    @pytest.fixture(autouse=True)
    def no_calls_counted() -> None:
        cache.clear()
