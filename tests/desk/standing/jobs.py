"""Work under way."""

from __future__ import annotations

from chairwright_desk.jobs.models import Job

from ..kit.standing import Standing
from ..kit.world import World


def _job(state: str, world: World) -> tuple[str]:
    made = Job.objects.create(
        kind="jobs.wait",
        words="Best set-up for AVG-001",
        owner=world.people["clinician"],
        team=world.team,
        state=state,
    )
    return (made.pk,)


def _waiting(world: World) -> tuple[str]:
    return _job("waiting", world)


ENTRIES = [
    Standing("jobs:list", shared=True),
    Standing("jobs:show", _waiting, personal=True),
    Standing("jobs:stop", _waiting, personal=True, look=False),
    Standing("jobs:again", _waiting, personal=True, look=False),
]
