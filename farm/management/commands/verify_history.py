"""Walk the sealed changes of every farm, or of one, and name the first break."""

from __future__ import annotations

from typing import Any

from django.core.management.base import BaseCommand, CommandError, CommandParser
from django.utils.translation import gettext as _

from farm.breaks import told
from farm.chain import Break
from farm.history import verified
from farm.models import Change, Farm


class Command(BaseCommand):
    help = "Walk the sealed changes of every farm, or of one; name the first break."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument(
            "farm", nargs="?", help="Short name of the farm, as in its addresses."
        )
        parser.add_argument(
            "--digest", help="Find the entry whose digest a printed report shows."
        )

    def handle(self, *args: Any, farm: str | None = None, **options: Any) -> None:
        farms = Farm.objects.order_by("slug")
        if farm is not None:
            farms = farms.filter(slug=farm)
            if not farms:
                raise CommandError(_("No farm has the short name “%s”.") % farm)
        broken = [one.slug for one in farms if not self._is_whole(one)]
        if broken:
            raise CommandError(
                _("The history is broken: %s.") % ", ".join(broken), returncode=1
            )
        if options["digest"]:
            self._find(options["digest"].strip().lower(), list(farms))

    def _find(self, digest: str, farms: list[Farm]) -> None:
        """A digest on paper must still be found, or the history was rewritten."""
        change = Change.objects.filter(digest=digest, farm__in=farms).first()
        if change is None:
            raise CommandError(_("No entry has this digest."), returncode=1)
        self.stdout.write(f"{change.farm.slug}: {_sentence(change)}")

    def _is_whole(self, farm: Farm) -> bool:
        walked = verified(farm)
        if walked.broken:
            self.stdout.write(f"{farm.slug}: {told(walked.broken)}")
            self.stdout.write(f"  {_entry(farm, walked.broken)}")
            return False
        self.stdout.write(
            f"{farm.slug}: {walked.entries} entries, unbroken. "
            f"Last digest: {walked.digest or 'none'}"
        )
        return True


def _entry(farm: Farm, flaw: Break) -> str:
    """The entry at the break, or the last one that stands before it."""
    rows = Change.objects.filter(farm=farm, number__lte=flaw.number)
    change = rows.select_related("by").order_by("-number").first()
    if change is None:
        return "No entry stands."
    return _sentence(change)


def _sentence(change: Change) -> str:
    at = f"{change.at:%Y-%m-%d %H:%M} UTC"
    return f"Entry {change.number}: {at}, {change.by} {change.verb} {change.label}"
