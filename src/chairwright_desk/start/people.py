"""The first person of a desk, and people added from the command line."""

from __future__ import annotations

from django.db import transaction

from chairwright_desk.accounts.models import Membership, Team, User
from chairwright_desk.accounts.roles import Role
from chairwright_desk.start.bridge import InputError, Problem

OWNER = "owner"
FIRST_TEAM = "My team"
OWNER_ROLES = (Role.CLINICIAN, Role.ADMINISTRATOR)


def first_person() -> User:
    """Return whose sign-in link is opened at the start: the first administrator; make one."""
    administrators = User.objects.filter(memberships__role=Role.ADMINISTRATOR, is_active=True)
    return administrators.order_by("created").first() or _owner()


@transaction.atomic
def _owner() -> User:
    user = User.objects.filter(name=OWNER).first() or User.objects.make(OWNER, None, "Owner")
    User.objects.filter(pk=user.pk).update(is_active=True)
    team = Team.objects.order_by("name").first() or Team.objects.create(name=FIRST_TEAM)
    for role in OWNER_ROLES:
        Membership.objects.get_or_create(user=user, team=team, role=role)
    return user


@transaction.atomic
def add_person(name: str, team: str, role: str) -> User:
    """Add a person, or one more role for one who is there.

    Parameters
    ----------
    name, team, role : str
        Sign-in name; team, made when it is new; one of the roles.
    """
    if role not in Role.values:
        must, remedy = f"must be one of {', '.join(Role.values)}", "Choose one of them."
        raise InputError(Problem(where="--role", must=must, got=repr(role), remedy=remedy))
    user = User.objects.filter(name=name.strip().lower()).first() or User.objects.make(name)
    group, _ = Team.objects.get_or_create(name=team.strip())
    Membership.objects.get_or_create(user=user, team=group, role=role)
    return user
