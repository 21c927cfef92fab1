"""Work beside the command's own process: answers, faults and processes that are gone."""

from __future__ import annotations

import os

import pytest

from chairwright.cli.aside import ENDED_EARLY, processes_aside
from chairwright.errors import InputError, Problem


def test_several_tasks_answer_in_processes_of_their_own() -> None:
    with processes_aside() as apart:
        begun = [apart.submit(_squared_elsewhere, number) for number in range(5)]
        answers = [each.result() for each in begun]
    assert [square for square, _ in answers] == [0, 1, 4, 9, 16]
    assert os.getpid() not in {process for _, process in answers}


def test_an_answer_can_be_asked_for_twice() -> None:
    with processes_aside() as apart:
        begun = apart.submit(_squared_elsewhere, 3)
        assert begun.result() == begun.result()


def test_what_is_wrong_there_is_said_here() -> None:
    with processes_aside() as apart, pytest.raises(InputError) as caught:
        apart.submit(_refused).result()
    assert caught.value.problems[0].got == "nothing"


def test_a_process_that_is_gone_is_told() -> None:
    with processes_aside() as apart, pytest.raises(RuntimeError, match=ENDED_EARLY):
        apart.submit(os._exit, 1).result()


def test_what_nobody_waits_for_is_ended() -> None:
    with processes_aside() as apart:
        begun = apart.submit(_never)
        processes = apart._processes  # type: ignore[attr-defined]
    assert not begun.done()
    assert [process.is_alive() for process in processes] == [False]


def test_what_is_not_wanted_any_more_is_ended_at_once() -> None:
    with processes_aside() as apart:
        begun = apart.submit(_never)
        (process,) = apart._processes  # type: ignore[attr-defined]
        assert begun.cancel()
        process.join(20)
        assert not process.is_alive()
    assert begun.cancelled()


def _squared_elsewhere(number: int) -> tuple[int, int]:
    return number * number, os.getpid()


def _refused() -> None:
    raise InputError(Problem("here", "it must be there", "nothing", "Put it there."))


def _never() -> None:
    while True:
        pass
