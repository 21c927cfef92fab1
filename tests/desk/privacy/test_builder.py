"""A builder learns nothing of who a client is: pages, parts, answers to forms, files, calls."""

from __future__ import annotations

import io
import re
import zipfile
from typing import Any

import pytest
from pypdf import PdfReader

from chairwright_desk.accounts.roles import TABLE, Role
from chairwright_desk.api.operations import Operation

from ..api.samples import OPERATIONS, address, allowed, ask, body, ids, token
from ..kit.standing import Standing, entries
from ..kit.world import WHO, World

HINTS = ("Who this is", "iagnosis", "Date of birth", "/who/")
"""What a page for a builder does not even speak of."""
SPEAKS = {"api:document"}
"""The same for everybody, strangers among them."""
MARK = re.compile(r"X-CSRFToken[^}]*")
"""Each page's own, made by chance."""
MAY = [each for each in entries() if Role.BUILDER.value in each.allowed and not each.personal]
MAY_CALL = [each for each in OPERATIONS.values() if Role.BUILDER.value in allowed(each)]


def text_of(kind: str, content: bytes) -> str:
    """All the text of an answer, that of papers and of files in a zip among it."""
    if kind.startswith("application/pdf"):
        return "".join(page.extract_text() for page in PdfReader(io.BytesIO(content)).pages)
    if kind.startswith("application/zip"):
        with zipfile.ZipFile(io.BytesIO(content)) as file:
            return "".join(text_of(_kind(name), file.read(name)) for name in file.namelist())
    return content.decode(errors="replace")


def _kind(name: str) -> str:
    ending = name.rpartition(".")[2]
    return f"application/{ending}"


def told_by(answer: Any) -> str:
    heads = "".join(f"{name}: {value}\n" for name, value in answer.headers.items())
    content = b"".join(answer.streaming_content) if answer.streaming else answer.content
    return heads + text_of(answer.headers.get("Content-Type", ""), content)


@pytest.mark.parametrize("entry", MAY, ids=str)
def test_no_page_part_or_form_tells_a_builder(entry: Standing, world: World) -> None:
    builder, place = world.visitor("builder"), entry.address(world)
    answers = []
    if entry.reads:
        answers += [builder.get(place), builder.get(place, headers={"HX-Request": "true"})]
    if "POST" in entry.page.methods:
        answers.append(builder.post(place, entry.data(world)))
    for told in map(told_by, answers):
        assert [words for words in WHO if words in told] == []
        if entry.view not in SPEAKS:
            assert [words for words in HINTS if words in told] == []


@pytest.mark.parametrize("each", MAY_CALL, ids=lambda each: each.name)
def test_no_call_tells_a_builder(each: Operation, world: World) -> None:
    answer = ask(each, world, token(world, "builder"))
    told = told_by(answer)
    assert [words for words in WHO if words in told] == []
    assert "diagnosis" not in told


def test_a_builder_is_refused_alike_whether_anything_is_entered_or_not(world: World) -> None:
    builder, empty = world.visitor("builder"), world.add_client("NEW-1")
    for path in ("/clients/{}/who/", "/clients/{}/who/change/", "/api/clients/{}/identity"):
        full, bare = (builder.get(path.format(each.pk)) for each in (world.client, empty))
        assert full.status_code == bare.status_code == 403
        assert MARK.sub("", told_by(full)) == MARK.sub("", told_by(bare))


def test_a_builders_refused_change_says_nothing(world: World) -> None:
    put = OPERATIONS["put_identity"]
    path, text = address(put, ids(put, world)), body(put, world)
    for sent in (text, "{", None):
        answer = world.visitor("builder").put(path, sent or "", content_type="application/json")
        assert answer.status_code == 403
        assert [words for words in WHO if words in answer.content.decode()] == []


def test_who_may_take_everything_out_or_away_may_see_who_it_is() -> None:
    assert TABLE["client.export"] <= TABLE["identity.see"]
    assert TABLE["client.remove"] <= TABLE["identity.see"]
    assert TABLE["identity.change"] <= TABLE["identity.see"] <= TABLE["client.see"]
    assert Role.BUILDER not in TABLE["identity.see"]
