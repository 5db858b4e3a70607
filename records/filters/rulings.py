"""Narrowing rules followed, the certifier's numbers and replies."""

from __future__ import annotations

from records.filters.base import RecordFilter


class RulesFollowedFilter(RecordFilter):
    WORDS = ("notes",)


class CertifierNumberFilter(RecordFilter):
    WORDS = ("key", "note", "document", "notes")


class FindingReplyFilter(RecordFilter):
    DAY = "replied_on"
    WORDS = ("finding", "reply", "notes")


class ChangeToldFilter(RecordFilter):
    DAY = "told_on"
    WORDS = ("change", "how", "notes")
