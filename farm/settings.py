"""Settings: one file, everything from the environment, safe when nothing is said."""

import os
from datetime import timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from django.core.exceptions import ImproperlyConfigured
from django.utils.translation import gettext_lazy as _

from farm.setup import addresses, place
from farm.setup.errors import SetupError

BASE_DIR = Path(__file__).resolve().parent.parent


def said(name: str, default: str = "") -> str:
    return os.environ.get(name, default).strip()


def yes(name: str) -> bool:
    answer = said(name, "no").lower()
    if answer in {"1", "yes", "true", "on"}:
        return True
    if answer in {"", "0", "no", "false", "off"}:
        return False
    raise ImproperlyConfigured(f"{name} must be yes or no.")


def embedded(path: Path) -> dict[str, Any]:
    # IMMEDIATE, because a read that turns into a write under DEFERRED fails at once
    # while another writer is busy, however long the timeout.
    return {
        "ENGINE": "django.db.backends.sqlite3",
        "NAME": path,
        "CONN_MAX_AGE": None,
        "OPTIONS": {
            "transaction_mode": "IMMEDIATE",
            "timeout": 20,
            "init_command": (
                "PRAGMA journal_mode=WAL;"
                "PRAGMA synchronous=NORMAL;"
                "PRAGMA cache_size=2000;"
                "PRAGMA mmap_size=134217728;"
                "PRAGMA journal_size_limit=27103364;"
            ),
        },
    }


def time_zone(name: str) -> str:
    try:
        ZoneInfo(name)
    except (KeyError, ValueError, OSError) as error:
        raise ImproperlyConfigured(
            f"TIME_ZONE {name!r} is not a time zone. Example: America/New_York"
        ) from error
    return name


try:
    DATA_DIR = place.made(place.data_folder())
    STATIC_ROOT = place.made(DATA_DIR / "static")
    MEDIA_ROOT = place.made(DATA_DIR / "media")
    SECRET_KEY = said("SECRET_KEY") or place.secret_key(DATA_DIR)
    DATABASE = (
        addresses.postgres(said("DATABASE_URL"))
        if said("DATABASE_URL")
        else embedded(DATA_DIR / "db.sqlite3")
    )
    ORIGIN = addresses.origin(said("ORIGIN")) if said("ORIGIN") else None
    MAIL = addresses.mail(said("EMAIL_URL")) if said("EMAIL_URL") else {}
except SetupError as error:
    raise ImproperlyConfigured(str(error)) from error

DEBUG = yes("DEBUG")
SECURE = ORIGIN is not None and ORIGIN.scheme == "https"

DATABASES = {"default": DATABASE}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

# Who may ask for pages, and by which address.
ALLOWED_HOSTS = ["localhost", "127.0.0.1", "[::1]"]
ALLOWED_HOSTS += [host for host in said("ALLOWED_HOSTS").split(",") if host]
CSRF_TRUSTED_ORIGINS: list[str] = []
if ORIGIN is not None:
    ALLOWED_HOSTS.append(str(ORIGIN.hostname))
    CSRF_TRUSTED_ORIGINS.append(f"{ORIGIN.scheme}://{ORIGIN.netloc}")

# Only behind an https address; on plain http they would lock everybody out.
SECURE_SSL_REDIRECT = SECURE
SECURE_HSTS_SECONDS = 31_536_000 if SECURE else 0
SECURE_HSTS_INCLUDE_SUBDOMAINS = SECURE
SECURE_HSTS_PRELOAD = SECURE
SESSION_COOKIE_SECURE = SECURE
CSRF_COOKIE_SECURE = SECURE

# What a choice says in the narrowing of a list where nothing is chosen.
FILTERS_EMPTY_CHOICE_LABEL = _("any")

INSTALLED_APPS = [
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "django.contrib.staticfiles",
    "django_filters",
    "django_htmx",
    "django_tasks",
    "django_tasks_db",
    "axes",
    "django_otp",
    "django_otp.plugins.otp_totp",
    "farm",
    "records",
    "reports",
]

MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "farm.headers.SqueezedPages",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "farm.language.spoken",
    "django.contrib.auth.middleware.LoginRequiredMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "farm.headers.guarded",
    "axes.middleware.AxesMiddleware",
]

ROOT_URLCONF = "farm.urls"
WSGI_APPLICATION = "farm.wsgi.application"

TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "DIRS": [BASE_DIR / "templates"],
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
            ],
            # Its "date" writes days in the order of the language.
            "builtins": ["farm.templatetags.days"],
        },
    },
]
FIXTURE_DIRS = [BASE_DIR / "fixtures"]

