"""Studies: a re-fit as the core has it, kept as a set-up, on paper; the years; how sure."""

from __future__ import annotations

from typing import Any

from django.urls import reverse

from chairwright.cli.opened import open_setup
from chairwright.figures.registry import FIGURES
from chairwright.files.client import read_client
from chairwright.fitting.person import read_person
from chairwright.line.load import load_line
from chairwright.order.refit import Present, described, refit
from chairwright_desk.audit.models import Entry
from chairwright_desk.bench.models import ClientFile, Setup
from chairwright_desk.chair_now.models import Study, Weighing
from chairwright_desk.chair_now.templatetags.chair_now import nominal_words
from chairwright_desk.clients.models import Client

from ..kit.world import EXAMPLES, World
from ..standing.bench import made
from ..standing.chair_now import chair, example, study, weighing


def _child(world: World) -> tuple[Client, Setup]:
    """CHI-007 two years later, with the chair of then."""
    client = world.add_client("CHI-007")
    text = (EXAMPLES / "refit" / "chi-007.yaml").read_text()
    ClientFile.objects.create(client=client, client_text=text)
    codes = example("setups", "chi-007")["choices"]
    setup = Setup.objects.create(client=client, name="school chair", codes=codes, present=True)
    return client, setup


def _asked(world: World, client: Client, view: str, **fields: Any) -> Any:
    address = reverse(f"chair_now:{view}", args=[client.pk])
    answer: Any = world.visitor("clinician").post(address, fields)
    assert answer.status_code == 302, answer.context["form"].errors
    return answer


def test_a_refit_has_the_rows_of_the_core(world: World) -> None:
    client, setup = _child(world)
    _asked(world, client, "refit", chair=f"setup:{setup.pk}", line="everyday")
    result: Any = Study.objects.get().result
    person = read_person(read_client(EXAMPLES / "refit" / "chi-007.yaml"))
    opened = open_setup(EXAMPLES / "setups" / "chi-007.yaml")
    found = refit(person, Present("x", opened.setup, opened.person.client))
    assert [row["money"] for row in result["rows"]] == [
        f"{each.change.money:,.2f}" for each in found.points
    ]
    assert [point["cost"] for point in result["points"]] == [each.cost for each in found.points]


def test_the_figures_beside_the_trade_off_are_chosen(world: World) -> None:
    """What the core says of each row's set-up; what is not ticked, or unknown, is not there."""
    client, setup = _child(world)
    _asked(world, client, "refit", chair=f"setup:{setup.pk}", line="everyday")
    address = reverse("chair_now:study", args=[client.pk, Study.objects.get().pk])
    plain: Any = world.visitor("reader").get(address)
    assert plain.context["beside"].columns == ()
    person = read_person(read_client(EXAMPLES / "refit" / "chi-007.yaml"))
    opened = open_setup(EXAMPLES / "setups" / "chi-007.yaml")
    found = refit(person, Present("x", opened.setup, opened.person.client))
    wanted = ("seat_width_mm", "tip_rear_locked_deg")
    query = {"figure": [*wanted, "no_such_figure"]}
    chosen: Any = world.visitor("reader").get(address, query)
    columns, told = chosen.context["beside"].columns, chosen.content.decode()
    assert [each.label for each in columns] == [FIGURES[name].label for name in wanted]
    for name, column in zip(wanted, columns, strict=True):
        digits = FIGURES[name].digits
        rows = [described(found, point.change).figures[name] for point in found.points]
        assert list(column.values) == [f"{value:.{digits}f}" for value in rows]
        assert found.now is not None
        assert column.now == f"{found.now.figures[name]:.{digits}f}"
        assert f'value="{name}" checked' in told
    assert told.count(" checked") == len(wanted)


