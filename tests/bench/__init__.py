"""Commands that measure, on a database of their own: never on a farm's."""

import atexit
import os
import shutil
import tempfile

import django
from django.conf import settings

# A process that one of these commands started works in the folder of its parent,
# and a test that borrows from here keeps the folder of the test run.
is_child = os.environ.get("FARM_BENCH") == str(os.getppid())
if not is_child and not settings.configured:
    FOLDER = tempfile.mkdtemp(prefix="farm-bench-")
    atexit.register(shutil.rmtree, FOLDER, ignore_errors=True)
    for name in ("DATABASE_URL", "DEBUG", "EMAIL_URL", "ORIGIN", "SECRET_KEY"):
        os.environ.pop(name, None)
    os.environ["FARM_BENCH"] = str(os.getpid())
    os.environ["FARM_DATA"] = FOLDER
    os.environ["DJANGO_SETTINGS_MODULE"] = "farm.settings"

django.setup()
