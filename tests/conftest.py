"""What every test shares: one thread for arrays, and the same examples on every run."""

from __future__ import annotations

import os
from importlib.util import find_spec

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
if find_spec("django") is not None:
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "tests.desk.settings")
    os.environ.setdefault("DJANGO_ALLOW_ASYNC_UNSAFE", "1")

from hypothesis import settings

settings.register_profile("house", deadline=None, derandomize=True)
settings.load_profile("house")
