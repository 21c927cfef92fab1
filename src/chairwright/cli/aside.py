"""Processes beside this one, for searches that need not wait for each other."""

from __future__ import annotations

import multiprocessing
import signal
from collections.abc import Callable, Iterator
from concurrent.futures import Executor, Future, ProcessPoolExecutor
from contextlib import contextmanager
from multiprocessing.connection import Connection
from typing import Any, Final

QUICKEST: Final = "fork"
"""Way to start a process that need not load everything again, where there is one."""

PROCESSES = 3
"""Where processes start anew: the front, the search without places and what else comes up."""

ENDED_EARLY = "a process that searched beside this one ended before it answered"


@contextmanager
def processes_aside() -> Iterator[Executor]:
    """Processes that take searches while the block runs.

    Yields
    ------
    Executor
        Where a process can be a copy of this one, each task has its own: it knows all that is
        worked out so far, and nothing but its answer has to be sent.
    """
    with _Copies() if QUICKEST in multiprocessing.get_all_start_methods() else _pool() as apart:
        yield apart


def _pool() -> ProcessPoolExecutor:
    return ProcessPoolExecutor(PROCESSES)


class _Copies(Executor):
    """A process of its own for each task, a copy of this one when the task is submitted."""

    def __init__(self) -> None:
        self._context = multiprocessing.get_context(QUICKEST)
        self._processes: list[Any] = []

    def submit(self, task: Callable[..., Any], /, *args: Any, **named: Any) -> Future[Any]:
        """Start a task; its result is fetched when it is asked for."""
        receiving, sending = self._context.Pipe(duplex=False)
        process = self._context.Process(target=_answered, args=(sending, task, args, named))
        process.start()
        sending.close()
        self._processes.append(process)
        return _Answer(receiving, process)

    def shutdown(self, wait: bool = True, *, cancel_futures: bool = False) -> None:
        """End what nobody waits for any more."""
        for process in self._processes:
            process.terminate()
        for process in self._processes:
            process.join()


def _answered(
    sending: Connection, task: Callable[..., Any], args: tuple[Any, ...], named: dict[str, Any]
) -> None:
    """Do one task in the copy and send what came of it, or what went wrong.

    An interrupt is for the process that waits: it ends its copies.
    """
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    answer: tuple[Any, Exception | None]
    try:
        answer = task(*args, **named), None
    except Exception as error:
        answer = None, error
    sending.send(answer)


class _Answer(Future[Any]):
    """What a copy sends, fetched at the first time of asking."""

    def __init__(self, receiving: Connection, process: Any) -> None:
        super().__init__()
        self._receiving = receiving
        self._process = process

    def cancel(self) -> bool:
        """End the copy: nobody wants its answer any more."""
        self._process.terminate()
        return super().cancel()

    def result(self, timeout: float | None = None) -> Any:
        """Wait for the answer; what went wrong in the copy is raised here."""
        if not self.done():
            try:
                found, error = self._receiving.recv()
            except EOFError:
                found, error = None, RuntimeError(ENDED_EARLY)
            if error is None:
                self.set_result(found)
            else:
                self.set_exception(error)
        return super().result(timeout)
