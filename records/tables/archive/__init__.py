"""A whole farm in one file: every table, its people, its history and its papers."""

from records.tables.archive.opening import ArchiveError
from records.tables.archive.packing import Saved, save_farm
from records.tables.archive.restoring import Restored, restore_farm

__all__ = ["ArchiveError", "Restored", "Saved", "restore_farm", "save_farm"]
