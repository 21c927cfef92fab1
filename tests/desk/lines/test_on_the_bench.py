"""A team's own line on the bench: offered, opened, and kept in the version it was made on."""

from __future__ import annotations

from django.urls import reverse

from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.texts import line_of

from ..kit.world import World
from ..standing.bench import made as made_setup
from ..standing.lines import made, own_text


def test_a_set_up_is_made_on_an_own_line_and_stays_on_its_version(world: World) -> None:
    made_setup(world)
    line, visitor = made(world), world.visitor("specialist")
    address = reverse("bench:new", args=[world.client.pk])
    assert "Our folding chair, version 1" in visitor.get(address).content.decode()
    name = f"our-line@{line.versions.get(number=1).pk}"
    visitor.post(address, {"name": "on ours", "line": name})
    setup = Setup.objects.get(name="on ours")
    assert setup.line == name
    newer = own_text().replace("{code: C6,", "{code: C66,").replace("C6", "C66")
    visitor.post(
        reverse("lines:change", args=[line.pk]), {"text": newer, "revision": line.revision}
    )
    page = visitor.get(reverse("bench:show", args=[world.client.pk, setup.pk]))
    assert page.status_code == 200
    assert "6 in soft caster" in page.content.decode()
    assert str(getattr(line_of(setup.line), "text", "")) == own_text()


def test_another_teams_line_cannot_be_taken(world: World) -> None:
    made_setup(world)
    version = made(world).versions.get(number=1)
    made(world).__class__.objects.update(team=world.other)
    address = reverse("bench:new", args=[world.client.pk])
    data = {"name": "theirs", "line": f"our-line@{version.pk}"}
    assert world.visitor("specialist").post(address, data).status_code == 200
    assert not Setup.objects.filter(name="theirs").exists()
