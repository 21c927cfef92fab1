"""People, teams, and what each person is in each team."""

from __future__ import annotations

from datetime import timedelta
from functools import cached_property
from typing import ClassVar

from django.contrib.auth.base_user import AbstractBaseUser, BaseUserManager
from django.db import models
from django.utils import timezone

from chairwright_desk.accounts.roles import Role, allowed
from chairwright_desk.base.ids import new_id

UNITS = [("mm", "millimetres"), ("inch", "inches and fractions")]
LANGUAGES = [("en-gb", "English (day month year)"), ("en-us", "English (month day, year)")]


class Team(models.Model):
    """A group that shares its clients."""

    id = models.CharField(primary_key=True, max_length=16, default=new_id, editable=False)
    name = models.CharField(max_length=80, unique=True)

    class Meta:
        ordering = ("name",)

    def __str__(self) -> str:
        return self.name


class UserManager(BaseUserManager["User"]):
    """Makes people."""

    def make(self, name: str, password: str | None = None, shown: str = "") -> User:
        """Make a person; without a password only a sign-in link opens the desk.

        Parameters
        ----------
        name : str
            To sign in with; capital and small letters are the same.
        password : str, optional
            Stored as Django hashes it.
        shown : str, optional
            As the desk shows the person; by default the sign-in name.
        """
        user = self.model(name=name.strip().lower(), shown=shown.strip() or name.strip())
        user.set_password(password)
        user.save(using=self._db)
        return user


class User(AbstractBaseUser):
    """A person who may sign in."""

    id = models.CharField(primary_key=True, max_length=16, default=new_id, editable=False)
    name = models.CharField("sign-in name", max_length=80, unique=True)
    shown = models.CharField("name shown", max_length=80)
    is_active = models.BooleanField("may sign in", default=True)
    units = models.CharField(max_length=4, choices=UNITS, default="mm")
    language = models.CharField("dates", max_length=5, choices=LANGUAGES, default="en-gb")
    created = models.DateTimeField(default=timezone.now, editable=False)
    teams = models.ManyToManyField(Team, through="Membership", related_name="people")

    objects: ClassVar[UserManager] = UserManager()
    USERNAME_FIELD = "name"

    class Meta:
        ordering = ("name",)

    def __str__(self) -> str:
        return self.shown

    @cached_property
    def grants(self) -> dict[str, frozenset[Role]]:
        """Team's id to what the person is there; read once a request."""
        found: dict[str, set[Role]] = {}
        for team, role in self.memberships.values_list("team_id", "role"):
            found.setdefault(team, set()).add(Role(role))
        return {team: frozenset(roles) for team, roles in found.items()}

    def may(self, action: str, team: str | None = None) -> bool:
        """Return whether the person may do `action` in a team (its id), or in any team."""
        if team is not None:
            return allowed(self.grants.get(team, frozenset()), action)
        return any(allowed(roles, action) for roles in self.grants.values())

    def teams_for(self, action: str) -> list[str]:
        """Return the ids of the teams in which the person may do `action`."""
        return [team for team, roles in self.grants.items() if allowed(roles, action)]


class Membership(models.Model):
    """One person's role in one team; a person may have several."""

    user = models.ForeignKey(User, models.CASCADE, related_name="memberships")
    team = models.ForeignKey(Team, models.CASCADE, related_name="memberships")
    role = models.CharField(max_length=16, choices=Role.choices)

    class Meta:
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["user", "team", "role"], name="one_row_a_role")
        ]

    def __str__(self) -> str:
        return f"{self.get_role_display()}, {self.team}"


class SignInLink(models.Model):
    """A link that opens the desk once, for a short time; only the token's hash is stored."""

    token_hash = models.CharField(primary_key=True, max_length=64)
    user = models.ForeignKey(User, models.CASCADE, related_name="+")
    expires = models.DateTimeField()
    used_at = models.DateTimeField(null=True)

    def __str__(self) -> str:
        return f"until {self.expires}"


class FailedSignIn(models.Model):
    """A sign-in that failed, by the hash of the name typed."""

    WINDOW: ClassVar[timedelta] = timedelta(minutes=15)

    name_hash = models.CharField(max_length=64, db_index=True)
    at = models.DateTimeField(default=timezone.now)

    def __str__(self) -> str:
        return f"{self.at}"
