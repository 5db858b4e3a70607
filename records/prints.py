"""Keeping the fingerprint of a paper that was handed out, and finding it again."""

from __future__ import annotations

import datetime as dt
import hashlib

from farm.models import Farm, User
from records.models import PrintedPaper


def fingerprint(printed: bytes) -> str:
    """The SHA-256 of a file, in hexadecimal."""
    return hashlib.sha256(printed).hexdigest()


def keep(
    farm: Farm,
    printed: bytes,
    *,
    name: str,
    year: int,
    sections: str,
    by: User,
    now: dt.datetime,
) -> PrintedPaper:
    """Note a printed paper once, however often the same bytes are printed."""
    kept, _new = PrintedPaper.objects.get_or_create(
        farm=farm,
        sha256=fingerprint(printed),
        defaults={
            "name": name,
            "year": year,
            "sections": sections,
            "bytes": len(printed),
            "printed_at": now,
            "printed_by": by,
        },
    )
    return kept


def found(farm: Farm, printed: bytes) -> PrintedPaper | None:
    """The paper of this farm that a file is, byte for byte."""
    rows = PrintedPaper.objects.filter(farm=farm, sha256=fingerprint(printed))
    return rows.select_related("printed_by").first()
