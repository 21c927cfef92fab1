"""Logs without what people typed: the place of a fault, never its message or values."""

from __future__ import annotations

import logging
import traceback
from types import TracebackType

Fault = tuple[type[BaseException], BaseException, TracebackType | None]


class QuietFormatter(logging.Formatter):
    """Time, level, logger, fixed text; of a fault its kind and the lines it went through.

    Notes
    -----
    The values of a record (``args``), the message of an exception and the source lines of a
    traceback may hold what somebody typed: a client's name in a constraint's message, a measure
    in a validation error. None of them is written.
    """

    def format(self, record: logging.LogRecord) -> str:
        """Return one line, and one line for each step of a fault."""
        head = f"{self.formatTime(record)} {record.levelname} {record.name}: {_text(record)}"
        if not record.exc_info or record.exc_info[0] is None:
            return head
        return "\n".join([head, *_steps(record.exc_info)])


def _text(record: logging.LogRecord) -> str:
    if record.name == "chairwright_desk":
        return record.getMessage()
    request = getattr(record, "request", None)
    place = f" {request.method} {request.path}" if request is not None else ""
    status = getattr(record, "status_code", "")
    fixed = str(record.msg) if isinstance(record.msg, str) and record.args else "told"
    return f"{fixed if '%' in fixed else 'told'}{place} {status}".rstrip()


def _steps(fault: Fault | tuple[None, None, None]) -> list[str]:
    kind, _, trace = fault
    steps = [f"  {f.filename}:{f.lineno} in {f.name}" for f in traceback.extract_tb(trace)]
    return [*steps, f"  {kind.__module__}.{kind.__name__}" if kind else ""]
