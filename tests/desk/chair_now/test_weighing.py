"""Weighings: entered, refused beside the field, counted on the bench, left out when stale."""

from __future__ import annotations

from typing import Any

import pytest
from django.urls import reverse

from chairwright.cli.weighed import weighed_with_setup
from chairwright.files.scales import read_scales
from chairwright_desk.audit.models import Entry
from chairwright_desk.bench.models import ClientFile
from chairwright_desk.bench.shown import bench_of
from chairwright_desk.bench.texts import texts_of
from chairwright_desk.chair_now.models import Weighing
from chairwright_desk.drafts.models import Draft

from ..kit.world import EXAMPLES, World
from ..orders.made import text_of
from ..standing.bench import made
from ..standing.chair_now import readings, weighing


def _fields(world: World, **more: Any) -> dict[str, Any]:
    held = {"weighed_on": "2026-11-25", "setup": made(world).pk, "loads_on": "on", "in_use": "on"}
    return {**readings(), **held, "revision": 0, **more}


def _enter(world: World, **more: Any) -> Any:
    address = reverse("chair_now:weigh", args=[world.client.pk])
    return world.visitor("clinician").post(address, _fields(world, **more))


def test_a_weighing_says_the_same_as_the_command_line(world: World) -> None:
    answer = _enter(world)
    kept = Weighing.objects.get()
    told = world.visitor("clinician").get(answer["Location"]).content.decode()
    expected = weighed_with_setup(read_scales(EXAMPLES / "scales" / "avg-001.yaml")).found
    for name in ("com_x_mm", "com_z_mm", "occupant_mass_kg"):
        assert f"{expected.values[name]:.1f} <span" in told, name
    assert kept.in_use
    assert "It counts for this client" in told


def test_the_bench_takes_the_client_as_weighed(world: World) -> None:
    setup, texts = made(world), texts_of(world.client)
    assert texts is not None
    before = bench_of(setup, texts)
    assert before.person.weighed is None
    _enter(world)
    after = bench_of(setup, texts)
    assert after.person.weighed is not None
    assert after.key != before.key
    kept = Weighing.objects.get()
    assert after.person.occupant.body.mass_kg == pytest.approx(79.4, abs=0.05)  # 99.4 less chair
    address = reverse("chair_now:weighing-use", args=[world.client.pk, kept.pk])
    world.visitor("clinician").post(address, {"use": "no"})
    assert bench_of(setup, texts).key == before.key


def test_the_weighing_sheet_and_its_audit_row(world: World) -> None:
    held = weighing(world)
    key = [world.client.pk, held.pk]
    visitor = world.visitor("reader")
    shown = visitor.get(reverse("chair_now:weighing", args=key)).content.decode()
    address = reverse("chair_now:weighing-sheet", args=key)
    assert address in shown
    sheet = visitor.get(address)
    text = text_of(sheet.content)
    found = weighed_with_setup(read_scales(EXAMPLES / "scales" / "avg-001.yaml")).found
    assert f"Centre of mass above floor {found.values['com_z_mm']:.1f}" in text
    assert held.setup_name in text
    entry = Entry.objects.get(kind="export")
    assert (entry.record, entry.fields) == (held.pk, ["weighing-sheet.pdf"])


def test_the_newest_in_use_counts(world: World) -> None:
    _enter(world)
    _enter(world, weighed_on="2026-11-20", level_total="99.3 kg")
    older = Weighing.objects.get(weighed_on="2026-11-20")
    shown = reverse("chair_now:weighing", args=[world.client.pk, older.pk])
    assert "A newer weighing counts" in world.visitor("reader").get(shown).content.decode()


def test_measures_changed_since_then_put_the_estimate_back(world: World) -> None:
    setup = made(world)
    _enter(world)
    held = ClientFile.objects.get(client=world.client)
    heavier = held.client_text.replace("body_mass: 78 kg", "body_mass: 84 kg")
    assert heavier != held.client_text
    ClientFile.objects.filter(pk=held.pk).update(client_text=heavier)
    texts = texts_of(world.client)
    assert texts is not None
    assert bench_of(setup, texts).person.weighed is None
    shown = reverse("chair_now:show", args=[world.client.pk])
    assert "Weigh again after a change of measures" in (
        world.visitor("clinician").get(shown).content.decode()
    )


@pytest.mark.parametrize(
    ("field", "typed", "words"),
    [
        ("wheelbase", "", "This field is required"),
        ("level_rear_left", "3x", "a number with a unit"),
        ("level_rear_left", "", "rear left must be given"),
        ("level_total", "199.4 kg", "sum to one mass"),
        ("raised_casters", "", "raised casters must be given"),
        ("wheelbase", "9000", "between 150 and 1200"),
    ],
)
def test_what_cannot_be_stands_beside_its_field(
    world: World, field: str, typed: str, words: str
) -> None:
    answer = _enter(world, **{field: typed})
    assert answer.status_code == 200
    assert not Weighing.objects.exists()
    assert any(words in each for each in answer.context["form"].errors[field])
    assert readings()["level_caster_left"] in answer.content.decode()


def test_without_the_block_there_is_no_height_and_nothing_counts(world: World) -> None:
    answer = _enter(world, raised_block="", raised_casters="")
    told = world.visitor("clinician").get(answer["Location"]).content.decode()
    assert "The height is not known" in told
    assert "It does not count" in told


def test_a_draft_is_filled_in_again(world: World) -> None:
    key = f"chair_now.weigh:{world.client.pk}"
    Draft.objects.create(
        user=world.people["clinician"], form_key=key, fields={"wheelbase": ["361"]}
    )
    made(world)
    shown = world.visitor("clinician").get(reverse("chair_now:weigh", args=[world.client.pk]))
    assert 'value="361"' in shown.content.decode()


def test_somebody_else_was_faster(world: World) -> None:
    kept = weighing(world)
    address = reverse("chair_now:weighing-change", args=[world.client.pk, kept.pk])
    fields = _fields(world, revision=1)
    assert world.visitor("clinician").post(address, fields).status_code == 302
    assert world.visitor("specialist").post(address, fields).status_code == 409
