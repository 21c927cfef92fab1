"""The README shows what the program prints and draws, and says the job first."""

from __future__ import annotations

from .readme import PICTURE, README, SHOWN, digest, drawn, pieces, printed

TEXT = README.read_text("utf-8")


def test_the_printed_result_is_what_the_program_prints() -> None:
    shown = SHOWN.findall(TEXT)
    assert len(shown) == 1
    command, body = shown[0]
    output, place = printed(command), 0
    for piece in pieces(body):
        found = output.find(piece, place)
        assert found >= 0, f"not printed any more; python -m tests.house.readme renews:\n{piece}"
        place = found + len(piece)
    assert place > 500


def test_the_picture_is_what_the_program_draws() -> None:
    svg = drawn()
    assert PICTURE.read_text("utf-8") == svg, "python -m tests.house.readme draws it again"
    assert digest(svg) in PICTURE.with_suffix(".png").read_bytes()


def test_the_picture_is_shown_with_words_for_those_who_cannot_see_it() -> None:
    assert f"]({PICTURE.with_suffix('.png').relative_to(README.parent).as_posix()})" in TEXT
    shown = [line for line in TEXT.splitlines() if line.startswith("![")]
    assert shown
    for words in shown:
        assert len(words.partition("]")[0]) > 40


def test_the_job_and_the_two_commands_are_on_the_first_screen() -> None:
    first = "\n".join(TEXT.splitlines()[:24])
    for words in ("manual wheelchair", "therapist", "![", "make demo", "make test"):
        assert words in first, words
