"""Where the desk keeps its data, and the secret it makes once."""

from __future__ import annotations

import os
import secrets
import sys
from pathlib import Path

DATA = "CHAIRWRIGHT_DESK_DATA"
SECRET = "CHAIRWRIGHT_DESK_SECRET"  # noqa: S105 - the name of the variable
SETTINGS = "DJANGO_SETTINGS_MODULE"
DATABASE = "desk.sqlite3"


def data_folder() -> Path:
    """Return the data folder: named in the environment, else the platform's own place."""
    named = os.environ.get(DATA)
    return Path(named).expanduser() if named else _platform_folder()


def _platform_folder() -> Path:
    home = Path.home()
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or home / "AppData" / "Local") / "chairwright"
    if sys.platform == "darwin":
        return home / "Library" / "Application Support" / "chairwright"
    return Path(os.environ.get("XDG_DATA_HOME") or home / ".local" / "share") / "chairwright"


def database_file() -> Path:
    """Return the SQLite file of the data folder."""
    return data_folder() / DATABASE


def make_folder(folder: Path) -> None:
    """Make the data folder, for its owner only; leave one that is there as it is."""
    folder.mkdir(parents=True, exist_ok=True, mode=0o700)


def secret_of(folder: Path) -> str:
    """Return the folder's secret key; make it when there is none (only the owner may read it)."""
    path = folder / "secret"
    try:
        handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    except FileExistsError:
        return path.read_text("ascii").strip()
    with os.fdopen(handle, "w", encoding="ascii") as file:
        key = secrets.token_urlsafe(48)
        file.write(key)
        file.flush()
        os.fsync(file.fileno())
    return key


def prepare(folder: Path | None = None) -> Path:
    """Make the folder and its secret and put both into the environment, before Django starts.

    Parameters
    ----------
    folder : pathlib.Path, optional
        By default the one named in the environment, or the platform's own.
    """
    place = (folder or data_folder()).expanduser().absolute()
    make_folder(place)
    os.environ[DATA] = str(place)
    os.environ.setdefault(SECRET, secret_of(place))
    os.environ.setdefault(SETTINGS, "chairwright_desk.settings")
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    return place
