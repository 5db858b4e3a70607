"""Papers that were handed out, by their fingerprints, and those being printed."""

from records.models import PrintJob
from records.printing import (
    StoppedError,
    ask,
    beat,
    fail,
    finish,
    jobs_of,
    lost,
    stop,
    take_up,
    tell,
)
from records.prints import fingerprint, found, keep

__all__ = [
    "PrintJob",
    "StoppedError",
    "ask",
    "beat",
    "fail",
    "fingerprint",
    "finish",
    "found",
    "jobs_of",
    "keep",
    "lost",
    "stop",
    "take_up",
    "tell",
]
