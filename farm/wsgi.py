"""The door a web server knocks at."""

import os

from django.core.wsgi import get_wsgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "farm.settings")

application = get_wsgi_application()