AUTH_USER_MODEL = "farm.User"
AUTHENTICATION_BACKENDS = [
    "axes.backends.AxesStandaloneBackend",
    "django.contrib.auth.backends.ModelBackend",
]
# Ten wrong passwords for one name from one place, and then a quarter of an hour.
AXES_USERNAME_FORM_FIELD = "username"
AXES_FAILURE_LIMIT = 10
AXES_COOLOFF_TIME = timedelta(minutes=15)
AXES_LOCKOUT_PARAMETERS = [["username", "ip_address"]]
AXES_LOCKOUT_TEMPLATE = "farm/locked.html"
AXES_RESET_ON_SUCCESS = True
AXES_ENABLE_ADMIN = False
AXES_DISABLE_ACCESS_LOG = True
AXES_VERBOSE = False
SESSION_ENGINE = "farm.sessions"
SESSION_COOKIE_AGE = 60 * 60 * 24 * 30
PASSWORD_RESET_TIMEOUT = 60 * 60 * 24
OTP_TOTP_ISSUER = "Cover between"
LOGIN_URL = "sign-in"
LOGIN_REDIRECT_URL = "home"
LOGOUT_REDIRECT_URL = "sign-in"
AUTH_PASSWORD_VALIDATORS = [
    {"NAME": f"django.contrib.auth.password_validation.{name}"}
    for name in (
        "UserAttributeSimilarityValidator",
        "MinimumLengthValidator",
        "CommonPasswordValidator",
        "NumericPasswordValidator",
    )
]

LANGUAGE_CODE = "en-us"
# A browser's language outside this list would mix Django's words into ours.
LANGUAGES = [("en-us", "English"), ("es", "Español")]
LANGUAGE_COOKIE_NAME = "language"
FORMAT_MODULE_PATH = ["farm.formats"]
USE_I18N = True
USE_TZ = True
TIME_ZONE = time_zone(said("TIME_ZONE") or "UTC")

STATIC_URL = "static/"
STORAGES = {
    "default": {"BACKEND": "django.core.files.storage.FileSystemStorage"},
    "staticfiles": {
        "BACKEND": "whitenoise.storage.CompressedManifestStaticFilesStorage"
    },
}

UPLOAD_MAX_BYTES = 20 * 1024 * 1024
DATA_UPLOAD_MAX_MEMORY_SIZE = 5 * 1024 * 1024
DATA_UPLOAD_MAX_NUMBER_FIELDS = 5000
DATA_UPLOAD_MAX_NUMBER_FILES = 20
FILE_UPLOAD_PERMISSIONS = 0o600
FILE_UPLOAD_DIRECTORY_PERMISSIONS = 0o700

EMAIL_BACKEND = "django.core.mail.backends.console.EmailBackend"
DEFAULT_FROM_EMAIL = said("EMAIL_FROM") or "farm@localhost"
SERVER_EMAIL = DEFAULT_FROM_EMAIL
globals().update(MAIL)
MAIL_IS_SET_UP = bool(MAIL)

LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "formatters": {
        "line": {"format": "{asctime} {levelname} {name}: {message}", "style": "{"}
    },
    "filters": {"without_keys": {"()": "farm.logs.WithoutKeys"}},
    "handlers": {
        "none": {"class": "logging.NullHandler"},
        "stderr": {
            "class": "logging.StreamHandler",
            "formatter": "line",
            "filters": ["without_keys"],
        },
    },
    "root": {"handlers": ["stderr"], "level": "WARNING"},
    "loggers": {
        # The default sends stack frames, with what they hold, to a mail box.
        "django": {"handlers": ["stderr"], "level": "INFO", "propagate": False},
        # Machines that knock at every door would fill the log.
        "django.security.DisallowedHost": {"handlers": ["none"], "propagate": False},
    },
}

# Long papers wait in the database for the worker that `start` runs beside the server.
TASKS = {"default": {"BACKEND": "django_tasks_db.DatabaseBackend"}}
# Printed pieces of papers, by the fingerprint of what was to be printed.
CACHES = {
    "default": {"BACKEND": "django.core.cache.backends.locmem.LocMemCache"},
    "pieces": {
        "BACKEND": "django.core.cache.backends.filebased.FileBasedCache",
        "LOCATION": DATA_DIR / "pieces",
        "TIMEOUT": None,
        "OPTIONS": {"MAX_ENTRIES": 4000},
    },
}

# Pictures and papers kept with records; a telephone's picture has some 5 MB.
ATTACHMENT_MAX_BYTES = 10 * 1024 * 1024
