"""The farm: its place, calendar, units, money and standard."""

from __future__ import annotations

import datetime as dt
import zoneinfo
from collections.abc import Iterator
from typing import Any, ClassVar

from django.core.exceptions import ValidationError
from django.core.validators import (
    MaxValueValidator,
    MinValueValidator,
    RegexValidator,
)
from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models.people import Role, User

# ISO 4217, by the units a farm reads until it says otherwise.
MONEY = {"us": "USD", "metric": "EUR"}
check_currency = RegexValidator(
    r"^[A-Z]{3}\Z", _("Three capital letters, as ISO 4217 has them: USD, CAD, EUR.")
)


def check_time_zone(value: str) -> None:
    if value not in zoneinfo.available_timezones():
        raise ValidationError(
            _("“%(value)s” is not a time zone. Write one like America/Chicago."),
            params={"value": value},
        )


class FarmQuerySet(models.QuerySet["Farm"]):
    def entered_by(self, user: User, *, now: dt.datetime) -> list[Farm]:
        """The farms a person may enter at that moment, each by its own calendar."""
        rows = user.memberships.select_related("farm").order_by("farm__name")
        return [one.farm for one in rows if one.holds_on(one.farm.today(now))]

    def shut_to(
        self, user: User, *, now: dt.datetime
    ) -> Iterator[tuple[Farm, dt.date, bool]]:
        """Farms an inspector may not enter at that moment: since or from when not."""
        rows = user.memberships.select_related("farm").order_by("farm__name")
        for one in rows.filter(role=Role.INSPECTOR):
            today = one.farm.today(now)
            if today < one.since:
                yield one.farm, one.since, False
            elif one.until is not None and one.until < today:
                yield one.farm, one.until, True


class Farm(models.Model):
    class Units(models.TextChoices):
        US = "us", _("acres, pounds, inches")
        METRIC = "metric", _("hectares, kilograms, centimetres")

    class Standard(models.TextChoices):
        NONE = "none", _("none")
        US = "us", _("US organic, 7 CFR 205")
        EU = "eu", _("EU organic, Regulation 2018/848")
        CA = "ca", _("Canada organic, CAN/CGSB-32.310")

    name = models.CharField(_("name"), max_length=120)
    slug = models.SlugField(_("short name in addresses"), max_length=60, unique=True)
    operator = models.CharField(_("operator"), max_length=120, blank=True)
    address = models.TextField(_("address"), blank=True, max_length=500)
    family = models.TextField(
        _("owner’s close family who work here"),
        blank=True,
        max_length=500,
        help_text=_(
            "One name a line, written as under “done by”. Rules on training of workers "
            "leave out the owner and these people."
        ),
    )
    country = models.CharField(_("country"), max_length=60, blank=True)
    latitude = models.FloatField(
        _("latitude"),
        null=True,
        blank=True,
        validators=[MinValueValidator(-90), MaxValueValidator(90)],
    )
    longitude = models.FloatField(
        _("longitude"),
        null=True,
        blank=True,
        validators=[MinValueValidator(-180), MaxValueValidator(180)],
    )
    time_zone = models.CharField(
        _("time zone"), max_length=60, default="UTC", validators=[check_time_zone]
    )
    units = models.CharField(
        _("units shown"), max_length=8, choices=Units.choices, default=Units.US
    )
    currency = models.CharField(
        _("money"),
        max_length=3,
        blank=True,
        validators=[check_currency],
        help_text=_("Three letters, as ISO 4217 has them. Every price is in it."),
    )
    standard = models.CharField(
        _("organic standard"),
        max_length=8,
        choices=Standard.choices,
        default=Standard.NONE,
    )
    certifier = models.CharField(_("certifier"), max_length=120, blank=True)
    certificate_number = models.CharField(
        _("certificate number"), max_length=60, blank=True
    )
    season_first_month = models.PositiveSmallIntegerField(
        _("first month of the season"),
        default=1,
        validators=[MinValueValidator(1), MaxValueValidator(12)],
    )
    cool_springs = models.BooleanField(
        _("cool region"),
        default=True,
        help_text=_(
            "Residue left on top gives up less of its nitrogen where springs are cool."
        ),
    )

    objects: ClassVar[models.Manager[Any]] = FarmQuerySet.as_manager()
    _units_of_its_own = ""
    # Laid over the farm in memory while an inspector reads.
    period: tuple[dt.date, dt.date] | None = None
    # Likewise while one of the crew reads.
    is_read_by_crew: bool = False

    class Meta:
        verbose_name = _("farm")
        verbose_name_plural = _("farms")
        constraints = [
            models.CheckConstraint(
                condition=Q(season_first_month__range=(1, 12)),
                name="season_starts_in_a_month",
            )
        ]

    def __str__(self) -> str:
        return self.name

    def save(self, *args: Any, **options: Any) -> None:
        # Set once: units may change later, and prices stay in the money they were in.
        shown, self.units = self.units, self._units_of_its_own or self.units
        self.currency = self.currency or MONEY[self.units]
        super().save(*args, **options)
        self.units = shown

    def read_in(self, units: str) -> Farm:
        """The farm for a person who reads other units; saving keeps the farm's own."""
        if units and units != self.units:
            self._units_of_its_own, self.units = self.units, units
        return self

    @property
    def own_units(self) -> str:
        """The farm's own units, whoever reads."""
        return self._units_of_its_own or self.units

    def opens(self, year: int) -> bool:
        """Whether the season of that year lies in the period of who is reading."""
        if self.period is None:
            return True
        first, last = self.season(year)
        return self.period[0] <= first and last <= self.period[1]

    @property
    def is_southern(self) -> bool:
        """Whether it lies south of the equator, where seasons are half a year off."""
        return self.latitude is not None and self.latitude < 0

    def season(self, year: int) -> tuple[dt.date, dt.date]:
        """First and last day of the season that starts in that year."""
        month = self.season_first_month
        first = dt.date(year, month, 1)
        return first, dt.date(year + 1, month, 1) - dt.timedelta(days=1)

    def season_year(self, day: dt.date) -> int:
        """The year in which the season of that day starts."""
        return day.year if day.month >= self.season_first_month else day.year - 1

    def today(self, now: dt.datetime) -> dt.date:
        """The farm's own date at that moment."""
        return now.astimezone(zoneinfo.ZoneInfo(self.time_zone)).date()
