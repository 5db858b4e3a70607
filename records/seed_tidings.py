"""Warnings about the age of seed: at its receipt, and when it is sown."""

from __future__ import annotations

from collections.abc import Iterator

from django.utils.translation import gettext as _

from farm.templatetags.days import day_said
from records.engineered import kinds_asked
from records.freshness import MONTHS_AT_RECEIPT, months_at_sowing, months_between
from records.models import Planting, SeedLot


def test_at_receipt(row: SeedLot) -> Iterator[str]:
    if row.tested_on is None:
        yield _("No test is written down: ask for the tag, or have it tested.")
        return
    months = months_between(row.tested_on, row.received_on)
    if row.came == SeedLot.Came.RECEIVED and months > MONTHS_AT_RECEIPT:
        told = {"months": months, "limit": MONTHS_AT_RECEIPT}
        sentence = _(
            "The germination test was %(months)d months old when the seed came. A "
            "seller between states tests within %(limit)d months (7 CFR 201.30a, for "
            "vegetable seed; sealed packets longer). Ask for a newer test."
        )
        yield sentence % told


def statement_at_receipt(row: SeedLot) -> Iterator[str]:
    """For seed of kinds that are sold engineered too, where nothing shows it."""
    kinds = ", ".join(str(kind) for kind in kinds_asked(row))
    if kinds and not row.non_gmo:
        sentence = _(
            "Engineered varieties of %(kinds)s are sold. Ask for a statement, or have "
            "a sample tested, before this seed is sown on organic ground."
        )
        yield sentence % {"kinds": kinds}


def tests_at_sowing(row: Planting) -> Iterator[str]:
    start = row.sown_on or row.planned_on
    if start is None:
        return
    lots = SeedLot.objects.filter(lines__planting=row).select_related("kind")
    fresh = months_at_sowing(row.farm)
    for lot in lots.distinct().order_by("pk"):
        months = months_between(lot.tested_on, start) if lot.tested_on else None
        if months is None or months > fresh:
            said = _("not tested") if months is None else _("%d months") % months
            sentence = _(
                "%(lot)s: age of its germination test %(said)s, beyond the farm’s "
                "%(fresh)d months. Test it again, or sow more of it."
            )
            yield sentence % {"lot": lot, "said": said, "fresh": fresh}
        until = lot.inoculant_until
        if until and months_between(until, start) > 0:
            sentence = _("%(lot)s: the inoculant on it was good until %(until)s.")
            yield sentence % {"lot": lot, "until": day_said(until, "M Y")}
