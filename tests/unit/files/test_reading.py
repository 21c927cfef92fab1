"""Text and YAML files from outside: what is understood, and every refusal with its line."""

from __future__ import annotations

import time
from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.reading import read_text_file, read_yaml


def read(tmp_path: Path, content: bytes | str) -> object:
    path = tmp_path / "a.yaml"
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return read_yaml(path).data


def refused(tmp_path: Path, content: bytes | str) -> list[str]:
    with pytest.raises(InputError) as caught:
        read(tmp_path, content)
    return [str(problem).removeprefix(f"{tmp_path}/") for problem in caught.value.problems]


@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("7", 7), ("-7", -7), ("7.5", 7.5), (".5", 0.5), ("1e3", 1000.0), ("'7'", "7"),
        ("true", True), ("no", "no"), ("", None), ("~", None), ("12:30", "12:30"),
        ("2026-01-01", "2026-01-01"), ("16 1/2 in", "16 1/2 in"), ("[1, a]", [1, "a"]),
        ("{x: 1, 2: b}", {"x": 1, 2: "b"}),
    ],
)  # fmt: skip
def test_values_get_the_types_of_yaml_1_2(tmp_path: Path, typed: str, value: object) -> None:
    found = read(tmp_path, f"a: {typed}\n")
    assert found == {"a": value}
    assert isinstance(found, dict)
    assert type(found["a"]) is type(value)


def test_byte_order_mark_and_windows_line_ends_are_read(tmp_path: Path) -> None:
    assert read(tmp_path, b"\xef\xbb\xbfa: 1\r\nb: x\r\n") == {"a": 1, "b": "x"}


def test_every_value_knows_its_line_and_its_text(tmp_path: Path) -> None:
    path = tmp_path / "a.yaml"
    path.write_text("# top\na: 1\n\nb:\n  - {code: 007}\n  - {code: Y}\n", encoding="utf-8")
    source = read_yaml(path)
    assert source.line_of(("a",)) == f"{path}:2"
    assert source.line_of(("b", 1, "code")) == f"{path}:6"
    assert source.line_of(("b", 0, "name")) == f"{path}:5"
    assert source.line_of(("z",)) == f"{path}:1"
    assert source.text_of(("b", 0, "code")) == "007"
    assert source.text_of(("b",)) == ""


@pytest.mark.parametrize(
    ("content", "line", "part"),
    [
        ("", "", "must not be empty"),
        ("  \n\n", "", "must not be empty"),
        ("# only a comment\n", "", "must not be empty"),
        ("- a\n- b\n", ":1", "keys and values"),
        ("just words\n", ":1", "keys and values"),
        ("a: 1\na: 2\n", ":2", "'a' a second time (first on line 1)"),
        ("a: 1\nb:\n  c: .nan\n", ":3", "must be finite; got .nan"),
        ("a: -.inf\n", ":1", "must be finite; got -.inf"),
        ("a: 1e999\n", ":1", "must be finite; got 1e999"),
        ("a: &x 1\nb: *x\n", ":1", "anchor or alias"),
        ("a: 1\nb: !!python/name:os.system x\n", ":2", "a tag"),
        ("a: 1\n---\nb: 2\n", ":2", "one document"),
        ("a: 1\n  b: 2\n", ":2", "valid YAML"),
        ("a:\n\tb: 1\n", ":2", "no tabs"),
        ("a: [1, 2\n", ":1", "the end of the file where ',' or ']' was expected (on line 2)"),
        ("a: 1\nb: {c: 1\nd: 2\n", ":2", "':' where ',' or '}' was expected (on line 3)"),
        ("a:\n  - [1, [2, 3]\n  - [4]\n", ":2", "'-' where ',' or ']' was expected (on line 3)"),
        ("a: {b: 1, c: 2 d: 3}\n", ":1", "check the commas"),
        ('a: 1\nb: "x\nc: 2\nd: 3\n', ":2", "Close every bracket and quote"),
        ("a:\n  - {b: 'x, c: 1}\n  - {b: 'y', c: 2}\n", ":2", "Close every bracket and quote"),
        ("a: " + "[" * 50, ":1", "nested at most 20 deep"),
        ("? [a, b]\n: 1\n", ":1", "a key must be a word"),
        ('a: "x\\0y"\n', ":1", "control characters"),
        (b"a: 1\nb: x\x1b[2J\n", ":2", "U+001B"),
        (b"a: 1\nb: caf\xe9\n", ":2", "UTF-8 text; got the byte 0xE9 at byte 12"),
        ("a: 1\n".encode("utf-16"), ":1", "UTF-8 text; got the byte 0xFF at byte 1"),
    ],
)
def test_refusals_name_the_line(tmp_path: Path, content: bytes | str, line: str, part: str) -> None:
    (message,) = refused(tmp_path, content)
    assert message.startswith(f"a.yaml{line}: ")
    assert part in message


def test_all_repeated_keys_and_infinite_numbers_are_listed(tmp_path: Path) -> None:
    messages = refused(tmp_path, "a: 1\nb: {c: 1, c: 2}\nd: .inf\na: 3\n")
    assert [message.split(": ")[0] for message in messages] == ["a.yaml:2", "a.yaml:3", "a.yaml:4"]


def test_entities_that_would_multiply_are_refused_at_once(tmp_path: Path) -> None:
    rows = ["a0: &a0 [x, x]"] + [f"a{n}: &a{n} [*a{n - 1}, *a{n - 1}]" for n in range(1, 40)]
    assert "anchor" in refused(tmp_path, "\n".join(rows))[0]


def test_folder_missing_file_and_device_are_refused(tmp_path: Path) -> None:
    for path, part in [
        (tmp_path, "got a folder"),
        (tmp_path / "none.yaml", "no such file"),
        (Path("/dev/zero"), "a device or pipe"),
        (tmp_path / ("x" * 300), "file name too long"),
        (tmp_path / "a\0b", "null byte"),
    ]:
        with pytest.raises(InputError, match=part):
            read_text_file(path)


def test_fifty_megabytes_are_refused_unread(tmp_path: Path) -> None:
    path = tmp_path / "noise"
    with path.open("wb") as stream:
        stream.truncate(50_000_000)
    started = time.perf_counter()
    with pytest.raises(InputError, match=r"larger than 2,000,000 bytes; got 50,000,000 bytes"):
        read_text_file(path)
    assert time.perf_counter() - started < 0.1


def test_a_thousand_lines_are_read_in_a_quarter_of_a_second(tmp_path: Path) -> None:
    row = "  - code: A1\n    name: a part\n    mass_kg: 3.6\n    at_mm: [1, 2]\n"
    path = tmp_path / "long.yaml"
    path.write_text("parts:\n" + row * 250, encoding="utf-8")
    times = []
    for _ in range(3):
        started = time.process_time()
        assert len(read_yaml(path).data["parts"]) == 250
        times.append(time.process_time() - started)
    assert min(times) < 0.25
