"""Serving the pages to this machine alone, and the worker beside them."""

from __future__ import annotations

import errno
import gc
import os
import signal
import socket
import subprocess
import sys
import webbrowser
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress

from chairwright_desk.start.bridge import InputError, Problem

HOST = "127.0.0.1"
USUAL_PORT = 8427
THREADS = 6
COLLECTED = (20_000, 10, 10)
"""How seldom Python looks for circles among what was made: a page makes some ten thousand things
and drops them at its end, so that looking every 700 finds nothing and takes a tenth of its time."""

MOST_BODY = 256_000_000
"""What waitress takes in; the desk's own page refuses a body of more than 50 MB."""


def listening(port: int | None) -> socket.socket:
    """Return a socket on this machine: at `port`, or at the usual one, or at any that is free."""
    try:
        return _bound(USUAL_PORT if port is None else port)
    except OSError as error:
        if port is None and error.errno == errno.EADDRINUSE:
            return _bound(0)
        must, remedy = "must be free to listen at", "Leave --port out, or name another."
        where = f"--port {port}"
        problem = Problem(where=where, must=must, got=str(error.strerror).lower(), remedy=remedy)
        raise InputError(problem) from error


def _bound(port: int) -> socket.socket:
    made = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    made.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    made.bind((HOST, port))
    return made


def serve(made: socket.socket, ready: Callable[[], None]) -> None:
    """Answer requests until the process is told to stop.

    Parameters
    ----------
    made : socket.socket
        From `listening`.
    ready : callable
        Called when the first request can come.
    """
    from waitress.server import create_server

    from chairwright_desk.wsgi import application

    server = create_server(
        application,
        sockets=[made],
        threads=THREADS,
        max_request_body_size=MOST_BODY,
        clear_untrusted_proxy_headers=True,
        ident=None,
    )
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(0))
    gc.set_threshold(*COLLECTED)
    ready()
    with suppress(KeyboardInterrupt):
        server.run()


@contextmanager
def worker(*, only: bool) -> Iterator[None]:
    """Run the worker beside the pages.

    Parameters
    ----------
    only : bool
        There is no other worker on this database (SQLite): jobs still marked as under way were
        broken off.
    """
    flags = ["--beside", "--only"] if only else ["--beside"]
    command = [sys.executable, "-m", "chairwright_desk.jobs.worker", *flags]
    process = subprocess.Popen(command, env=os.environ, stdin=subprocess.PIPE)  # noqa: S603 - our own module
    try:
        yield
    finally:
        process.terminate()
        if process.stdin is not None:
            process.stdin.close()
        try:
            process.wait(5)
        except subprocess.TimeoutExpired:
            process.kill()


def open_browser(address: str) -> None:
    """Open the address in the person's browser, when there is one."""
    with suppress(webbrowser.Error, OSError):
        webbrowser.open(address)
