"""``chairwright payer``: the answer, what to ask, the path, and refusals."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import Any

import pytest

from chairwright.cli import payer
from chairwright.cli.report import run_quietly
from chairwright.order.payer import assess
from chairwright.order.payer_facts import facts_of
from chairwright.order.payer_lines import order_lines
from chairwright.order.payer_load import load_scheme
from chairwright.order.payer_model import CERTAINTY
from chairwright.order.payer_result import NO_PROMISE, MissingFact
from tests.laws.example_sweeps import EXAMPLES, SETUPS, example

SCHEMES = ("us-hcpcs", "demo")
AVERAGE = str(SETUPS / "avg-001.yaml")
AT_HOME = ("activity_limited=yes", "cane_or_walker_enough=no", "home_access=yes",
           "used_at_home=yes", "unwilling=no")  # fmt: skip
WIDEST = 140


def run(*words: str) -> int:
    parser = argparse.ArgumentParser(allow_abbrev=False)
    payer.add_arguments(parser)
    return run_quietly(lambda: payer.run(parser.parse_args(words)))


def shown(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert run(*words) == 0
    captured = capsys.readouterr()
    assert captured.err == ""
    return captured.out


def document(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(shown(capsys, *words, "--json"))
    return found


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize("name", EXAMPLES)
def test_every_example_is_answered_and_nothing_is_promised(
    name: str, scheme: str, capsys: pytest.CaptureFixture[str]
) -> None:
    text = shown(capsys, str(SETUPS / f"{name}.yaml"), "--scheme", scheme)
    lines = text.splitlines()
    assert lines[0].startswith(name.upper())
    assert NO_PROMISE in lines[:6]
    assert lines[-1] == NO_PROMISE
    assert text.index("\nPlease find out (") < text.index("\nHow this came about\n")
    assert all(len(line) <= WIDEST and line == line.rstrip() for line in lines)
    for word in ("None", "True", "False", "Decimal", "{", "}"):
        assert word not in text


def missing(name: str, told: dict[str, str]) -> tuple[MissingFact, ...]:
    scheme, opened = load_scheme("us-hcpcs"), example(name)
    person = opened.person
    facts = facts_of(scheme, opened.setup, person.client, person.measures, told)
    return assess(scheme, facts, order_lines(scheme, opened.setup)).missing


@pytest.mark.parametrize("answer", ["yes", "no"])
@pytest.mark.parametrize("name", EXAMPLES)
def test_answering_what_is_asked_leaves_nothing_to_ask(
    name: str, answer: str, capsys: pytest.CaptureFixture[str]
) -> None:
    asked, told = load_scheme("us-hcpcs").asked, dict[str, str]()
    while open_facts := missing(name, told):
        assert {each.name for each in open_facts}.isdisjoint(told)
        for each in open_facts:
            fact = asked[each.name]
            assert fact.ask.endswith("?")
            value = answer if fact.kind == "yes or no" else "3"
            told[each.name] = next(iter(fact.words)) if fact.words else value
    words = [f"{fact}={value}" for fact, value in told.items()]
    text = shown(capsys, str(SETUPS / f"{name}.yaml"), "--fact", *words)
    assert "\nNothing is left to ask.\n" in text


def test_the_text_names_class_codes_and_what_decides(capsys: pytest.CaptureFixture[str]) -> None:
    text = shown(capsys, AVERAGE)
    assert "\nBase code: K0006 heavy duty\n" in text
    assert "weight capacity 286.6 lb (least load limit of its parts), must be above 250 lb" in text
    row = next(line for line in text.splitlines() if line.startswith("Anti-tip device"))
    assert row.split()[2:5] == ["TS", "E0971", "2"]
    assert "\n     severe_spasticity=yes or no (for K0006)\n" in text
    assert "(restated by a secondary source)" in text
    assert "(from memory, unverified)" in text
    assert "Not covered" not in text


def test_what_is_not_covered_says_why_and_what_the_client_could_have(
    capsys: pytest.CaptureFixture[str],
) -> None:
    text = shown(capsys, AVERAGE, "--fact", *AT_HOME, "severe_spasticity=no")
    part = text.partition("\nNot covered by these criteria\n")[2].partition("\n\n")[0]
    words = " ".join(part.split())
    assert "K0006 heavy duty: client's weight 172.0 lb" in words
    assert "must be above 250 lb; severe spasticity no (declared), must be yes" in words
    assert "For another chair, the test of the client holds with K0001." in words


def test_where_sources_disagree_both_paths_are_shown(capsys: pytest.CaptureFixture[str]) -> None:
    told = ["base=K0005", "full_time_user=yes", "individual_fitting=no", "atp_involved=yes",
            "specialty_evaluation=yes"]  # fmt: skip
    text = shown(capsys, AVERAGE, "--fact", *AT_HOME, *told)
    assert "Base code: K0005 ultralightweight (declared)" in text
    assert "not known: its sources disagree" in text
    assert "declared; the tests of the chair held here do not show it" in text
    assert "        either is enough: holds" in text
    assert "        both are needed: fails" in text


def test_the_json_says_all(capsys: pytest.CaptureFixture[str]) -> None:
    found = document(capsys, AVERAGE, "--fact", "hours_a_day=1.9", "arm_height_needed=yes")
    assert found["notice"] == NO_PROMISE
    assert found["client"] == "AVG-001"
    (base,) = found["classes"]
    assert (base["class"], base["possible"]) == ("K0006", ["K0006"])
    assert [each["code"] for each in base["tests"] if each["chair"] == "holds"] == ["K0006"]
    assert found["not_covered"] == ["E0973"]
    assert found["facts"]["hours_a_day"] == {
        "value": "1.90",
        "unit": "h a day",
        "how": "declared",
        "words": "declared",
    }
    arms = next(each for each in found["lines"] if each["line"] == "arm_support")
    (code,) = arms["codes"]
    assert (code["code"], code["pieces"], code["client"]) == ("E0973", 2, "fails")
    last = code["client_path"]["tests"][-1]
    assert (last["wanted"], last["verdict"]) == ("at least 2 h a day", "fails")
    assert last["certainty"] in CERTAINTY
    assert set(found["scheme"]["sources"]) >= {last["source"]}


def test_a_scheme_file_of_ones_own(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = Path(load_scheme("demo").path).read_text("utf-8")
    for old, new in (
        ("below: 12}", "below: 18}"),
        ("at_least: 12, at_most: 17}", "at_least: 18, at_most: 19}"),
        ("above: 17}", "above: 19}"),
    ):
        assert text.count(old) == 1
        text = text.replace(old, new)
    own = tmp_path / "ours.yaml"
    own.write_text(text, encoding="utf-8")
    assert "Weight class: W3 heavy" in shown(capsys, AVERAGE, "--scheme", "demo")
    assert "Weight class: W1 light" in shown(capsys, AVERAGE, "--scheme", str(own))


@pytest.mark.parametrize(
    ("words", "parts"),
    [
        (("--scheme", "us-hcpc"), ("--scheme: ", "Did you mean us-hcpcs?")),
        (("--scheme", "./none.yaml"), ("none.yaml: the file must exist",)),
        (("--fact", "hours_a_day"), ("--fact: a fact must be written name=value", "hours_a_day=6")),
        (("--fact", "=2"), ("name=value",)),
        (("--fact", "hours_a_day="), ("name=value",)),
        (("--fact", "hours=2"), ("Did you mean hours_a_day?",)),
        (("--fact", "hours_a_day=two"), ("--fact hours_a_day: ", "a number in h a day")),
        (("--fact", "severe_spasticity=maybe"), ("must be one of yes, no",)),
        (("--fact", "rental=yes", "--fact", "rental=no"), ("rental must have one value",)),
        (("--fact", "client_weight=20 in"), ("a mass must be a number with a unit",)),
    ],
)
def test_refusals(
    words: tuple[str, ...], parts: tuple[str, ...], capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(AVERAGE, *words) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert "Traceback" not in captured.err
    for part in parts:
        assert part in captured.err


def test_a_mistake_in_a_scheme_file_is_named_by_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = Path(load_scheme("demo").path).read_text("utf-8")
    own = tmp_path / "ours.yaml"
    own.write_text(text.replace("has: table", "has: tabel"), encoding="utf-8")
    line = text[: text.index("has: table")].count("\n") + 1
    assert run(AVERAGE, "--scheme", str(own)) == 2
    assert f"{own}:{line}: accessories.when.has: " in capsys.readouterr().err


def test_the_same_input_gives_the_same_text(capsys: pytest.CaptureFixture[str]) -> None:
    first = shown(capsys, AVERAGE, "--fact", *AT_HOME)
    assert shown(capsys, AVERAGE, "--fact", *reversed(AT_HOME)) == first