def test_a_row_is_shown_printed_and_kept(world: World) -> None:
    client, setup = _child(world)
    _asked(world, client, "refit", chair=f"setup:{setup.pk}", line="everyday")
    done, visitor = Study.objects.get(), world.visitor("clinician")
    result: Any = done.result
    last = len(result["rows"])
    key = [client.pk, done.pk, last]
    told = visitor.get(reverse("chair_now:row", args=key)).content.decode()
    assert f"{result['rows'][-1]['money']} EUR" in told
    sheet = visitor.get(reverse("chair_now:sheet", args=key))
    assert sheet.content.startswith(b"%PDF")
    assert Entry.objects.filter(kind="export", record=done.pk).exists()
    kept = visitor.post(reverse("chair_now:keep", args=key))
    new = Setup.objects.exclude(pk=setup.pk).get()
    assert kept["Location"].endswith(f"/{new.pk}/")
    assert new.codes == result["points"][-1]["codes"]
    assert visitor.get(kept["Location"]).status_code == 200
    for wrong in (0, last + 1):
        assert visitor.get(reverse("chair_now:row", args=[*key[:2], wrong])).status_code == 404


def test_a_measured_chair_is_replaced_by_a_new_one(world: World) -> None:
    old = chair(world)
    fields = {"chair": f"measured:{old.pk}", "line": "everyday"}
    _asked(world, world.client, "refit", **fields, kept_cushion="Q30")
    result: Any = Study.objects.get().result
    assert "It is of another maker" in " ".join(result["answer"])
    assert all(point["codes"]["cushion"] == "Q30" for point in result["points"])
    row = reverse("chair_now:row", args=[world.client.pk, Study.objects.get().pk, 1])
    assert "for a new chair" in world.visitor("reader").get(row).content.decode()
    address = reverse("chair_now:refit", args=[world.client.pk])
    answer: Any = world.visitor("clinician").post(address, {**fields, "kept_cushion": "ZZ"})
    assert "ZZ" in answer.context["form"].errors["kept_cushion"][0]
    own = {"chair": f"setup:{made(world).pk}", "kept_cushion": "Q30"}
    answer = world.visitor("clinician").post(address, {**fields, **own})
    assert "goes with a measured chair" in answer.context["form"].errors["kept_cushion"][0]


def test_parts_to_keep_are_those_of_the_line_that_is_chosen(world: World) -> None:
    """The line's own file: everyday has cushion Q30, heavy-duty its own codes; a look keeps none.

    Parts only: neither a setting nor "none" is in a list.
    """
    old = chair(world)
    address = reverse("chair_now:refit", args=[world.client.pk])
    for name in ("everyday", "heavy-duty"):
        fields = {"chair": f"measured:{old.pk}", "line": name, "look": "parts"}
        answer: Any = world.visitor("clinician").post(address, fields)
        form = answer.context["form"]
        assert not form.errors
        lists = {
            each.name: [code for code, _ in each.field.choices]
            for each in (*form.parts, *form.other_parts)
        }
        line = load_line(name)
        assert lists["kept_cushion"] == ["", *line.choices["cushion"].codes]
        assert not lists.keys() & {"kept_back_angle", "kept_stem_setting", "kept_foot_supports"}
        assert all("none" not in codes for codes in lists.values())
        assert form["chair"].value() == f"measured:{old.pk}"
        assert not form["places"].value()
    assert not Study.objects.exists()


def test_the_years_on_the_page_and_on_paper(world: World) -> None:
    done = study(world, "years")
    visitor = world.visitor("reader")
    told = visitor.get(reverse("chair_now:study", args=[world.client.pk, done.pk]))
    assert "Next review" in told.content.decode()
    sheet = visitor.get(reverse("chair_now:sheet", args=[world.client.pk, done.pk, 1]))
    assert sheet.content.startswith(b"%PDF")


