"""Which papers were printed, by their fingerprints, and which are under way."""

from __future__ import annotations

import uuid

from django.conf import settings
from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _


class PrintedPaper(models.Model):
    """A file that was handed out: its fingerprint tells it from any other."""

    farm = models.ForeignKey(
        "farm.Farm", on_delete=models.PROTECT, related_name="prints"
    )
    name = models.CharField(_("paper"), max_length=120)
    year = models.PositiveSmallIntegerField(_("season"))
    sections = models.CharField(_("parts"), max_length=400, blank=True)
    sha256 = models.CharField(max_length=64)
    bytes = models.PositiveIntegerField(_("size in bytes"))
    printed_at = models.DateTimeField(_("printed"))
    printed_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        verbose_name = _("printed paper")
        verbose_name_plural = _("printed papers")
        constraints = [
            models.UniqueConstraint("farm", "sha256", name="paper_printed_once")
        ]

    def __str__(self) -> str:
        return f"{self.name} {self.year} · {self.sha256[:12]}"


class PrintJob(models.Model):
    """A long paper that somebody asked for: how far it is, and where it waits."""

    class Paper(models.TextChoices):
        SEASON = "season", _("season report")
        PACKET = "packet", _("papers for certification")

    class State(models.TextChoices):
        WAITING = "waiting", _("waiting")
        RUNNING = "running", _("being printed")
        DONE = "done", _("finished")
        FAILED = "failed", _("not printed")
        STOPPED = "stopped", _("stopped")

    key = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    farm = models.ForeignKey(
        "farm.Farm", on_delete=models.PROTECT, related_name="print_jobs"
    )
    paper = models.CharField(_("paper"), max_length=8, choices=Paper.choices)
    year = models.PositiveSmallIntegerField(_("season"))
    # The day counted up to, so that a job begun again prints the same bytes.
    today = models.DateField()
    # What the address asked for: parts, a lot to trace.
    query = models.CharField(max_length=1000, blank=True)
    state = models.CharField(max_length=8, choices=State.choices, default=State.WAITING)
    done = models.PositiveIntegerField(default=0)
    total = models.PositiveIntegerField(default=0)
    tries = models.PositiveSmallIntegerField(default=0)
    beat_at = models.DateTimeField(null=True)
    asked_at = models.DateTimeField()
    asked_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+"
    )
    trouble = models.CharField(max_length=500, blank=True)

    class Meta:
        verbose_name = _("print under way")
        verbose_name_plural = _("prints under way")
        constraints = [
            models.CheckConstraint(
                condition=Q(total=0) | Q(done__lte=F("total")),
                name="print_job_is_no_further_than_its_end",
            )
        ]

    def __str__(self) -> str:
        return f"{self.paper} {self.year} · {self.state}"

    @property
    def file(self) -> str:
        """Where its file lies among the farm's files."""
        return f"prints/{self.key}.pdf"
