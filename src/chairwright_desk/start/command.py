"""Open the desk in a browser; save it, put it back, add people."""

from __future__ import annotations

import argparse
import os
import sys
import threading
from contextlib import nullcontext
from datetime import UTC, datetime
from pathlib import Path

from chairwright_desk import paths
from chairwright_desk.start.bridge import InputError, Problem


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of the desk and of its parts."""
    _add_data(parser, "folder of the desk's data (made when new)")
    parser.add_argument("--port", type=int, help="port on this machine (usually 8427)")
    parser.add_argument("--no-open", action="store_true", help="print the link, open no browser")
    parts = parser.add_subparsers(metavar="PART", dest="part")
    for name, words in (
        ("backup", "write the whole desk into one file, checked"),
        ("restore", "put a backup back, checked; the desk of now is copied first"),
    ):
        part = parts.add_parser(name, help=words, allow_abbrev=False)
        part.add_argument("file", type=Path, metavar="FILE")
        _add_data(part, argparse.SUPPRESS)
    upgrade = parts.add_parser(
        "upgrade", help="bring the database up to date, without opening it", allow_abbrev=False
    )
    _add_data(upgrade, argparse.SUPPRESS)
    adduser = parts.add_parser("adduser", help="add a person or a role", allow_abbrev=False)
    adduser.add_argument("name", help="sign-in name")
    adduser.add_argument("--team", required=True, help="team, made when it is new")
    adduser.add_argument("--role", required=True, help="role in the team")
    _add_data(adduser, argparse.SUPPRESS)


def _add_data(parser: argparse.ArgumentParser, words: str) -> None:
    default = argparse.SUPPRESS if words == argparse.SUPPRESS else None
    parser.add_argument("--data", type=Path, metavar="DIR", default=default, help=words)


def run(args: argparse.Namespace) -> int:
    """Run the desk or one of its parts."""
    folder = paths.prepare(args.data)
    if os.environ.get("DATABASE_URL") and args.part in ("backup", "restore"):
        must, remedy = "is for a desk in a file", "Use pg_dump and pg_restore on its server."
        where = f"desk {args.part}"
        raise InputError(Problem(where=where, must=must, got="DATABASE_URL", remedy=remedy))
    parts = {
        "backup": _backup,
        "restore": _restore,
        "upgrade": _upgrade,
        "adduser": _adduser,
        None: _serve,
    }
    from chairwright_desk.start.lock import Busy, FolderLock

    needs_all = args.part in (None, "restore", "upgrade")
    try:
        with FolderLock(folder) if needs_all else nullcontext():
            return parts[args.part](args, folder)
    except Busy as busy:
        must, remedy = "no other desk may have it open", "Use that one, or close it first."
        problem = Problem(where=str(busy), must=must, got="a desk that is open", remedy=remedy)
        raise InputError(problem) from busy


def _set_up(folder: Path, *, upgrade: bool) -> None:
    import django

    django.setup()
    from chairwright_desk.start.upgrade import upgrade_folder, upgrade_server

    if os.environ.get("DATABASE_URL"):
        upgrade_server()
    elif upgrade:
        said = upgrade_folder(folder, paths.database_file())
        if said:
            print(said, file=sys.stderr)


def _serve(args: argparse.Namespace, folder: Path) -> int:
    from chairwright_desk.start import serve

    made = serve.listening(args.port)
    _set_up(folder, upgrade=True)
    from chairwright_desk.accounts.links import make_link
    from chairwright_desk.start.people import first_person

    host = f"http://{serve.HOST}:{made.getsockname()[1]}"
    address = host + make_link(first_person())

    def ready() -> None:
        print(f"The desk is open at {host}\nSign in once with: {address}", flush=True)
        if not args.no_open:
            threading.Thread(target=serve.open_browser, args=[address], daemon=True).start()

    with serve.worker(only=not os.environ.get("DATABASE_URL")):
        serve.serve(made, ready)
    return 0


def _backup(args: argparse.Namespace, folder: Path) -> int:
    from chairwright_desk.start.backup import check_bytes, check_database, copy_database

    if args.file.exists():
        must, remedy = "must not be there yet", "Name a new file."
        problem = Problem(where=str(args.file), must=must, got="a file", remedy=remedy)
        raise InputError(problem)
    check_database(paths.database_file())
    copy_database(paths.database_file(), args.file)
    check_database(args.file)
    check_bytes(args.file)
    print(f"{args.file}: the desk of {folder}, checked")
    return 0


def _restore(args: argparse.Namespace, folder: Path) -> int:
    import django

    from chairwright_desk.start import backup, upgrade
    from chairwright_desk.start.restored import ANEW, removed_since

    django.setup()
    _, known = upgrade.known_steps()
    backup.check_database(args.file, known)
    backup.check_bytes(args.file)
    database = paths.database_file()
    if database.is_file():
        place = folder / upgrade.COPIES
        place.mkdir(exist_ok=True, mode=0o700)
        copy = place / f"before-restore-{datetime.now(UTC):%Y%m%d-%H%M%S-%f}.sqlite3"
        backup.copy_database(database, copy)
        print(f"The desk of before is {copy}", file=sys.stderr)
    came_back = removed_since(database, args.file)
    backup.put_back(args.file, database, restored=True)
    (folder / upgrade.MARK).unlink(missing_ok=True)
    print(ANEW, file=sys.stderr)
    for key in came_back:
        print(f"Removed since this backup, and back: remove it again at /clients/{key}/keeping/"
              "remove/", file=sys.stderr)  # fmt: skip
    print(f"{folder}: the desk from {args.file}, checked")
    return 0


def _upgrade(_args: argparse.Namespace, folder: Path) -> int:
    _set_up(folder, upgrade=True)
    print(f"{folder}: up to date")
    return 0


def _adduser(args: argparse.Namespace, folder: Path) -> int:
    _set_up(folder, upgrade=False)
    if not os.environ.get("DATABASE_URL") and not paths.database_file().is_file():
        must, remedy = "must hold a desk", "Start the desk once first, with the same --data."
        problem = Problem(where=str(folder), must=must, got="no desk", remedy=remedy)
        raise InputError(problem)
    from chairwright_desk.accounts.links import make_link
    from chairwright_desk.start.people import add_person

    link = make_link(add_person(args.name, args.team, args.role))
    print(f"Added. Sign in within 10 minutes, at the desk's address, with: {link}")
    return 0
