"""What is kept is bounded, the same for everybody, and made once where nobody is in a hurry."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor

from chairwright_desk.bench.bridge.kept import Kept


def test_the_one_not_asked_for_longest_goes_first() -> None:
    kept: Kept[str] = Kept(2)
    kept.of("a", lambda: "first a")
    kept.of("b", lambda: "first b")
    kept.of("a", lambda: "second a")
    kept.of("c", lambda: "first c")
    assert len(kept) == 2
    assert kept.known("b") is None
    assert kept.of("a", lambda: "third a") == "first a"
    assert kept.of("b", lambda: "second b") == "second b"


def test_many_threads_get_the_same_thing_and_no_more_is_kept() -> None:
    kept: Kept[object] = Kept(8)

    def ask(number: int) -> tuple[int, object]:
        key = number % 5
        return key, kept.of(key, object)

    with ThreadPoolExecutor(8) as pool:
        found = list(pool.map(ask, range(4000)))
    assert len(kept) == 5
    assert all(len({id(thing) for at, thing in found if at == key}) == 1 for key in range(5))


def test_a_failure_is_not_kept() -> None:
    kept: Kept[int] = Kept(2)

    def fail() -> int:
        raise ValueError

    for _ in range(2):
        try:
            kept.of("a", fail)
        except ValueError:
            continue
    assert len(kept) == 0
    assert kept.of("a", lambda: 3) == 3
