"""What a person sees when something is wrong: one line a problem, never a traceback."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable

from chairwright.errors import ChairwrightError, InputError

OK = 0
BAD_INPUT = 2
STOPPED = 130
PIPE_CLOSED = 141
MOST_LINES = 40


def run_quietly(command: Callable[[], int]) -> int:
    """Run a command and turn what goes wrong into a message and an exit code.

    Parameters
    ----------
    command : callable
        Returns the exit code.

    Returns
    -------
    int
        2 for a problem with the input or the output, 130 when stopped with Ctrl-C, 141 when
        the reader of the output went away; otherwise what the command returned.
    """
    try:
        code = command()
        sys.stdout.flush()
    except ChairwrightError as error:
        tell(_lines(error))
        return BAD_INPUT
    except KeyboardInterrupt:
        tell(["Stopped."])
        return STOPPED
    except BrokenPipeError:
        _drop_output()
        return PIPE_CLOSED
    except OSError as error:
        if error.filename is None:
            _drop_output()
        tell([_output_line(error)])
        return BAD_INPUT
    return code


def tell(lines: list[str]) -> None:
    """Write lines to standard error."""
    for line in lines:
        print(line, file=sys.stderr)


def _lines(error: ChairwrightError) -> list[str]:
    if not isinstance(error, InputError):
        return str(error).splitlines()
    lines = [str(problem).replace("\n", " ") for problem in error.problems]
    rest = len(lines) - MOST_LINES
    return lines if rest <= 0 else [*lines[:MOST_LINES], f"... and {rest} more problems"]


def _output_line(error: OSError) -> str:
    where = error.filename or "standard output"
    reason = (error.strerror or str(error)).lower()
    return (
        f"{where}: it must be possible to read and write here; got {reason}. "
        "Check the free space and the permissions, or choose another place."
    )


def _drop_output() -> None:
    """Send what is still buffered nowhere, so that the interpreter's last flush is quiet."""
    sink = os.open(os.devnull, os.O_WRONLY)
    os.dup2(sink, sys.stdout.fileno())
    os.close(sink)
