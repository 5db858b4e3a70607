"""A farm's changes walked from the first to the last, and held against its head."""

from __future__ import annotations

import dataclasses

from farm.chain import SEALED, Break, Flaw, Walk, walk
from farm.models import Change, ChangeHead, Farm

ROWS_AT_ONCE = 5000


def verified(farm: Farm) -> Walk:
    """Walk the whole chain; other people may go on writing meanwhile."""
    early = _head(farm)
    rows = Change.objects.filter(farm=farm).order_by("number")
    walked = walk(rows.values_list(*SEALED, "digest").iterator(ROWS_AT_ONCE))
    if walked.broken:
        return walked
    return dataclasses.replace(walked, broken=_at_the_end(walked, early, _head(farm)))


def _head(farm: Farm) -> tuple[int, str]:
    row = ChangeHead.objects.filter(farm=farm).values_list("number", "digest").first()
    return row or (0, "")


def _at_the_end(
    walked: Walk, early: tuple[int, str], late: tuple[int, str]
) -> Break | None:
    """What the head counted before and after the walk must lie around its end."""
    last = (walked.entries, walked.digest)
    if walked.entries < early[0]:
        return Break(Flaw.CUT_OFF, walked.entries + 1, str(early[0]), str(last[0]))
    if walked.entries > late[0]:
        return Break(Flaw.NOT_COUNTED, late[0] + 1, str(late[0]), str(last[0]))
    if walked.entries in {early[0], late[0]} and last not in {early, late}:
        return Break(Flaw.REWRITTEN, walked.entries, late[1], walked.digest)
    return None
