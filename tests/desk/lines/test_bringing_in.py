"""Bringing a line file in: what is refused with the input kept, what is kept, what is in use."""

from __future__ import annotations

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from chairwright_desk.accounts.roles import Role
from chairwright_desk.audit.models import Entry
from chairwright_desk.bench.bridge import FileText, open_line
from chairwright_desk.lines.models import OwnLine, Version
from chairwright_desk.lines.posted import MOST_BYTES
from chairwright_desk.lines.texts import line_text, lines_known

from ..kit.world import World
from ..standing.lines import made, own_text

NEW = "/lines/new/"


def sent(world: World, content: bytes, name: str = "ours.yaml", text: str = "") -> str:
    """The page that answers a file, after any redirect."""
    file = SimpleUploadedFile(name, content)
    visitor = world.visitor("specialist")
    data = {"team": world.team.pk, "file": file, "text": text}
    return visitor.post(NEW, data, follow=True).content.decode()


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"%PDF-1.7 and more", "This is a PDF."),
        (b"\x89PNG\r\n\x1a\n", "This is a picture."),
        (b"PK\x03\x04 and more", "This is a packed file"),
        (b"name: x\x00y", "This is no text."),
        (b"name: a\nmaker: B\xfccher\n", "Line 2 of this file holds the byte 0xFC"),
        (b"  \n", "This file is empty."),
        (b"# " + b"x" * MOST_BYTES, f"{MOST_BYTES + 2:,} bytes"),
    ],
)
def test_what_is_no_line_file_is_refused_and_the_text_stays(
    world: World, content: bytes, said: str
) -> None:
    page = sent(world, content, text="name: typed-before")
    assert said in page
    assert "name: typed-before" in page
    assert not OwnLine.objects.exists()


def test_neither_file_nor_text_is_asked_for(world: World) -> None:
    data = {"team": world.team.pk, "text": " "}
    page = world.visitor("specialist").post(NEW, data).content.decode()
    assert "Choose a file, or write its text below." in page


@pytest.mark.parametrize(
    ("text", "line", "said"),
    [
        ("name: ours\na: &x [1]\nb: [*x, *x]\n", 2, "values must be written out"),
        ("name: ours\nb: " + "[" * 40 + "]" * 40 + "\n", 2, "nested at most"),
        ("name: ours\nname: ours\n", 2, "a key must stand once"),
        ("name: ours\na: [1\n", 2, "the file must be valid YAML"),
    ],
)
def test_a_text_that_cannot_be_read_is_kept_with_its_message_at_its_line(
    world: World, text: str, line: int, said: str
) -> None:
    page = sent(world, text.encode())
    version = Version.objects.get()
    assert (version.line.name, version.good, version.text) == ("ours", False, text)
    assert version.told[0]["line"] == line
    assert said in page
    assert f'href="#L{line}"' in page
    assert lines_known(world.team.pk) == ()


def test_each_mistake_stands_at_its_line_and_remarks_apart(world: World) -> None:
    text = (
        own_text().replace("code: SFS", "code: SFK", 1).replace("build_days: 15", "build_days: -1")
    )
    page = sent(world, text.encode())
    lines = text.split("\n")
    told = {each["line"] for each in Version.objects.get().told if each["severity"] == "mistake"}
    assert told
    assert all("SFK" in lines[at - 1] or "build_days" in lines[at - 1] for at in told)
    assert "Mistakes: to be put right" in page
    assert "It is not in use" in page


def test_a_good_line_is_in_use_and_can_be_opened_on_the_bench(world: World) -> None:
    page = sent(world, own_text().encode())
    assert "is in use from now on" in page
    assert "Remarks: look at them" in page
    [(name, words)] = lines_known(world.team.pk)
    assert name == f"our-line@{Version.objects.get().pk}"
    assert "Everyday folding chair" in words
    assert open_line(FileText(name, line_text(name))).name == "our-line"
    assert line_text(name, world.team.pk)
    assert line_text(name, world.other.pk) == ""
    assert lines_known(world.other.pk) == ()
    assert line_text("our-line") == "", "a plain name says nothing without its team"


def test_the_last_good_version_stays_in_use_under_one_with_mistakes(world: World) -> None:
    sent(world, own_text().encode())
    line = OwnLine.objects.get()
    visitor = world.visitor("specialist")
    address = reverse("lines:change", args=[line.pk])
    wrong = own_text().replace("base_price: 640", "base_price: much")
    visitor.post(address, {"text": wrong, "revision": line.revision})
    assert [v.good for v in line.versions.order_by("number")] == [True, False]
    first, wrong_one = line.versions.order_by("number")
    assert lines_known(world.team.pk)[0][0] == f"our-line@{first.pk}"
    line.refresh_from_db()
    better = own_text().replace("base_price: 640", "base_price: 650")
    visitor.post(address, {"text": better, "revision": line.revision})
    third = line.versions.get(number=3)
    assert lines_known(world.team.pk)[0][0] == f"our-line@{third.pk}"
    assert "base_price: 650" in line_text("our-line", world.team.pk)
    assert "base_price: 640" in line_text(f"our-line@{first.pk}")
    assert line_text(f"our-line@{wrong_one.pk}") == ""


def test_a_file_of_a_known_name_is_the_next_version(world: World) -> None:
    for _ in range(2):
        sent(world, own_text().encode())
    assert OwnLine.objects.get().latest == 2


def test_the_names_of_the_desks_lines_are_taken(world: World) -> None:
    page = sent(world, own_text("everyday").encode())
    assert "comes with the desk" in page
    assert "Alder Row" in page, "the text is in the form now"
    assert not OwnLine.objects.exists()


def test_a_version_keeps_the_name_of_its_line(world: World) -> None:
    line = made(world)
    data = {"text": own_text("another"), "revision": line.revision}
    world.visitor("specialist").post(reverse("lines:change", args=[line.pk]), data)
    newest = line.versions.order_by("-number")[0]
    assert not newest.good
    assert "must keep the name of its line" in str(newest.told)


def test_who_comes_second_sees_both_and_loses_nothing(world: World) -> None:
    line = made(world)
    address = reverse("lines:change", args=[line.pk])
    data = {"text": own_text(), "revision": line.revision}
    world.visitor("administrator").post(address, data)
    file = SimpleUploadedFile("x.yaml", own_text().replace("640", "777").encode())
    answer = world.visitor("specialist").post(address, {"file": file, "revision": line.revision})
    assert answer.status_code == 409
    assert "base_price: 777" in answer.content.decode()
    assert line.versions.count() == 3


def test_put_aside_it_is_not_offered_any_more_but_stays_readable(world: World) -> None:
    line = made(world)
    address = reverse("lines:offered", args=[line.pk])
    world.visitor("specialist").post(address, {"offered": "no", "revision": line.revision})
    assert lines_known(world.team.pk) == ()
    assert line_text("our-line", world.team.pk)


def test_a_role_without_it_cannot_bring_in_even_by_another_team(world: World) -> None:
    data = {"team": world.other.pk, "text": own_text()}
    assert world.visitor("specialist").post(NEW, data).status_code == 200
    assert not OwnLine.objects.exists()
    for role in set(Role.values) - {"specialist", "administrator"}:
        assert world.visitor(role).post(NEW, data).status_code == 403


def test_the_trail_names_the_change_and_not_the_text(world: World) -> None:
    sent(world, own_text().encode())
    entries = Entry.objects.filter(kind="change", record_kind="lines.version")
    assert [each.fields for each in entries] == [["text"]]
