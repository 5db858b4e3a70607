"""What a farm is held to, what its certifier rules and was told, and replies."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet
from records.rules_called import called, number_said


class RulesFollowed(Record):
    """A set of rules beside the organic standard, switched on from a day."""

    class Which(models.TextChoices):
        WORKERS = "workers", _("worker protection, 40 CFR 170")
        RESTRICTED = "restricted", _("restricted-use pesticides, 7 CFR 110")
        FOOD = "food", _("produce safety, 21 CFR 112")
        COVER_CROP = "cover_crop", _("cover crop practice, NRCS 340")
        INSURANCE = "insurance", _("termination guideline for insured dry land")
        SEED_LAW = "seed_law", _("seed tags, Federal Seed Act")

    which = models.CharField(_("rules"), max_length=12, choices=Which.choices)
    since = models.DateField(_("followed since"))
    until = models.DateField(_("followed until"), null=True, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("set of rules followed")
        verbose_name_plural = _("sets of rules followed")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(until=None) | Q(until__gte=F("since")),
                name="rules_end_after_they_begin",
                violation_error_message=_("It would be over before it begins."),
            ),
        ]

    def __str__(self) -> str:
        return self.get_which_display()


class CertifierNumber(Record):
    """A number the certifier puts in the place of a rule's own."""

    # The set, the rule and its number, as the rules spell them.
    key = models.CharField(_("rule"), max_length=120)
    value = models.FloatField(_("value"))
    # The range it was held against when it was written down.
    low = models.FloatField(_("no less than"))
    high = models.FloatField(_("no more than"))
    note = models.CharField(
        _("what the certifier said"),
        max_length=300,
        help_text=_("Who said so, when, and for what."),
    )
    document = models.CharField(
        _("letter or paper"), max_length=200, help_text=_("Where it can be found.")
    )

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("number of the certifier’s own")
        verbose_name_plural = _("numbers of the certifier’s own")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(value__gte=F("low"), value__lte=F("high")),
                name="certifier_number_in_range",
                violation_error_message=_("The value lies outside the range."),
            ),
            models.UniqueConstraint(
                "farm",
                "key",
                condition=Q(voided_at=None),
                name="certifier_number_once",
                violation_error_message=_(
                    "The certifier’s number is already written down. Change that one."
                ),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.called}: {number_said(self.key, self.value, self.farm)}"

    @property
    def called(self) -> str:
        """Which number of which rule it is, in words."""
        return called(self.key)


class FindingReply(Record):
    """What the farm says to one finding; printed beside it."""

    DATE_FIELD = "replied_on"
    # Its own words tell what the key is of.
    called = ""

    # Stays the same while the matter stays open.
    key = models.CharField(_("finding"), max_length=160)
    finding = models.CharField(_("what was found"), max_length=500)
    reply = models.TextField(_("reply"), max_length=1000)
    replied_on = models.DateField(_("replied on"))

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("reply to a finding")
        verbose_name_plural = _("replies to findings")
        constraints = [
            *Record.Meta.constraints,
            models.UniqueConstraint(
                "farm",
                "key",
                condition=Q(voided_at=None),
                name="finding_replied_once",
                violation_error_message=_(
                    "A reply to this finding is already written down. Change that one."
                ),
            ),
        ]

    def __str__(self) -> str:
        return self.finding


class ChangeTold(Record):
    """That the certifier was told of something new, or given up, in a season."""

    DATE_FIELD = "told_on"
    # Its own words tell what the key is of.
    called = ""

    # The season, the part of the farm, came or went, and its name.
    key = models.CharField(_("change"), max_length=200)
    change = models.CharField(_("what changed"), max_length=300)
    told_on = models.DateField(_("certifier told on"))
    how = models.CharField(
        _("how"), max_length=200, help_text=_("By letter, telephone or form.")
    )

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("change told to the certifier")
        verbose_name_plural = _("changes told to the certifier")
        constraints = [
            *Record.Meta.constraints,
            models.UniqueConstraint(
                "farm",
                "key",
                condition=Q(voided_at=None),
                name="change_told_once",
                violation_error_message=_(
                    "That the certifier was told of this is already written down."
                ),
            ),
        ]

    def __str__(self) -> str:
        return self.change
