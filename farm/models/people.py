"""People, and what each may do on a farm."""

from __future__ import annotations

import datetime as dt
from typing import Any, ClassVar

from django.contrib.auth.base_user import AbstractBaseUser, BaseUserManager
from django.db import models
from django.utils.translation import gettext_lazy as _

# Each in its own words, so that who cannot read the page finds it.
LANGUAGES = [("en-us", "English"), ("es", "Español")]


Period = tuple[dt.date, dt.date]


class UserManager(BaseUserManager["User"]):
    def create_user(self, email: str, password: str | None = None, **more: Any) -> User:
        user = self.model(email=self.normalize_email(email).lower(), **more)
        user.set_password(password)
        user.full_clean(exclude=["password"])
        user.save(using=self._db)
        return user

    def get_by_natural_key(self, username: str | None) -> User:
        return self.get(email=(username or "").strip().lower())


class Colours(models.TextChoices):
    """What a person chose for their screen, where they did."""

    DAY = "day", _("dark on light")
    NIGHT = "night", _("light on dark")


class User(AbstractBaseUser):
    email = models.EmailField(_("e-mail"), unique=True)
    name = models.CharField(_("name"), max_length=120, blank=True)
    is_active = models.BooleanField(_("may sign in"), default=True)
    units = models.CharField(_("units shown"), max_length=8, blank=True)
    language = models.CharField(
        _("language"), max_length=8, blank=True, choices=LANGUAGES
    )
    look = models.CharField(
        _("colours"), max_length=8, blank=True, choices=Colours.choices
    )
    joined_at = models.DateTimeField(auto_now_add=True)

    objects: ClassVar[UserManager] = UserManager()

    USERNAME_FIELD = "email"
    EMAIL_FIELD = "email"
    REQUIRED_FIELDS: ClassVar[list[str]] = []

    class Meta:
        verbose_name = _("person")
        verbose_name_plural = _("people")

    def __str__(self) -> str:
        return self.name or self.email


class Role(models.TextChoices):
    OWNER = "owner", _("owner")
    MANAGER = "manager", _("manager")
    CREW = "crew", _("crew")
    INSPECTOR = "inspector", _("inspector")


class MembershipQuerySet(models.QuerySet["Membership"]):
    def on(self, day: dt.date) -> MembershipQuerySet:
        """Those whose access has not run out by that day."""
        open_ended = models.Q(until=None) | models.Q(until__gte=day)
        return self.filter(open_ended, models.Q(since__lte=day))


class Membership(models.Model):
    farm = models.ForeignKey(
        "farm.Farm", on_delete=models.CASCADE, related_name="memberships"
    )
    user = models.ForeignKey(User, on_delete=models.PROTECT, related_name="memberships")
    role = models.CharField(_("role"), max_length=12, choices=Role.choices)
    since = models.DateField(_("since"))
    until = models.DateField(_("until"), null=True, blank=True)
    # What an inspector was invited to see; nothing set is the season they came in.
    sees_from = models.DateField(_("sees records from"), null=True, blank=True)
    sees_to = models.DateField(_("sees records to"), null=True, blank=True)

    objects: ClassVar[models.Manager[Membership]] = MembershipQuerySet.as_manager()

    class Meta:
        verbose_name = _("membership")
        verbose_name_plural = _("memberships")
        constraints = [
            models.UniqueConstraint("farm", "user", name="one_role_a_farm"),
            models.CheckConstraint(
                condition=models.Q(until=None) | models.Q(until__gte=models.F("since")),
                name="membership_until_not_before_since",
                violation_error_message=_("It cannot run out before it begins."),
            ),
            models.CheckConstraint(
                condition=models.Q(sees_from=None, sees_to=None)
                | models.Q(sees_to__gte=models.F("sees_from")),
                name="membership_period_is_whole",
                violation_error_message=_("The period ends before it begins."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.user} · {self.get_role_display()} · {self.farm}"

    def holds_on(self, day: dt.date) -> bool:
        """Whether the person may come in on that day of the farm's."""
        return self.since <= day and (self.until is None or day <= self.until)

    @property
    def period(self) -> Period | None:
        """The days whose records an inspector sees; None, for others, is all of them.

        An inspector without days, invited before there were any, sees one season.
        """
        if self.role != Role.INSPECTOR:
            return None
        if self.sees_from and self.sees_to:
            return self.sees_from, self.sees_to
        return self.farm.season(self.farm.season_year(self.since))

    @property
    def has_days_set(self) -> bool:
        """Whether somebody said which days an inspector sees."""
        return bool(self.sees_from and self.sees_to)
