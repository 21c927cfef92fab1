"""Two teams with a person in every role, and clients after the files in examples/."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from django.test import Client as Visitor

from chairwright_desk.accounts.models import Membership, Team, User
from chairwright_desk.accounts.roles import Role
from chairwright_desk.clients.models import Client, Identity

EXAMPLES = Path(__file__).resolve().parents[3] / "examples"
NAME = "Wilhelmine Nachtigall"
DIAGNOSIS = "spinal cord injury, level T6"
BORN = date(1957, 3, 14)
WHO = (NAME, *NAME.split(), DIAGNOSIS, "1957-03-14", "14 Mar 1957", "March 14, 1957")
"""All that says who AVG-001 is, in every way in which a page or a file could write it."""
PASSWORD = "plumb line and tape"  # noqa: S105
UNKNOWN = "zzzzzzzzzzzzzzzz"


def references() -> list[str]:
    """Reference numbers of the example clients."""
    return [path.stem.upper() for path in sorted((EXAMPLES / "clients").glob("*.yaml"))]


@dataclass
class World:
    """Who and what there is.

    Parameters
    ----------
    team, other : Team
        The team of the tests, and one that must not see its clients.
    people, strangers : dict
        A person for each role: of `team`, of `other`.
    client : Client
        AVG-001 of `team`, with name, date of birth and diagnosis.
    made : dict
        What an app's standing module keeps for its own entries.
    """

    team: Team
    other: Team
    people: dict[str, User]
    strangers: dict[str, User]
    client: Client
    made: dict[str, object] = field(default_factory=dict)

    def visitor(self, role: str, *, other: bool = False, checks: bool = False) -> Visitor:
        """Return a test client signed in as a role."""
        visitor = Visitor(enforce_csrf_checks=checks)
        visitor.force_login((self.strangers if other else self.people)[role])
        return visitor

    def add_client(self, reference: str, team: Team | None = None) -> Client:
        """Add a client by reference number."""
        return Client.objects.create(reference=reference, team=team or self.team)


def _people(team: Team, before: str = "") -> dict[str, User]:
    people = {}
    for role in Role.values:
        user = User.objects.make(f"{before}{role}", PASSWORD, f"{before}{role}".capitalize())
        Membership.objects.create(user=user, team=team, role=role)
        people[role] = user
    return people


def make_world() -> World:
    """Fill an empty database."""
    team, other = (Team.objects.create(name=name) for name in ("North clinic", "South clinic"))
    client = Client.objects.create(reference="AVG-001", team=team)
    Identity.objects.create(client=client, name=NAME, born=BORN, diagnosis=DIAGNOSIS)
    return World(team, other, _people(team), _people(other, "other-"), client)
