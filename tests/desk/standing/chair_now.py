"""The chair as it stands: weighings, measured chairs, studies, how sure."""

from __future__ import annotations

from functools import cache
from typing import Any, cast

from ruamel.yaml import YAML

from chairwright_desk.chair_now.jobs import worked
from chairwright_desk.chair_now.models import MeasuredChair, Study, Weighing
from chairwright_desk.chair_now.written import measured_text, scales_text

from ..kit.standing import Standing
from ..kit.world import EXAMPLES, World
from .bench import made


def example(folder: str, name: str = "avg-001") -> dict[str, Any]:
    """What an example file holds, as plain data."""
    return cast(dict[str, Any], YAML(typ="safe").load(EXAMPLES / folder / f"{name}.yaml"))


def readings() -> dict[str, str]:
    """Readings of the example weighing, by the form's field."""
    data = example("scales")
    flat = {k: str(v) for k, v in data.items() if isinstance(v, (str, int))}
    for state in ("level", "raised"):
        flat |= {f"{state}_{key}": str(value) for key, value in data[state].items()}
    for key in ("format", "client", "setup", "dated"):
        flat.pop(key, None)
    return flat


def measures() -> dict[str, str]:
    """Readings of the example measured chair, by the form's field."""
    data = example("measured")
    held = {k: str(v["value"] if isinstance(v, dict) else v) for k, v in data["measures"].items()}
    return {**held, "foot_supports": data["foot_supports"]}


def weighing(world: World, *, in_use: bool = False) -> Weighing:
    """The example weighing of the set-up, made once a world."""
    if "weighing" not in world.made:
        setup, fields = made(world), {**readings(), "loads_on": "yes"}
        world.made["weighing"] = Weighing.objects.create(
            client=world.client,
            fields=fields,
            weighed_on="2026-11-25",
            text=scales_text(fields, "AVG-001", "2026-11-25", setup.name),
            client_text=(EXAMPLES / "clients" / "avg-001.yaml").read_text(),
            setup_name=setup.name,
            line=setup.line,
            codes=setup.codes,
            in_use=in_use,
        )
        cast(Weighing, world.made["weighing"]).refresh_from_db()
    return cast(Weighing, world.made["weighing"])


def chair(world: World) -> MeasuredChair:
    """The example measured chair, made once a world."""
    if "measured" not in world.made:
        made(world)
        fields = measures()
        names = [name for name in fields if name != "foot_supports"]
        world.made["measured"] = MeasuredChair.objects.create(
            client=world.client,
            name="the old chair",
            fields=fields,
            text=measured_text(fields, names, "the old chair"),
        )
    return cast(MeasuredChair, world.made["measured"])


def asked(**more: Any) -> dict[str, Any]:
    """What a study of AVG-001 is worked out from."""
    codes = example("setups")["choices"]
    text = (EXAMPLES / "clients" / "avg-001.yaml").read_text()
    held = {"client": text, "places": "", "pads": None, "line": "everyday", "codes": codes}
    return {**held, "extras": [], "name": "the setup", "then": "", **more}


ASKED: dict[str, dict[str, Any]] = {
    "refit": asked(),
    "years": asked(years=1.0, lasts=None, mass_change=5.0, delivered="2026-12-01"),
    "surest": asked(),
}


@cache
def result(kind: str) -> Any:
    """What comes out, worked out once for all tests."""
    if kind == "surest":
        return {"codes": ASKED[kind]["codes"], "extras": [], "said": ["It is sure."]}
    return worked(kind, ASKED[kind], "mm", lambda _words: None)


def study(world: World, kind: str = "refit") -> Study:
    """A study that is worked out, made once a world."""
    if kind not in world.made:
        made(world)
        world.made[kind] = Study.objects.create(
            client=world.client, kind=kind, title=f"the {kind}", asked=ASKED[kind],
            result=result(kind),
        )  # fmt: skip
    return cast(Study, world.made[kind])


def _client(world: World) -> tuple[str]:
    made(world)
    return (world.client.pk,)


def _setup(world: World) -> tuple[str, str]:
    return (world.client.pk, made(world).pk)


def _figure(world: World) -> tuple[str, str, str]:
    return (*_setup(world), "tip_rear_locked_deg")


def _weighing(world: World) -> tuple[str, str]:
    return (world.client.pk, weighing(world).pk)


def _chair(world: World) -> tuple[str, str]:
    return (world.client.pk, chair(world).pk)


def _study(world: World) -> tuple[str, str]:
    return (world.client.pk, study(world).pk)


def _row(world: World) -> tuple[str, str, int]:
    return (*_study(world), 1)


def _weighed(world: World) -> dict[str, Any]:
    more = {"weighed_on": "2026-11-25", "setup": made(world).pk, "loads_on": "on", "in_use": "on"}
    return {**readings(), **more, "revision": 1}


def _measured(_world: World) -> dict[str, Any]:
    return {**measures(), "name": "the old chair", "measured_on": "2026-11-25", "revision": 1}


def _again(world: World) -> dict[str, Any]:
    return {"chair": f"setup:{made(world).pk}", "line": "everyday"}


def _years(world: World) -> dict[str, Any]:
    return {"chair": f"setup:{made(world).pk}", "years": "0.5"}


ENTRIES = [
    Standing("chair_now:show", _client),
    Standing("chair_now:weigh", _client, _weighed),
    Standing("chair_now:weighing", _weighing),
    Standing("chair_now:weighing-sheet", _weighing, look=False),
    Standing("chair_now:weighing-change", _weighing, _weighed),
    Standing("chair_now:weighing-use", _weighing, lambda _w: {"use": "yes"}, look=False),
    Standing("chair_now:weighing-remove", _weighing, look=False),
    Standing("chair_now:measure", _client, _measured),
    Standing("chair_now:measured", _chair),
    Standing("chair_now:measured-sheet", _chair, look=False),
    Standing("chair_now:measured-change", _chair, _measured),
    Standing("chair_now:measured-remove", _chair, look=False),
    Standing("chair_now:refit", _client, _again),
    Standing("chair_now:years", _client, _years),
    Standing("chair_now:sure", _setup),
    Standing("chair_now:surest", _setup, look=False),
    Standing("chair_now:figure", _figure),
    Standing("chair_now:study", _study),
    Standing("chair_now:study-again", _study, look=False),
    Standing("chair_now:study-remove", _study, look=False),
    Standing("chair_now:row", _row),
    Standing("chair_now:keep", _row, look=False),
    Standing("chair_now:sheet", _row, look=False),
]
