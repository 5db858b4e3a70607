"""Narrowing the list of licences, by the day they hold until."""

from __future__ import annotations

from records.filters.base import RecordFilter


class ApplicatorLicenceFilter(RecordFilter):
    DAY = "until"
    WORDS = ("holder", "number", "state", "category", "notes")
