"""What the calls do: two at once, choices that are guarded, work under way, an order's way."""

from __future__ import annotations

import json
from typing import Any

from chairwright_desk.bench.models import Setup
from chairwright_desk.clients.models import Client
from chairwright_desk.lines.models import OwnLine
from chairwright_desk.orders.models import Order, OrderStep

from ..kit.world import EXAMPLES, World
from ..standing.bench import made
from ..standing.lines import made as made_line
from ..standing.orders import in_status


class Caller:
    """Calls with a session."""

    def __init__(self, world: World, role: str = "clinician") -> None:
        self.visitor = world.visitor(role)

    def __call__(self, method: str, path: str, sent: Any = None) -> Any:
        data = "" if sent is None else json.dumps(sent)
        return self.visitor.generic(method, f"/api/{path}", data, content_type="application/json")


def test_a_client_is_made_found_and_changed(world: World) -> None:
    call = Caller(world)
    client = call("POST", "clients", {"reference": "NEW-7", "team": world.team.pk}).json()
    assert client["revision"] == 1
    found = call("POST", "clients/search", {"holds": "new"}).json()
    assert [each["id"] for each in found["clients"]] == [client["id"]]
    sent = {"revision": 1, "keep_until": "2032-01-31"}
    saved = call("PATCH", f"clients/{client['id']}", sent).json()
    assert (saved["reference"], saved["keep_until"]) == ("NEW-7", "2032-01-31")
    cleared = call("PATCH", f"clients/{client['id']}", {"revision": 2, "keep_until": None})
    assert cleared.json()["keep_until"] is None
    taken = call("PATCH", f"clients/{client['id']}", {"revision": 3, "reference": "AVG-001"})
    assert taken.status_code == 409


def test_the_second_of_two_is_told_both_versions_and_nothing_is_lost(world: World) -> None:
    call, path = Caller(world), f"clients/{world.client.pk}"
    first = call("PATCH", path, {"revision": 1, "keep_until": "2030-01-01"}).json()
    second = call("PATCH", path, {"revision": 1, "keep_until": "2040-01-01"})
    assert second.status_code == 409
    told = second.json()
    assert told["saved"] == first
    assert told["yours"] == {"revision": 1, "keep_until": "2040-01-01"}
    world.client.refresh_from_db()
    assert str(world.client.keep_until) == "2030-01-01"


def test_a_client_of_another_team_cannot_be_made(world: World) -> None:
    answer = Caller(world)("POST", "clients", {"reference": "X-1", "team": world.other.pk})
    assert answer.status_code == 422
    assert not Client.objects.filter(reference="X-1").exists()


def test_a_setup_is_changed_guarded_and_taken_back_on_the_bench(world: World) -> None:
    call, setup = Caller(world), made(world)
    path = f"clients/{world.client.pk}/setups/{setup.pk}"
    before = call("GET", path).json()
    saved = call("PATCH", path, {"revision": 1, "codes": {"cushion": "Q50"}}).json()
    assert saved["codes"] == {**before["codes"], "cushion": "Q50"}
    setup.refresh_from_db()
    assert setup.last_step == {"cushion": [before["codes"]["cushion"], "Q50"]}
    for codes in ({"cushion": "no such"}, {"no such": "Q50"}):
        refused = call("PATCH", path, {"revision": 2, "codes": codes})
        assert refused.status_code == 422
        assert call("POST", f"{path}/judge", {"codes": codes}).status_code == 422
    late = call("PATCH", path, {"revision": 1, "name": "mine"})
    assert late.status_code == 409
    assert late.json()["saved"]["codes"]["cushion"] == "Q50"


def test_a_setup_is_judged_as_the_bench_judges_it(world: World) -> None:
    from chairwright_desk.bench.bridge import state_of
    from chairwright_desk.bench.shown import bench_of
    from chairwright_desk.bench.texts import texts_of

    setup = made(world)
    texts = texts_of(world.client)
    assert texts
    told = Caller(world)("POST", f"clients/{world.client.pk}/setups/{setup.pk}/judge", {}).json()
    described = state_of(bench_of(setup, texts), setup.codes).setup
    assert described
    values = {each["name"]: each for each in told["figures"]}
    assert values["tip_rear_locked_deg"]["value"] == described.figures["tip_rear_locked_deg"]
    assert values["tip_rear_locked_deg"]["spread"] == described.spreads["tip_rear_locked_deg"]
    musts = [a for each in told["figures"] for a in each["asked"] if a["must"]]
    assert musts
    assert {a["verdict"] for a in musts} <= {
        "holds", "fails", "not known", "holds on nominal values",
    }  # fmt: skip


