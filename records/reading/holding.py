"""A file kept aside between its preview and its saving."""

from __future__ import annotations

import time
import uuid
from pathlib import Path

from django.conf import settings
from django.core import signing

SALT = "records.held-file"
KEPT_SECONDS = 24 * 3600


def hold(data: bytes, *, name: str, farm_id: int) -> str:
    """Put a file aside; the word returned fetches it again, for this farm only."""
    folder = _folder()
    _sweep(folder)
    key = uuid.uuid4().hex
    (folder / key).write_bytes(data)
    return signing.dumps([farm_id, key, name[:120]], salt=SALT)


def fetch(word: str, *, farm_id: int) -> tuple[bytes, str] | None:
    """Return the file and its name, or None where it is gone or another's."""
    try:
        owner, key, name = signing.loads(word, salt=SALT, max_age=KEPT_SECONDS)
    except (signing.BadSignature, ValueError):
        return None
    path = _folder() / key
    if owner != farm_id or not path.exists():
        return None
    return path.read_bytes(), name


def _folder() -> Path:
    folder = Path(settings.MEDIA_ROOT) / "held"
    folder.mkdir(parents=True, exist_ok=True)
    return folder


def _sweep(folder: Path) -> None:
    oldest = time.time() - KEPT_SECONDS
    for path in folder.iterdir():
        if path.stat().st_mtime < oldest:
            path.unlink(missing_ok=True)
