"""An archive opened: nothing in it is believed before it is checked."""

from __future__ import annotations

import re
import zipfile
import zlib
from typing import IO

from django.utils.translation import gettext as _

from records.tables.archive import manifest
from records.tables.archive.manifest import Manifest, member_of

MOST_BYTES = 4 * 1024**3
MOST_TABLE_BYTES = 128 * 1024**2
MOST_MEMBERS = 100_000
FILES = "files/"
TABLE = re.compile(r"[a-z0-9-]{1,80}\.(csv|geojson)", re.ASCII)
# Each step of a path begins with a letter or a digit, so none of them leads up.
FILE = re.compile(r"files/(\w[\w.,+=@ -]{0,200}/)*\w[\w.,+=@ -]{0,200}")
BROKEN = (zipfile.BadZipFile, zlib.error, EOFError, OSError, RuntimeError, ValueError)


class ArchiveError(Exception):
    """Why an archive cannot be saved or restored, in a sentence."""


class Archive:
    """A checked archive: every member is there, of the length and digest told."""

    def __init__(self, source: IO[bytes]) -> None:
        try:
            self.zip = zipfile.ZipFile(source)
            self._check_bounds()
            self.manifest = self._manifest()
            self._check_members()
        except (*BROKEN, NotImplementedError):
            raise ArchiveError(_("The archive is damaged or not one.")) from None

    def text(self, name: str) -> bytes:
        with self.zip.open(name) as stream:
            return stream.read()

    def file(self, name: str) -> IO[bytes]:
        return self.zip.open(name)

    def _check_bounds(self) -> None:
        """Refuse names that lead elsewhere, and far more than a farm can hold."""
        infos = self.zip.infolist()
        names = [info.filename for info in infos]
        if len(set(names)) < len(names):
            raise ArchiveError(_("The archive holds a member twice."))
        for info in infos:
            name = info.filename
            if name != manifest.NAME and not _is_fit(name):
                raise ArchiveError(_("“%s” has no place in an archive.") % name[:80])
            if not name.startswith(FILES) and info.file_size > MOST_TABLE_BYTES:
                raise ArchiveError(_("“%s” is larger than any table.") % name[:80])
        total = sum(info.file_size for info in infos)
        if total > MOST_BYTES or len(infos) > MOST_MEMBERS:
            raise ArchiveError(_("The archive is larger than any farm."))

    def _manifest(self) -> Manifest:
        try:
            version, found = manifest.read(self.text(manifest.NAME))
        except (KeyError, ValueError, RecursionError):
            sentence = _("This is not a farm’s archive: it has no sound manifest.")
            raise ArchiveError(sentence) from None
        if version != manifest.VERSION:
            sentence = _("The archive is of version %(its)s; this one reads %(ours)s.")
            told = {"its": str(version)[:20], "ours": manifest.VERSION}
            raise ArchiveError(sentence % told)
        return found

    def _check_members(self) -> None:
        there = {info.filename: info for info in self.zip.infolist()}
        there.pop(manifest.NAME)
        told = self.manifest.members
        for name in told.keys() ^ there.keys():
            missing = name in told
            sentence = _("“%s” is missing.") if missing else _("“%s” is not told of.")
            raise ArchiveError(sentence % name[:80])
        for name, one in told.items():
            with self.zip.open(name) as stream:
                found = member_of(stream)
            if (found.bytes, found.sha256) != (one.bytes, one.sha256):
                sentence = _("“%s” is damaged: its checksum does not fit.")
                raise ArchiveError(sentence % name[:80])


def _is_fit(name: str) -> bool:
    return bool(TABLE.fullmatch(name) or FILE.fullmatch(name))