def test_the_best_is_made_into_a_setup_and_its_front_is_work(world: World) -> None:
    call, client = Caller(world), world.client
    setup = made(world)
    best = call("POST", f"clients/{client.pk}/best", {"line": "everyday"}).json()
    assert best["codes"] is None or set(best["codes"]) == set(setup.codes)
    sent = {"work": "front", "client": client.pk, "setup": setup.pk}
    job = call("POST", "jobs", sent)
    assert job.status_code == 202
    told = call("GET", f"jobs/{job.json()['id']}").json()
    assert told["state"] == "done", told
    assert told["result"]["found"]
    assert call("GET", "jobs").json()["jobs"][0]["id"] == told["id"]


def test_without_measures_it_is_said_what_comes_first(world: World) -> None:
    client = world.add_client("EMPTY-1")
    answer = Caller(world)("POST", f"clients/{client.pk}/setups", {"name": "first"})
    assert answer.status_code == 409
    assert "measures" in answer.json()["remedy"]
    assert not Setup.objects.filter(client=client).exists()


def test_a_line_text_is_checked_by_line(world: World) -> None:
    call = Caller(world)
    told = call("POST", "lines/check", {"text": "format: another\n"}).json()
    assert told["good"] is False
    assert told["problems"][0]["where"].startswith("line:1")
    path = next(iter((EXAMPLES / "lines").glob("*.yaml")), None)
    if path is not None:
        good = call("POST", "lines/check", {"text": path.read_text("utf-8")}).json()
        assert good["good"], good


def test_an_order_goes_on_by_its_roles(world: World) -> None:
    order = in_status(world, "ordered")
    path = f"orders/{order.pk}/step"
    assert Caller(world)("POST", path, {"revision": 1, "to": "delivered"}).status_code == 409
    call = Caller(world, "builder")
    told = call("POST", path, {"revision": 1, "to": "building"}).json()
    assert told["status"] == "building"
    built = call("POST", path, {"revision": 2, "to": "built"}).json()
    assert "delivered" not in built["steps"], "the builder does not deliver"
    sent = {"revision": 3, "to": "delivered", "day": "2026-11-24", "serial": "S-9"}
    assert call("POST", path, sent).status_code == 403
    done = Caller(world)("POST", path, sent).json()
    assert (done["status"], done["delivered"], done["serial"]) == ("delivered", "2026-11-24", "S-9")
    assert done["review_due"] > "2026-11-24"
    late = Caller(world)("POST", path, sent)
    assert late.status_code == 409
    assert late.json()["saved"]["status"] == "delivered"
    assert OrderStep.objects.filter(order=order, after="delivered").count() == 1


def test_an_order_is_made_with_the_next_number_and_its_paper_opened(world: World) -> None:
    call, setup = Caller(world), made(world)
    made_one = call("POST", f"clients/{world.client.pk}/orders", {"setup": setup.pk})
    assert made_one.status_code == 201, made_one.content
    order = made_one.json()
    assert Order.objects.get(pk=order["id"]).number == order["number"]
    again = {"setup": setup.pk, "number": order["number"]}
    assert call("POST", f"clients/{world.client.pk}/orders", again).status_code == 409
    paper = call("GET", f"orders/{order['id']}/papers/build-sheet")
    assert paper.content.startswith(b"%PDF")
    builder = Caller(world, "builder")
    fewer = builder("GET", f"orders/{order['id']}").json()["papers"]
    hidden = set(order["papers"]) - set(fewer)
    assert hidden, "the builder has fewer papers"
    for name in hidden:
        address = f"orders/{order['id']}/papers/{name}"
        assert builder("GET", address).status_code == 404


def test_a_teams_own_line_is_listed_for_those_who_may_use_it(world: World) -> None:
    version = made_line(world).versions.get(number=1)
    name = f"our-line@{version.pk}"
    told = {each["name"]: each["words"] for each in Caller(world)("GET", "lines").json()["lines"]}
    assert told[name] == "Our folding chair, version 1"
    assert "everyday" in told
    OwnLine.objects.update(team=world.other)
    told = {each["name"]: each["words"] for each in Caller(world)("GET", "lines").json()["lines"]}
    assert name not in told
