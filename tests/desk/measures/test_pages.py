"""Measuring: what is typed is kept, judged beside its field, drawn, and used on the bench."""

from __future__ import annotations

from typing import Any

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from chairwright.files.client import read_client
from chairwright.line.load import load_line
from chairwright.reading import FileText
from chairwright_desk.audit.models import Entry
from chairwright_desk.drafts.models import Draft
from chairwright_desk.measures.models import Abilities, Measuring
from chairwright_desk.measures.texts import cause_of, client_text

from ..kit.world import EXAMPLES, World
from ..standing.measures import BODY, made

DAY = {"taken_on": "2026-11-24", "alone": "mm"}


def post(world: World, view: str, data: dict[str, Any], *more: str) -> Any:
    address = reverse(f"measures:{view}", args=[world.client.pk, *more])
    return world.visitor("clinician").post(address, data)


def live(world: World, **typed: str) -> str:
    return str(post(world, "live", {**DAY, **typed}).content.decode())


def beside(answer: str, name: str) -> str:
    """The words that stand beside one measure."""
    start = answer.index(f'id="beside-{name}"')
    return answer[start : answer.index("</div>", start)]


def test_what_is_not_typed_is_estimated_and_says_so(world: World) -> None:
    answer = live(world, sex="male", stature="176 cm", body_mass="78 kg")
    assert "estimated" in beside(answer, "hip_width")
    assert "±" in beside(answer, "hip_width")
    assert "estimated" not in beside(answer, "stature")
    assert 'id="tape-dimension-hip-width" class="tape estimated"' in answer
    assert 'id="tape-dimension-stature" class="tape"' in answer


def test_nothing_is_estimated_before_enough_is_typed(world: World) -> None:
    answer = live(world, sex="male", body_mass="78 kg")
    assert "estimated" not in beside(answer, "hip_width")
    assert "usual size" in answer


def test_a_slip_is_remarked_on_beside_its_field_at_once(world: World) -> None:
    typed = {
        **BODY,
        "lower_leg_length_left": "",
        "lower_leg_length_right": "",
        "hip_width": "96 cm",
    }
    assert "must lie between" in beside(live(world, **typed), "hip_width")
    apart = {**BODY, "lower_leg_length_left": "45 cm", "lower_leg_length_right": "54 cm"}
    words = beside(live(world, **apart), "lower_leg_length")
    assert "Look again" in words
    assert "Measure both sides again" in words


def test_a_value_that_cannot_be_read_does_not_take_the_others_away(world: World) -> None:
    answer = live(world, **{**BODY, "hip_width": "fifteen", "elbow_height": "9 m"})
    assert "Not taken" in beside(answer, "hip_width")
    assert "estimated" in beside(answer, "hip_width")
    assert "must lie between" in beside(answer, "elbow_height")
    assert "estimated" in beside(answer, "chest_depth")


def test_the_figure_follows_the_measures(world: World) -> None:
    short, tall = (live(world, **{**BODY, "stature": each}) for each in ("150 cm", "190 cm"))
    assert ">1500</tspan>" in short
    assert ">1900</tspan>" in tall
    assert (
        "knee_height" not in live(world, **BODY, left_leg="hip", right_leg="hip").split("beside")[0]
    )


def test_any_odd_text_is_answered(world: World) -> None:
    odd = ["\x00", '"', "a: b", "{", "- x", "1e999 kg", "9" * 40, "é\u2028", "#", "1/0 in", "-4 cm"]
    for text in odd:
        for name in ("stature", "hip_width", "left_leg", "age", "lower_leg_length_give", "sex"):
            answer = post(world, "live", {**DAY, **BODY, name: text})
            assert answer.status_code == 200, (name, text)


def test_a_set_that_cannot_be_read_is_not_saved_and_nothing_typed_is_lost(world: World) -> None:
    answer = post(world, "new", {**DAY, **BODY, "hip_width": "fifteen"})
    assert answer.status_code == 200
    told = answer.content.decode()
    assert 'value="fifteen"' in told
    assert 'value="176 cm"' in told
    assert "Not saved yet" in told
    assert not Measuring.objects.exists()


def test_an_unfinished_set_may_be_saved_and_is_no_client_file_yet(world: World) -> None:
    assert post(world, "new", {**DAY, "sex": "male", "hip_width": "380"}).status_code == 302
    assert Measuring.objects.get().fields == {"sex": "male", "hip_width": "380 mm"}
    assert client_text(world.client) is None


def test_the_newest_set_is_in_use_and_the_older_one_stays(world: World) -> None:
    made(world)
    assert '"78 kg"' in str(client_text(world.client))
    page = world.visitor("reader").get(reverse("measures:show", args=[world.client.pk]))
    told = page.content.decode()
    assert "75 kg" in told
    assert "+3.0 kg" in told


