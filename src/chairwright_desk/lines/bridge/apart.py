"""Checking a line's text in a process of its own: text in, one JSON value out."""

from __future__ import annotations

import resource
import sys

from chairwright_desk.lines.bridge.checked import MOST_SECONDS, check, to_json

MOST_BYTES = 2_000_000_000


def main() -> None:
    """Check what comes in, with bounds on time and memory."""
    resource.setrlimit(resource.RLIMIT_AS, (MOST_BYTES, MOST_BYTES))
    resource.setrlimit(resource.RLIMIT_CPU, (MOST_SECONDS, MOST_SECONDS + 1))
    sys.stdout.write(to_json(check(sys.stdin.buffer.read().decode())))


if __name__ == "__main__":
    main()
