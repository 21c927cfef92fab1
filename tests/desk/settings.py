"""The desk's settings for tests: a database of their own, quick password hashes, work at once."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from chairwright_desk.settings import *  # noqa: F403 - the same but for what follows
from chairwright_desk.settings import DATABASES, URL

SECRET_KEY = "only for tests"  # noqa: S105
PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
WORK_AT_ONCE = True
DATABASES["default"]["CONN_MAX_AGE"] = 0
if not URL:
    file = Path(tempfile.gettempdir()) / f"desk-tests-{os.getpid()}.sqlite3"
    DATABASES["default"]["TEST"] = {"NAME": str(file)}
    start = DATABASES["default"]["OPTIONS"]["init_command"]
    DATABASES["default"]["OPTIONS"]["init_command"] = start.replace("FULL", "OFF")