def test_a_draft_comes_back_with_what_was_typed(world: World) -> None:
    key = f"measures.new:{world.client.pk}"
    visitor = world.visitor("clinician")
    visitor.post(reverse("drafts:keep", args=[key]), {"hip_width": "16 1/4", "alone": "in"})
    page = visitor.get(reverse("measures:new", args=[world.client.pk]))
    assert 'value="16 1/4"' in page.content.decode()
    visitor.post(reverse("measures:new", args=[world.client.pk]), {**DAY, **BODY})
    assert not Draft.objects.filter(form_key=key).exists()


def test_a_client_measured_here_opens_on_the_bench_without_a_file(world: World) -> None:
    made(world)
    data = {"name": "first", "line": "everyday"}
    address = reverse("bench:new", args=[world.client.pk])
    assert world.visitor("clinician").post(address, data).status_code == 302


def test_two_who_correct_the_same_set_are_shown_both_versions(world: World) -> None:
    measuring = made(world)
    data = {**DAY, **BODY, "revision": measuring.revision}
    assert post(world, "change", {**data, "hip_width": "39 cm"}, measuring.pk).status_code == 302
    answer = post(world, "change", {**data, "hip_width": "41 cm"}, measuring.pk)
    assert answer.status_code == 409
    told = answer.content.decode()
    assert "39 cm" in told
    assert "41 cm" in told
    measuring.refresh_from_db()
    assert measuring.fields["hip_width"] == "39 cm"


def test_how_the_client_moves_must_agree_with_the_body(world: World) -> None:
    Measuring.objects.create(client=world.client, fields={**BODY, "left_leg": "foot"})
    answer = post(world, "abilities", {"propulsion": "feet", "alone": "mm"})
    assert answer.status_code == 200
    assert "must be there for propulsion feet" in answer.content.decode()
    assert not Abilities.objects.exists()


def test_a_measure_of_a_lost_part_stays_in_the_record_and_out_of_the_file(world: World) -> None:
    Measuring.objects.create(client=world.client, fields={**BODY, "left_leg": "below_knee"})
    text = str(client_text(world.client))
    assert "left:" not in text
    assert "right:" in text


def test_a_whole_client_file_is_brought_in_and_handed_out(world: World) -> None:
    raw = (EXAMPLES / "clients" / "bar-006.yaml").read_bytes()
    assert post(world, "bring", {"file": SimpleUploadedFile("c.yaml", raw)}).status_code == 302
    address = reverse("measures:file", args=[world.client.pk])
    answer = world.visitor("clinician").get(address)
    assert answer.headers["Content-Disposition"] == 'attachment; filename="avg-001.yaml"'
    assert "overall_width_mm" in answer.content.decode()
    assert Entry.objects.filter(kind="export").count() == 1


def test_a_table_is_brought_in_row_by_row(world: World) -> None:
    rows = ["measure,side,value", "hip_width,,41 cm", "lower_leg_length,left,44 cm"]
    good = "\n".join([*rows, "knee_height,both,52 cm", ""]).encode()
    assert post(world, "bring", {"file": SimpleUploadedFile("t.csv", good)}).status_code == 302
    assert Measuring.objects.get().fields == {
        "hip_width": "41 cm",
        "lower_leg_length_left": "44 cm",
        "knee_height_left": "52 cm",
        "knee_height_right": "52 cm",
    }


def test_files_that_cannot_be_read_say_why_at_the_field(world: World) -> None:
    bad = {
        "hip_widht is no measure": b"measure,value\nhip_widht,41 cm\n",
        "Row 2": b"measure,value\nhip_width,41\n",
        "UTF-8": b"\xff\xfe\x00",
        "Bundle": b'{"resourceType": "Patient"}',
        "format": b"reference: A-1\n",
    }
    for words, raw in bad.items():
        answer = post(world, "bring", {"file": SimpleUploadedFile("f", raw)})
        assert answer.status_code == 200
        assert words in answer.content.decode(), words
    assert not Measuring.objects.exists()


def test_a_new_set_takes_over_sex_and_lost_limbs_and_no_measure(world: World) -> None:
    lost = {"left_leg": "below_knee", "left_leg_share": "0.3", "upper_arm_length_left": "36 cm"}
    Measuring.objects.create(client=world.client, fields={**BODY, **lost})
    page = world.visitor("clinician").get(reverse("measures:new", args=[world.client.pk]))
    form = page.context["form"]
    held = {name for name in form.fields if form[name].value()}
    assert held == {"taken_on", "alone", "sex", "left_leg", "left_leg_share"}


