"""Loaded before Django's settings: the test run keeps its data apart from any farm's.

Named in pyproject.toml as a pytest plugin, since a conftest is read too late for it.
"""

import atexit
import os
import shutil
import tempfile

FOLDER = tempfile.mkdtemp(prefix="farm-test-")
atexit.register(shutil.rmtree, FOLDER, ignore_errors=True)

# Whatever stands in the shell belongs to a farm at work, so it is not believed.
os.environ["FARM_DATA"] = FOLDER
for name in ("ALLOWED_HOSTS", "DEBUG", "EMAIL_URL", "ORIGIN", "SECRET_KEY"):
    os.environ.pop(name, None)
