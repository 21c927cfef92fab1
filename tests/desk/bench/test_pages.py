"""The bench's pages by what they answer: steps, undo, refusals, two people at once, no script."""

from __future__ import annotations

from typing import Any

import pytest
from django.urls import reverse

from chairwright_desk.audit.models import Entry
from chairwright_desk.bench.bridge import opened
from chairwright_desk.bench.bridge.kept import Kept
from chairwright_desk.bench.bridge.words import NOMINAL
from chairwright_desk.bench.models import ClientFile, Setup

from ..kit.world import World
from .examples import client_text
from .made import address, field_of_lists, fresh, setup_of, step


@pytest.fixture
def setup(world: World) -> Setup:
    return setup_of(world)


def test_a_step_is_saved_and_answered_with_what_changed(
    world: World, setup: Setup, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(opened, "_STATES", Kept(8))  # nothing is worked out already
    answer = step(world.visitor("clinician"), setup, pick="cushion=Q50")
    told = answer.content.decode()
    assert fresh(setup).codes == {**setup.codes, "cushion": "Q50"}
    assert "Seat height front" in told
    assert 'data-into="#bench-looks' in told
    assert 'data-into="#pick-cushion' in told
    assert f'value="{setup.revision + 1}"' in told
    assert answer.headers["HX-Trigger-After-Swap"] == "bench-sketch"


def test_steps_go_back_and_forth(world: World, setup: Setup) -> None:
    visitor, codes = world.visitor("clinician"), [setup.codes]
    for pick in ("cushion=Q50", "axle_hole=E7", "camber=K0"):
        step(visitor, setup, pick=pick)
        codes.append(fresh(setup).codes)
    assert codes[2]["anti_tip"] != codes[1]["anti_tip"]  # the device went along
    for before in (codes[2], codes[1], codes[0], codes[0]):
        step(visitor, setup, view="undo", way="back")
        assert fresh(setup).codes == before
    for after in (codes[1], codes[2], codes[3], codes[3]):
        step(visitor, setup, view="undo", way="again")
        assert fresh(setup).codes == after
    step(visitor, setup, view="undo", way="back")
    step(visitor, setup, pick="finish=FB")
    assert fresh(setup).ahead == []


def test_a_slider_on_its_way_is_one_step_back(world: World, setup: Setup) -> None:
    visitor, along = world.visitor("clinician"), "D420 D440 D460"
    for at in ("1", "2"):
        fields: dict[str, Any] = {"slide-seat_depth": at, "along-seat_depth": along}
        answer = step(visitor, setup, by="slide-seat_depth", seat_depth="D420", **fields)
        told = answer.content.decode()
        assert 'data-into="#pick-seat_depth' in told
        assert 'data-into="#slide-part-seat_depth' not in told
    assert fresh(setup).codes["seat_depth"] == "D460"
    step(visitor, setup, view="undo")
    assert fresh(setup).codes == setup.codes
    assert fresh(setup).past == []


def test_a_refused_option_changes_nothing_and_offers_what_goes_with_it(
    world: World, setup: Setup
) -> None:
    visitor = world.visitor("clinician")
    told = step(visitor, setup, by="caster", caster="C5").content.decode()
    assert "Caster C5 is not allowed." in told
    assert "the long fork is made for 6 and 8 in casters" in told
    assert fresh(setup).codes == setup.codes
    offer = told.partition('name="pick" value="')[2].partition('"')[0]
    step(visitor, setup, pick=offer)
    assert fresh(setup).codes["caster"] == "C5"


def test_several_choices_at_once_must_go_together(world: World, setup: Setup) -> None:
    told = step(world.visitor("clinician"), setup, pick="caster=C5 fork=FL-2").content.decode()
    assert "Not changed:" in told
    assert fresh(setup).codes == setup.codes


@pytest.mark.parametrize("pick", ["caster=C99", "caster=", "caster"])
def test_an_unknown_option_is_told(world: World, setup: Setup, pick: str) -> None:
    answer = step(world.visitor("clinician"), setup, pick=pick)
    assert answer.status_code == 422
    assert "The line has no such option" in answer.content.decode()
    assert fresh(setup).codes == setup.codes


def test_without_script_the_lists_are_sent_and_one_of_them_counts(
    world: World, setup: Setup
) -> None:
    visitor, lists = world.visitor("clinician"), field_of_lists(setup)
    answer = step(visitor, setup, script=False, **{**lists, "back_height": "P425"})
    assert answer.status_code == 302
    assert fresh(setup).codes == {**setup.codes, "back_height": "P425"}
    answer = step(visitor, setup, script=False, **{**field_of_lists(setup), "caster": "C5"})
    assert answer.status_code == 200
    assert "Caster C5 is not allowed." in answer.content.decode()


def test_two_people_at_once_lose_nothing(world: World, setup: Setup) -> None:
    old = setup.revision
    step(world.visitor("specialist"), setup, pick="cushion=Q50")
    answer = world.visitor("clinician").post(
        address(setup, "step"), {"revision": old, "pick": "finish=FB"},
        headers={"HX-Request": "true"},
    )  # fmt: skip
    told = answer.content.decode()
    assert answer.status_code == 409
    assert "Specialist changed this set-up meanwhile" in told
    assert "finish=FB" in told
    assert fresh(setup).codes == {**setup.codes, "cushion": "Q50"}
    step(world.visitor("clinician"), setup, pick="finish=FB")
    assert fresh(setup).codes == {**setup.codes, "cushion": "Q50", "finish": "FB"}


def test_a_run_of_steps_is_one_line_of_the_trail(world: World, setup: Setup) -> None:
    visitor = world.visitor("clinician")
    for pick in ("cushion=Q50", "cushion=Q75", "camber=K0", "cushion=Q30"):
        step(visitor, setup, pick=pick)
    assert Entry.objects.filter(kind="change", record=setup.pk).count() == 1


def test_the_ledger_that_follows_a_sketch_has_spreads_and_places(
    world: World, setup: Setup
) -> None:
    visitor = world.visitor("reader")
    told = visitor.get(address(setup, "sure")).content.decode()
    assert 'data-into="#bench-follows' in told
    assert "±" in told
    assert "Bathroom door" in told


def test_a_reader_sees_and_cannot_change(world: World, setup: Setup) -> None:
    told = world.visitor("reader").get(address(setup)).content.decode()
    assert "Find the best" not in told
    assert "disabled" in told.partition('id="list-caster"')[2].partition(">")[0]


def test_the_best_set_up_is_put_on_the_bench_and_can_be_taken_back(
    world: World, setup: Setup
) -> None:
    visitor = world.visitor("clinician")
    step(visitor, setup, script=False, pick="fork=FL-3")
    worse = fresh(setup).codes
    answer = step(visitor, setup, script=False, view="best")
    assert answer.status_code == 302
    page = visitor.get(address(setup)).content.decode()
    assert "is on the bench, proven" in page
    assert "Every must holds" in page
    step(visitor, setup, view="undo")
    assert fresh(setup).codes == worse


def test_the_trade_off_has_a_link_and_a_row_for_each_point(world: World, setup: Setup) -> None:
    visitor = world.visitor("clinician")
    step(visitor, setup, script=False, view="trade")
    page = visitor.get(address(setup, "trade")).content.decode()
    points = page.count('href="#point-')
    assert points == page.count('id="point-') > 10
    assert "have changed since" not in page
    assert "The centre of mass is an estimate" in page  # beside tipping angles
    ClientFile.objects.filter(client=setup.client).update(places_text="")
    assert "have changed since" in visitor.get(address(setup, "trade")).content.decode()


def test_two_figures_are_chosen_for_the_picture_of_the_trade_off(
    world: World, setup: Setup
) -> None:
    visitor = world.visitor("reader")
    step(world.visitor("clinician"), setup, script=False, view="trade")
    usual = visitor.get(address(setup, "trade"))
    names = [aim["name"] for aim in usual.context["result"]["found"]["aims"]]
    assert len(names) == 3
    wished = visitor.get(f"{address(setup, 'trade')}?across={names[2]}&up={names[0]}")
    assert wished.context["axes"] == (names[2], names[0])
    picture, page = wished.context["picture"], wished.content.decode()
    assert picture.y_words == usual.context["picture"].x_words
    for name in (names[2], names[0]):
        assert f'<option value="{name}" selected>' in page
    assert page.count('href="#point-') == page.count('id="point-') > 10


def test_what_nominal_means_is_said_once_on_a_page(world: World, setup: Setup) -> None:
    visitor = world.visitor("reader")
    others = Setup.objects.filter(client=setup.client_id).exclude(pk=setup.pk)
    others.update(codes={**setup.codes, "cushion": "Q50"})
    every = Setup.objects.filter(client=setup.client_id).values_list("pk", flat=True)
    compare = reverse("bench:compare", args=[setup.client_id])
    told = f"{compare}?{'&'.join(f's={each}' for each in every)}"
    for page in (address(setup), address(setup, "try", "axle_hole"), told):
        shown = visitor.get(page).content.decode()
        assert shown.count(NOMINAL) == 1, page
        assert shown.index(NOMINAL) < shown.index("holds on nominal values</span>"), page


def test_why_not_names_what_is_missed_and_what_would_do(world: World, setup: Setup) -> None:
    told = world.visitor("clinician").get(address(setup, "why")).content.decode()
    assert "Overall width: 616 mm, must be at most 600 mm" in told
    assert 'value="hand_rim=RN"' in told


def test_where_nothing_fits_the_reasons_are_found(world: World, setup: Setup) -> None:
    text = client_text("avg-001").replace("at_most: 25 1/2 in", "at_most: 16 in")
    ClientFile.objects.filter(client=setup.client).update(client_text=text)
    visitor = world.visitor("clinician")
    step(visitor, setup, script=False, view="best")
    assert fresh(setup).codes == setup.codes
    page = visitor.get(address(setup, "trade")).content.decode()
    assert "No set-up of this line meets every must" in page
    assert "Overall width at most 406 mm" in page  # 16 x 25.4


def test_compare_takes_two_to_four_of_one_client(world: World, setup: Setup) -> None:
    visitor, base = world.visitor("reader"), reverse("bench:compare", args=[setup.client_id])
    other = Setup.objects.exclude(pk=setup.pk).get(client=setup.client_id)
    Setup.objects.filter(pk=other.pk).update(codes={**setup.codes, "cushion": "Q50"})
    page = visitor.get(f"{base}?s={setup.pk}&s={other.pk}").content.decode()
    assert "the setup and the other" in page
    assert "50 mm foam cushion" in page
    assert "The centre of mass is an estimate" in page  # beside tipping angles
    assert "A measured test and the maker" in page
    turned = visitor.get(f"{base}?s={setup.pk}&s={other.pk}&first={other.pk}")
    assert turned.context["beside"].names == (other.name, setup.name)
    assert f'<option value="{other.pk}" selected>' in turned.content.decode()
    assert "Choose two to 4" in visitor.get(f"{base}?s={setup.pk}").content.decode()
    assert visitor.get(f"{base}?s={setup.pk}&s=zzzz").status_code == 404


def test_a_set_up_is_found_under_its_own_client_only(world: World, setup: Setup) -> None:
    other = world.add_client("TAL-002")
    wrong = reverse("bench:show", args=[other.pk, setup.pk])
    assert world.visitor("clinician").get(wrong).status_code == 404


def test_before_anything_is_known_of_a_client_it_says_what_is_missing(world: World) -> None:
    client, visitor = world.add_client("TAL-002"), world.visitor("clinician")
    page = visitor.get(reverse("bench:list", args=[client.pk])).content.decode()
    assert "when the client's measures are known" in page
    file = reverse("bench:file", args=[client.pk])
    bad = {"client_text": "format: chairwright client 1\nsexx: male\n", "revision": 0}
    page = visitor.post(file, bad).content.decode()
    assert "client:2" in page
    visitor.post(file, {"client_text": client_text("tal-002"), "revision": 0})
    visitor.post(reverse("bench:new", args=[client.pk]), {"name": "first", "line": "everyday"})
    made = Setup.objects.get(client=client)
    assert "Every must holds" in visitor.get(address(made)).content.decode()


def test_a_copy_goes_on_and_the_old_one_is_kept(world: World, setup: Setup) -> None:
    visitor = world.visitor("clinician")
    for number in (2, 3):
        visitor.post(address(setup, "copy"))
        made = Setup.objects.get(name=f"{setup.name}, {number}")
        assert made.codes == setup.codes
    step(visitor, made, pick="cushion=Q50")
    assert fresh(setup).codes == setup.codes


def test_accessories_count_in_mass_and_price(world: World, setup: Setup) -> None:
    visitor = world.visitor("clinician")
    fields = {"name": "with a bag", "extras": ["EB"], "revision": setup.revision}
    assert visitor.post(address(setup, "name"), fields).status_code == 302
    page = visitor.get(address(setup)).content.decode()
    assert fresh(setup).extras == ["EB"]
    price = page.partition('id="fig-price"')[2].partition('class="unit"')[0]
    assert "820.00" in price  # 785.00 and the bag's 35.00 in the line file
    wrong = {**fields, "extras": ["EX"], "revision": fresh(setup).revision}
    assert visitor.post(address(setup, "name"), wrong).status_code == 200
    assert fresh(setup).extras == ["EB"]


def test_the_payers_class_is_no_promise(world: World, setup: Setup) -> None:
    page = world.visitor("reader").get(address(setup)).content.decode()
    told = page.partition('id="payer"')[2].partition("</details>")[0]
    assert "K000" in told
    assert "never a promise of payment" in told