def test_the_years_take_the_weighing_that_counts(world: World) -> None:
    """99.4 kg on the pads, 20.0 of them the chair's; 78 kg by the client file."""
    kept = weighing(world, in_use=True)
    fields = {"chair": f"setup:{made(world).pk}", "years": "0.5", "mass_change": "10"}
    ask = reverse("chair_now:years", args=[world.client.pk])
    assert "The client counts as weighed on" in world.visitor("clinician").get(ask).content.decode()
    for counts in (True, False):
        Weighing.objects.filter(pk=kept.pk).update(in_use=counts)
        Study.objects.all().delete()
        _asked(world, world.client, "years", **fields)
        found = Study.objects.get()
        result: Any = found.result
        told = " ".join(result["content"]["notes"])
        assert ("Centre of mass measured on the scales (2026-11-25)" in told) is counts
        assert ("counted with 1.018 times the expected one" in told) is counts
        page = reverse("chair_now:study", args=[world.client.pk, found.pk])
        shown = world.visitor("reader").get(page).content.decode()
        assert ("the client as weighed on 2026-11-25" in shown) is counts


def test_how_sure_names_what_to_measure_again(world: World) -> None:
    setup = made(world)
    address = reverse("chair_now:sure", args=[world.client.pk, setup.pk])
    told = world.visitor("reader").get(address).content.decode()
    assert "Measure again: buttock to back of knee" in told
    assert "within what tape, scales and estimates can be off it may fail" in told
    unknown = reverse("chair_now:figure", args=[world.client.pk, setup.pk, "nothing"])
    assert world.visitor("reader").get(unknown).status_code == 404


def test_how_sure_puts_first_what_decides(world: World) -> None:
    """Every figure with a spread stands once: what misses or may miss open, the others folded."""
    setup = made(world)
    address = reverse("chair_now:sure", args=[world.client.pk, setup.pk])
    answer: Any = world.visitor("reader").get(address)
    told = answer.context["told"]
    marks = [row.mark for row in told.decide]
    first = {"fails": 0, "nominal": 1, "unknown": 2, "wish": 3}
    assert [first[each] for each in marks] == sorted(first[each] for each in marks)
    assert "nominal" in marks
    rest = [row for _, rows in told.rest for row in rows]
    assert {row.mark for row in rest} == {"holds", ""}
    names = [row.name for row in (*told.decide, *rest)]
    assert len(names) == len(set(names))
    assert set(names) == set(answer.context["state"].setup.tolerance.figures)
    folded = answer.content.decode().partition("Every other figure")
    assert all(f"/{row.name}/" in folded[2] and f"/{row.name}/" not in folded[0] for row in rest)


def test_the_word_for_narrow_musts_is_explained_where_it_stands_only() -> None:
    assert "it may fail" in nominal_words([{"word": "holds on nominal values"}])
    assert nominal_words([{"word": "holds"}], None) == ""


def test_the_years_kept_and_the_surest_open_their_own_pages(world: World) -> None:
    made(world)
    for kind in ("surest", "years"):
        done = study(world, kind)
        address = reverse("chair_now:study", args=[world.client.pk, done.pk])
        assert world.visitor("clinician").get(address).status_code == 200
        keep = reverse("chair_now:keep", args=[world.client.pk, done.pk, 1])
        assert world.visitor("clinician").post(keep).status_code == 302
    assert Setup.objects.filter(client=world.client).count() == 4


def test_what_hardly_counts_for_a_figure_is_folded_away(world: World) -> None:
    """Shares of a variance sum to 1: what is shown open holds all but a hundredth for each rest."""
    setup = made(world)
    args = [world.client.pk, setup.pk, "tip_rear_locked_deg"]
    answer: Any = world.visitor("reader").get(reverse("chair_now:figure", args=args))
    chart = answer.context["chart"]
    assert chart.bars
    assert chart.little
    spread = answer.context["state"].setup.tolerance.figures["tip_rear_locked_deg"]
    squares = ((spread.up - spread.down) / 2.0) ** 2
    counts = int((squares >= 0.01 * squares.sum()).sum())
    assert len(chart.bars) == counts
    shown = answer.content.decode().partition("What hardly counts")[0]
    assert all(row[0] in shown for row in chart.bars)
    assert not any(f">{row[0]}<" in shown.partition("<table")[2] for row in chart.little)
