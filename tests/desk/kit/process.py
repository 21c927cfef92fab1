"""A desk as its users have it: a process of its own on a folder, visited over the network."""

from __future__ import annotations

import os
import re
import signal
import subprocess
import sys
import urllib.request
from collections.abc import Callable, Mapping
from http.cookiejar import CookieJar
from pathlib import Path
from types import TracebackType
from typing import Any
from urllib.error import HTTPError
from urllib.parse import urlencode

COMMAND = [sys.executable, "-m", "chairwright.cli.main", "desk"]
NEEDLESS = ("DATABASE_URL", "DJANGO_SETTINGS_MODULE", "CHAIRWRIGHT_DESK_DATA")
PATIENCE_S = 30
RUNNING: list[RunningDesk] = []
"""Every desk that was started; what a failed test leaves is ended by a fixture."""


def environment(**more: str) -> dict[str, str]:
    """The environment of a desk on a file."""
    return {k: v for k, v in os.environ.items() if k not in NEEDLESS} | more


def command(*words: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """Run a part of the command to its end."""
    return subprocess.run(
        [*COMMAND, *words, "--data", str(folder)],
        env=environment(),
        capture_output=True,
        text=True,
        timeout=PATIENCE_S,
        check=False,
    )


class _Stay(urllib.request.HTTPRedirectHandler):
    def redirect_request(self, *_: Any) -> None:
        return None


class Visit:
    """A visitor with cookies.

    Parameters
    ----------
    url : str
        The desk's address without a path; may be changed after a restart.
    """

    def __init__(self, url: str) -> None:
        self.url = url
        jar = urllib.request.HTTPCookieProcessor(CookieJar())
        self._opener = urllib.request.build_opener(jar, _Stay)

    def get(self, path: str) -> tuple[int, str]:
        """Open a page: status and text."""
        return self._send(urllib.request.Request(self.url + path))  # noqa: S310 - our own

    def post(self, path: str, fields: Mapping[str, str], page: str = "") -> tuple[int, str]:
        """Fill the form of `page` (by default the same address) and send it."""
        _, text = self.get(page or path)
        found = re.search(r'name="csrfmiddlewaretoken" value="(\w+)"', text)
        assert found, text[:500]
        body = urlencode({**fields, "csrfmiddlewaretoken": found[1]}).encode()
        headers = {"Origin": self.url}
        return self._send(urllib.request.Request(self.url + path, body, headers))  # noqa: S310

    def _send(self, request: urllib.request.Request) -> tuple[int, str]:
        try:
            with self._opener.open(request, timeout=PATIENCE_S) as answer:
                return answer.status, answer.read().decode()
        except HTTPError as error:
            with error:
                return error.code, error.read().decode()


class RunningDesk:
    """A desk that runs while the ``with`` lasts.

    Parameters
    ----------
    folder : pathlib.Path
        Data folder.
    before : callable, optional
        Called in the new process first (limits).
    """

    def __init__(
        self,
        folder: Path,
        before: Callable[[], None] | None = None,
        environ: Mapping[str, str] | None = None,
        command: list[str] | None = None,
    ) -> None:
        self.folder, self.log = folder, folder.parent / f"{folder.name}.log"
        with self.log.open("ab") as log:
            self.process = subprocess.Popen(
                [*(command or COMMAND), "--data", str(folder), "--port", "0", "--no-open"],
                env=environment(**(environ or {})),
                stdout=subprocess.PIPE,
                stderr=log,
                text=True,
                preexec_fn=before,  # noqa: PLW1509 - tests start no threads of their own here
                start_new_session=True,
            )
        RUNNING.append(self)
        assert self.process.stdout is not None
        first = self.process.stdout.readline()
        second = self.process.stdout.readline()
        assert "http://" in second, (first, second, self.log.read_text())
        self.url = first.split()[-1]
        self.link = "/" + second.split()[-1].split("/", 3)[3]

    def visit(self) -> Visit:
        """Return a visitor signed in by the link."""
        visit = Visit(self.url)
        status, text = visit.post(self.link, {})
        assert status == 302, text
        return visit

    def kill(self) -> None:
        """End it as a power cut does."""
        self._end(signal.SIGKILL)

    def _end(self, how: signal.Signals) -> None:
        if self.process.poll() is None:
            self.process.send_signal(how)
        self.process.wait(PATIENCE_S)
        if self.process.stdout is not None:
            self.process.stdout.close()

    def __enter__(self) -> RunningDesk:
        return self

    def __exit__(
        self,
        _kind: type[BaseException] | None,
        _error: BaseException | None,
        _trace: TracebackType | None,
    ) -> None:
        self._end(signal.SIGTERM)
