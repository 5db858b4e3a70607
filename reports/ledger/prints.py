"""Papers that were handed out, by their fingerprints, and those being printed."""

from records.models import PrintJob
from records.printing import (
    KEPT_DAYS,
    StoppedError,
    ask,
    beat,
    clear_old,
    fail,
    finish,
    is_busy,
    jobs_of,
    lost,
    stop,
    take_up,
    tell,
)
from records.prints import fingerprint, found, keep

__all__ = [
    "KEPT_DAYS",
    "PrintJob",
    "StoppedError",
    "ask",
    "beat",
    "clear_old",
    "fail",
    "fingerprint",
    "finish",
    "found",
    "is_busy",
    "jobs_of",
    "keep",
    "lost",
    "stop",
    "take_up",
    "tell",
]