def test_two_who_say_for_the_first_time_how_the_client_moves_lose_nothing(world: World) -> None:
    data = {"propulsion": "hands", "alone": "mm", "revision": "0", "load_mass_0": "3"}
    first = post(world, "abilities", {**data, "load_name_0": "bag"})
    second = post(world, "abilities", {**data, "load_name_0": "oxygen"})
    assert (first.status_code, second.status_code) == (302, 409)
    assert "oxygen" in second.content.decode()
    assert Abilities.objects.get().fields["load_name_0"] == "bag"


@pytest.mark.parametrize("odd", ["\u2028", "\x85", "\ufeff", "\x7f", "\\", '"', "\U0001f9bd"])
def test_odd_signs_in_a_note_come_through_or_are_refused_at_the_field(
    odd: str, world: World
) -> None:
    made(world)
    note = f"one{odd}two\nthree: #"
    answer = post(world, "abilities", {"propulsion": "hands", "alone": "mm", "note": note})
    if answer.status_code == 302:
        read = read_client(FileText("client", str(client_text(world.client))))
        assert read.note == note
    else:
        assert 'id="id_note_error"' in answer.content.decode()


def test_a_file_with_a_hidden_control_sign_is_refused(world: World) -> None:
    plain = (EXAMPLES / "clients" / "avg-001.yaml").read_text()
    raw = plain.replace("reason: the office door leaves 26 1/4 in", 'reason: "a\\0b"')
    assert raw != plain
    answer = post(world, "bring", {"file": SimpleUploadedFile("c.yaml", raw.encode())})
    assert "must not hold control characters" in answer.content.decode()
    assert not Measuring.objects.exists()


def test_a_message_of_the_engineering_leads_to_its_field(world: World) -> None:
    measuring = made(world)
    settled = {"settled_choice_0": "cushion", "settled_codes_0": "NOSUCH"}
    Abilities.objects.create(client=world.client, fields=settled)
    lines = str(client_text(world.client)).splitlines()
    at = next(n for n, line in enumerate(lines, 1) if "NOSUCH" in line)
    cause = cause_of(world.client, f"client:{at}: choices.cushion")
    assert cause is not None
    assert cause.address.endswith("/measures/moving/#id_settled_codes_0")
    at = next(n for n, line in enumerate(lines, 1) if '"15 in"' in line)
    cause = cause_of(world.client, f"client:{at}: measures.hip_width")
    assert cause is not None
    assert cause.words == "Hip width"
    assert cause.address.endswith(f"/{measuring.pk}/#id_hip_width")
    assert cause_of(world.client, "client:1: format") is None


def test_codes_can_be_chosen_from_a_list(world: World) -> None:
    address = reverse("measures:abilities", args=[world.client.pk])
    told = world.visitor("clinician").get(address).content.decode()
    assert told.count('list="known-codes"') == 4
    assert told.count('list="known-extras"') == 1
    line = load_line("everyday")
    for code in line.choices["cushion"].codes:
        assert f'<option value="{code}">Cushion: ' in told
    for extra in line.extras:
        assert f'<option value="{extra.code}">{extra.name} (Everyday)' in told


def test_from_the_saved_measures_the_next_steps_are_one_press_away(world: World) -> None:
    visitor, address = world.visitor("clinician"), reverse("measures:show", args=[world.client.pk])
    assert "Next: " not in visitor.get(address).content.decode(), "nothing is measured yet"
    made(world)
    page = visitor.get(address).content.decode()
    onward = page[page.index("Next: ") :].split("</p>")[0]
    for view in ("surroundings:show", "targets:show", "bench:list"):
        assert f'href="{reverse(view, args=[world.client.pk])}"' in onward


def test_empty_rows_of_how_the_client_moves_are_folded_and_used_ones_stand_open(
    world: World,
) -> None:
    address = reverse("measures:abilities", args=[world.client.pk])
    assert world.visitor("clinician").get(address).content.decode().count(" open>") == 0
    loads = {f"load_{name}_{at}": "3" for name in ("name", "mass") for at in (0, 1)}
    Abilities.objects.create(client=world.client, fields={"propulsion": "hands", **loads})
    told = world.visitor("clinician").get(address).content.decode()
    assert '<details class="further" open><summary>More that hangs there' in told
    assert told.count(" open>") == 1
    for at in range(4):
        assert f'name="load_name_{at}"' in told


def test_each_limb_says_whose_bone_remains(world: World) -> None:
    told = world.visitor("clinician").get(reverse("measures:new", args=[world.client.pk]))
    assert "Left leg: share of the cut bone that remains" in told.content.decode()
    made = Measuring.objects.create(client=world.client, fields={**BODY, "left_leg": "below_knee"})
    told = world.visitor("clinician").get(reverse("measures:show", args=[made.client_id]))
    assert "0.5 of the cut bone remains" in told.content.decode()
