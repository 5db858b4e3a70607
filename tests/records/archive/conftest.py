"""The farm that is saved, with nothing left of it here."""

import pytest
from django.core.files.storage import default_storage
from django.db import transaction

from tests.records.archive.files import (
    archived,
    lived_on,
)
from tests.world import make_world


@pytest.fixture
def world(db):
    """The cast of one test: the archive of another must find nothing here."""
    return make_world()


@pytest.fixture
def saved(db, settings, tmp_path):
    """The archive of a farm of which nothing is left here."""
    settings.MEDIA_ROOT = tmp_path / "media"
    with transaction.atomic():
        data = archived(lived_on(make_world()))
        transaction.set_rollback(True)
    for name in default_storage.listdir("attachments/9")[1]:
        default_storage.delete(f"attachments/9/{name}")
    return data
